"""Plans as made by hand: each kind from its own strips; or highest first, each piece into the first
strip with room."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import NamedTuple

from patternbook.cutting.planner.ground import BELOW, Ground, Plan, Recipe, plan_of
from patternbook.cutting.planner.records import Kind, Manner
from patternbook.cutting.planner.table import lays
from patternbook.cutting.planner.zone import Strip

_Lay = tuple[int, int]


def own_strips(ground: Ground) -> Plan:
    """Every kind from strips of its own, of the height that takes the least length."""
    best: dict[int, tuple[int, Strip, int]] = {}
    for strip in ground.zones[BELOW].starters(ground.demand):
        place = next(at for at, count in enumerate(strip.counts) if count)
        times = -(-ground.demand[place] // strip.counts[place])
        this = (times * strip.height, strip, times)
        best[place] = min(best.get(place, this), this)
    return plan_of((Recipe(BELOW, strip), times) for _, strip, times in best.values())


def by_shelves(ground: Ground, manner: Manner, width: int) -> Iterator[Plan]:
    """First fit, the highest first, by each of three rules for the way a kind lies."""
    heights = set(ground.zones[BELOW].heights)
    for rule in (_longest, _shortest, _least):
        ways = []
        for kind in ground.kinds:
            found = [lay for lay in lays(kind, width) if lay[1] in heights]
            ways.append(min(found, key=partial(rule, kind.number, width)))
        yield _first_fit(ground, manner, width, ways)


def _longest(_: int, __: int, lay: _Lay) -> tuple[int, int]:
    return -lay[0], lay[1]


def _shortest(_: int, __: int, lay: _Lay) -> tuple[int, int]:
    return lay


def _least(number: int, width: int, lay: _Lay) -> tuple[int, int]:
    """By the cloth that strips of the kind's own would take."""
    return -(-number // (width // lay[0])) * lay[1], lay[1]


class _Shelf(NamedTuple):
    """`times` strips that are filled alike so far."""

    height: int
    left: int
    counts: tuple[int, ...]
    times: int

    def with_more(self, place: int, along: int, count: int, times: int) -> _Shelf:
        counts = list(self.counts)
        counts[place] += count
        return _Shelf(self.height, self.left - count * along, tuple(counts), times)

    def takes(self, kind: Kind, across: int, manner: Manner) -> bool:
        if manner == "even" or kind.own_width:
            return self.height == across
        return self.height >= across


def _first_fit(ground: Ground, manner: Manner, width: int, ways: list[_Lay]) -> Plan:
    order = sorted(range(len(ways)), key=lambda at: (-ways[at][1], -ways[at][0], at))
    shelves: list[_Shelf] = []
    empty = (0,) * len(ways)
    for place in order:
        kind, (along, across) = ground.kinds[place], ways[place]
        kept: list[_Shelf] = []
        number = kind.number
        for shelf in shelves:
            room = shelf.left // along if shelf.takes(kind, across, manner) else 0
            filled = list(_filled(shelf, place, along, room, number))
            number -= sum(s.times * (s.counts[place] - shelf.counts[place]) for s in filled)
            kept += filled
        fresh = _Shelf(across, width, empty, -(-number // (width // along)))
        kept += _filled(fresh, place, along, width // along, number)
        shelves = kept
    return plan_of(
        (Recipe(BELOW, Strip(shelf.height, shelf.counts)), shelf.times) for shelf in shelves
    )


def _filled(shelf: _Shelf, place: int, along: int, room: int, number: int) -> Iterator[_Shelf]:
    """The shelves once so many pieces were put into them, from the first on."""
    full = min(shelf.times, number // room) if room else 0
    rest = min(number - full * room, room) if full < shelf.times else 0
    if full:
        yield shelf.with_more(place, along, room, full)
    if rest:
        yield shelf.with_more(place, along, rest, 1)
    untouched = shelf.times - full - bool(rest)
    if untouched:
        yield shelf._replace(times=untouched)
