"""What each letter of the areas could be, and which of it makes one quilt: as dense everywhere,
calm, and to the house's taste."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import islice
from typing import Final

import shapely

from patternbook.quilting.areas import meant
from patternbook.quilting.designs import by_name
from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.options import Option, option, options
from patternbook.quilting.records import Area, Foot, Top, Wish, Wishes
from patternbook.quilting.taste import BUSY, ROUND_A_SHAPE, suited

USUAL: Final = 2.0  # inches: as far apart as lines are sewn where the batting allows it
# Of the limit: lines all over the top may lie wider than where meanders and swirls, which leave
# more open than they are apart, are to be as dense as they.
ALONE: Final = 2 / 3
SHARE: Final = 0.6
CALM: Final = 4  # designs on a quilt, at most
# What it costs, as shares of the density: to go one place down the list of taste, to take a fifth
# design, to put one design on both sides of a line, or two that are out of scale, to run much on
# the rim or on itself; and how much worse it is to miss the others' density, or the usual one.
LESS_TASTE: Final = 0.08
ONE_MORE: Final = 0.3
SAME_BESIDE: Final = 0.12
OUT_OF_SCALE: Final = 0.3
ONCE_MORE: Final = 0.6  # a sampler shows each design once, where it can
AGAIN: Final = 3.0
A_LITTLE: Final = 0.08  # of a path may run on the rim, or on itself
MISSED: Final = 6.0
FAR: Final = 0.4


class Palette:
    """The options of each letter, found once: those of its largest area."""

    def __init__(
        self,
        top: Top,
        wishes: Wishes,
        room_of: Mapping[str, Room],
        letters: Mapping[str, Sequence[Area]],
    ) -> None:
        self.size = {key: sum(float(a.shape.area) for a in group) for key, group in letters.items()}
        self.beside = _beside(letters)
        self.sampler = wishes.sampler
        share = SHARE if len(letters) > 1 else ALONE
        self.wanted = wanted = 1 / min(wishes.limit * share, USUAL * top.rules.inch)
        self.stated: set[str] = set()
        order = sorted(letters, key=lambda letter: (-self.size[letter], letter))
        self.options: dict[str, list[Option]] = {}
        for number, letter in enumerate(order):
            area = max(
                letters[letter], key=lambda one: (round(float(one.shape.area), 6), -one.number)
            )
            wish = _wish(area, top, wishes)
            offered = _options(room_of[area.key], wish, wishes, wanted, wishes.seed + number)
            # One area alone has nothing to be as dense as: the first that comes out is the one.
            found = list(islice(offered, 1)) if len(order) == 1 else list(offered)
            if found:
                self.options[letter] = found
            if wish and wish.spacing:
                self.stated.add(letter)


def _wish(area: Area, top: Top, wishes: Wishes) -> Wish | None:
    """What the author says of an area: the last that is meant for it with a word of its own."""
    found = [wish for wish in wishes.areas if meant(wish, area, top)]
    told = [wish for wish in found if wish.design or wish.spacing or wish.skill]
    return told[-1] if told else None


def _options(
    room: Room, wish: Wish | None, wishes: Wishes, wanted: float, seed: int
) -> Iterator[Option]:
    skill = wish.skill if wish and wish.skill else wishes.skill
    designs: Sequence[Design] = suited(room.kind, skill, sampler=wishes.sampler)
    if wish and wish.design in by_name:
        designs = [by_name[wish.design or ""]]
    seed = wish.seed if wish and wish.seed is not None else seed
    if wish and wish.spacing:
        yield from islice(_as_stated(room, designs, skill, wish.spacing, seed), 1)
        return
    if room.shape.interiors and not (wish and wish.design):
        round_it = list(options(room, [by_name[ROUND_A_SHAPE]], skill, wishes, wanted, seed))
        if round_it:
            yield from round_it
            return
    yield from options(room, designs, skill, wishes, wanted, seed)


def _as_stated(
    room: Room, designs: Sequence[Design], skill: Foot, spacing: float, seed: int
) -> Iterator[Option]:
    """The designs that come out at the author's own spacing, the best first."""
    for rank, design in enumerate(designs):
        made = option(room, rank, design, skill, spacing, seed)
        if made is not None:
            yield made


def _beside(letters: Mapping[str, Sequence[Area]]) -> Mapping[str, frozenset[str]]:
    """Which letters lie side by side, open ground only."""
    areas = [a for group in letters.values() for a in group if a.kind not in BUSY]
    shapes = [area.shape for area in areas]
    found: dict[str, set[str]] = {}
    if shapes:
        tree = shapely.STRtree(shapes)
        for one, other in zip(*tree.query(shapes, predicate="touches"), strict=True):
            if areas[one].letter != areas[other].letter:
                found.setdefault(areas[one].letter, set()).add(areas[other].letter)
    return {letter: frozenset(others) for letter, others in found.items()}


def evened(palette: Palette) -> dict[str, Option]:
    """Of all densities that some option has, the one at which taste and evenness cost least."""
    levels = sorted({round(one.density, 3) for found in palette.options.values() for one in found})
    best_cost, best_picks = float("inf"), dict[str, Option]()
    for level in levels:
        cost, picks = _at(level, palette)
        cost += FAR * (level / palette.wanted - 1) ** 2
        if cost < best_cost - 1e-9:
            best_cost, best_picks = cost, picks
    return best_picks


def _at(level: float, palette: Palette) -> tuple[float, dict[str, Option]]:
    """The best picks where every area is to come near one density, the largest letters first."""
    picks: dict[str, Option] = {}
    total = 0.0
    whole = sum(palette.size.values())
    for letter, found in palette.options.items():
        share = palette.size[letter] / whole
        priced = [(_price(one, level, letter, picks, palette), n) for n, one in enumerate(found)]
        cost, number = min(priced)
        picks[letter] = found[number]
        total += cost * share
    return total, picks


def _price(
    one: Option, level: float, letter: str, picks: Mapping[str, Option], palette: Palette
) -> float:
    used = {pick.design.name for pick in picks.values()}
    near = [picks[x] for x in sorted(palette.beside.get(letter, ())) if x in picks]
    beside = {pick.design.name for pick in near}
    price = MISSED * (one.density / level - 1) ** 2 + LESS_TASTE * one.rank
    price += AGAIN * max(0.0, one.again - A_LITTLE)
    if palette.sampler:
        return price - LESS_TASTE * one.rank + (ONCE_MORE if one.design.name in used else 0.0)
    if one.design.name not in used and len(used) >= CALM:
        price += ONE_MORE
    if one.design.name in beside:
        price += SAME_BESIDE
    return price + OUT_OF_SCALE * sum(not _in_scale(one, other) for other in near)


def _in_scale(one: Option, other: Option) -> bool:
    """A filler is half as large as what lies beside it, or larger (booklets say two thirds to a
    half, and never under a quarter)."""
    sizes = sorted((one.drawn.spacing, other.drawn.spacing))
    return sizes[0] * 2 >= sizes[1]
