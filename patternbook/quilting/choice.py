"""Which design goes where, and how close its lines lie: calm, and as dense in one area as in the
next, so that edges do not wave and middles do not bubble."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final, get_args

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.designs.form import Room
from patternbook.quilting.gap import quick
from patternbook.quilting.options import Option, option
from patternbook.quilting.palette import Palette, evened
from patternbook.quilting.records import Area, Divided, Drawn, Filled, Foot, Path, Top, Wishes
from patternbook.quilting.rooms import rooms
from patternbook.quilting.taste import best

NOTHING: Final[Mapping[str, int]] = {}
IN_THE_DITCH: Final = "in the ditch"
ITS_OWN_LINES: Final = "its own lines"
# An area whose density differs by more than this from the others' is drawn so many marks closer
# or wider than those of its letter.
UNEVEN: Final = 0.12
MARKS: Final = (-1, 1, -2, 2)
Kind = tuple[str, int, bytes, bytes]  # letter, how much closer, outline of the area, of its room


class Choice:
    """A design for every letter, and what it comes to in every area of it."""

    def __init__(self, top: Top, divided: Divided, wishes: Wishes) -> None:
        self.areas = [area for area in divided.areas if not area.excluded]
        self._wishes = wishes
        self._marked = [line.path for line in divided.marked]
        self._rooms = rooms(self.areas, top)
        letters: dict[str, list[Area]] = {}
        for area in self.areas:
            if not self._told_enough(area):
                letters.setdefault(area.letter, []).append(area)
        palette = Palette(top, wishes, self._rooms, letters)
        self._stated = palette.stated
        self._picks = evened(palette)
        whole = sum(palette.size[letter] for letter in self._picks)
        sums = (pick.density * palette.size[key] for key, pick in self._picks.items())
        self._level = sum(sums) / whole if whole else 0.0
        self._known: dict[Kind, tuple[Option | None, float, float]] = {}
        self.others = {area.letter: self._others(area) for area in self.areas}

    def fills(self, closer: Mapping[str, int] = NOTHING) -> tuple[Filled, ...]:
        """All areas filled. `closer`: by how many steps the areas of a key are drawn closer than
        those of their letter."""
        return tuple(self._fill(area, closer.get(area.key, 0)) for area in self.areas)

    def _others(self, area: Area) -> Mapping[Foot, str]:
        """What the letter of an area is in its own way of sewing, and would be in the others."""
        room, pick = self._rooms[area.key], self._picks.get(area.letter)
        offered = {foot: best(room, foot) for foot in get_args(Foot)}
        found = {foot: design.name for foot, design in offered.items() if design is not None}
        if self._told_enough(area):
            return {**found, "walking foot": ITS_OWN_LINES, "ruler": ITS_OWN_LINES}
        return {**found, pick.foot: pick.design.name} if pick else found

    def _told_enough(self, area: Area) -> bool:
        """Whether the lines that are marked for it are all that a channel gets: always, but in
        free motion."""
        return area.kind == "channel" and self._wishes.skill != "free motion"

    def _fill(self, area: Area, closer: int) -> Filled:
        if self._told_enough(area):
            return _left(area, ITS_OWN_LINES, self._marked)
        pick = self._picks.get(area.letter)
        made = self._alike(area, pick, closer) if pick else None
        if pick is None or made is None:
            return _left(area, IN_THE_DITCH)
        return Filled(area, made.design.name, pick.foot, made.drawn, made.gap, made.density)

    def _alike(self, area: Area, pick: Option, closer: int) -> Option | None:
        """The design in this area; areas that are alike get the very same lines, moved."""
        room = self._rooms[area.key]
        x, y = room.shape.bounds[:2]
        kind = (area.letter, closer, *_outline(room, x, y))
        if kind not in self._known:
            self._known[kind] = self._drawn(area, pick, closer), x, y
        made, there_x, there_y = self._known[kind]
        return _moved(made, x - there_x, y - there_y) if made else None

    def _drawn(self, area: Area, pick: Option, closer: int) -> Option | None:
        """The design of the letter in one of its areas: as dense as the others, and closer where
        it leaves too much open. What the author states stands as it is."""
        room, stated = self._rooms[area.key], area.letter in self._stated

        def at(asked: float) -> Option | None:
            made = option(room, pick.rank, pick.design, pick.foot, asked, pick.seed)
            return made if made and (stated or made.gap <= self._wishes.limit) else None

        if stated:
            return at(pick.asked)
        asked, step = pick.asked - closer * room.rules.step, room.rules.step
        found = at(asked)
        while found is None and asked > step:
            asked -= step
            found = at(asked)
        if found is None or closer or self._missed(found) <= UNEVEN:
            return found
        beside = (at(asked + marks * step) for marks in MARKS if asked + marks * step > 0)
        return min([found, *filter(None, beside)], key=self._missed)

    def _missed(self, made: Option) -> float:
        """By what share a density differs from that of the whole top."""
        return abs(made.density / self._level - 1) if self._level else 0.0


def _outline(room: Room, x: float, y: float) -> tuple[bytes, bytes]:
    """An area and what is free in it, wherever they lie."""

    def told(shape: Polygon) -> bytes:
        return bytes(np.round(shapely.get_coordinates(shape) - (x, y), 5).tobytes())

    return told(room.shape), told(room.free)


def _moved(made: Option, x: float, y: float) -> Option:
    if not (x or y):
        return made
    paths = tuple(tuple((a + x, b + y) for a, b in path) for path in made.drawn.paths)
    return replace(made, drawn=made.drawn._replace(paths=paths))


def _left(area: Area, called: str, lines: Sequence[Path] = ()) -> Filled:
    """An area that the lines around it hold, and those of the first stage in it."""
    return Filled(area, called, "walking foot", Drawn((), 0.0), quick(lines, area.shape), 0.0)
