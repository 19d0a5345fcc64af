"""A top of slanting rows laid apart: each row from lower left to upper right, with the triangles
at its ends; corner triangles out at the corners."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from functools import cached_property
from itertools import pairwise
from typing import Final

from patternbook.diagrams import labels
from patternbook.diagrams.laid import Lying, any_turned, draw, edge, parts, turn_mark
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.pressing import free, slanted
from patternbook.diagrams.shape import centre
from patternbook.quilt.pressing import Way
from patternbook.quilt.records import LayoutMade, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count
from patternbook.strokes.stroke import Point

HALF: Final = math.sqrt(0.5)
ALONG: Final = (HALF, -HALF)  # from lower left to upper right
ONWARD: Final = (HALF, HALF)  # from a row to the next
GAP: Final = 5.0  # points between the parts of a row
BETWEEN: Final = 13.0  # points from a row to the next
OUT: Final = 14.0  # points that corner triangles lie farther out
SIGNS: Final[Mapping[Way, int]] = {"right": 1, "left": -1, "down": 1, "up": -1}


class Slants:
    """Slanting rows on the sheet."""

    def __init__(self, size: Size, unit: Unit, made: LayoutMade, pen: Pen) -> None:
        self.size = size
        self.unit = unit
        self.made = made
        self.pen = pen
        self.pressing = size.plans.sewing.pressing[unit.name]

    @cached_property
    def rows(self) -> tuple[tuple[Lying, ...], ...]:
        """The rows moved apart, and their parts."""
        lying = parts(self.size, self.unit)
        return tuple(
            tuple(self._apart(lying[part], number) for part in line.parts)
            for number, line in enumerate(self.made.lines)
        )

    @cached_property
    def others(self) -> tuple[Lying, ...]:
        """What lies in no row: the corners, and borders around."""
        lying = parts(self.size, self.unit)
        inside = {part for line in self.made.lines for part in line.parts}
        return tuple(self._aside(part) for at, part in lying.items() if at not in inside)

    @cached_property
    def _middle(self) -> Point:
        return float(self.unit.finished.across) / 2, float(self.unit.finished.down) / 2

    @cached_property
    def _side(self) -> float:
        return float(self.made.lines[0].down)

    def _off(self, part: Lying, way: Point) -> float:
        """How far the middle of a part lies from the middle of the top, that way, in blocks."""
        x, y = self._centre(part)
        return ((x - self._middle[0]) * way[0] + (y - self._middle[1]) * way[1]) / self._side

    def _centre(self, part: Lying) -> Point:
        return centre(edge(self.size, part))

    def _apart(self, part: Lying, row: int) -> Lying:
        onward = (row - (len(self.made.lines) - 1) / 2) * self.pen.pt(BETWEEN)
        along = self._off(part, ALONG) * self.pen.pt(GAP)
        return _moved(part, along, onward)

    def _aside(self, part: Lying) -> Lying:
        along, onward = self._off(part, ALONG), self._off(part, ONWARD)
        x, y = part.middle
        out = self.pen.pt(OUT)
        moved = _moved(part, along * self.pen.pt(GAP), onward * self.pen.pt(BETWEEN))
        return moved.moved(
            math.copysign(out, x - self._middle[0]), math.copysign(out, y - self._middle[1])
        )

    def drawn(self) -> int:
        """Parts, names, numbers and arrows; how many names did not fit their parts."""
        units = self.size.quilt.units
        signs = any_turned(self.size, self.unit)
        bare: dict[str, labels.Tag] = {}
        named: set[str] = set()
        for part in (*(part for row in self.rows for part in row), *self.others):
            found = draw(self.pen, self.size, part)
            if signs and part.part in units:
                turn_mark(self.pen, part)
            fits = labels.named if part.part in units else labels.lettered
            if fits(self.pen, part, found, part.part):
                named.add(part.part)
            else:
                bare.setdefault(part.part, labels.Tag(*self._centre(part), part.part))
        self._numbered()
        for row, line in zip(self.rows, self.pressing.lines, strict=True):
            self._pressed(row, line.seams)
        self._between()
        tags = [tag for part, tag in bare.items() if part not in named]
        right = max(part.x + part.across for part in (*self.others, *self._all))
        labels.beside(self.pen, tags, right + self.pen.pt(12))
        return len(tags)

    @property
    def _all(self) -> tuple[Lying, ...]:
        return tuple(part for row in self.rows for part in row)

    def _numbered(self) -> None:
        """The number of every row before its lower left end."""
        far = self.pen.pt(12)
        for number, row in enumerate(self.rows, start=1):
            corners = edge(self.size, row[0])
            least = min(_along(point) for point in corners)
            ends = [point for point in corners if _along(point) < least + self._side / 100]
            x, y = (sum(side) / len(ends) for side in zip(*ends, strict=True))
            count(self.pen, x - ALONG[0] * far, y - ALONG[1] * far, number, size=8)

    def _pressed(self, row: Sequence[Lying], ways: Sequence[Way]) -> None:
        """An arrow over the first seam where all are pressed alike, else over each."""
        seams = list(zip(pairwise(row), ways, strict=True))
        uniform = len(set(ways)) == 1
        for (one, other), way in seams:
            at = _between(self._centre(one), self._centre(other))
            if free(self.pen, at, ONWARD):
                slanted(self.pen, at, ONWARD, _beyond(at, ALONG, way))
                if uniform:
                    return

    def _between(self) -> None:
        """An arrow over the seam between two rows, at the middle of the shorter one."""
        for (row, below), way in zip(pairwise(self.rows), self.pressing.between, strict=True):
            short, long = sorted((row, below), key=len)
            for one in sorted(short, key=lambda part: abs(self._off(part, ALONG))):
                near = min(long, key=lambda part: math.dist(part.middle, one.middle))
                at = _between(self._centre(one), self._centre(near))
                if free(self.pen, at, ALONG):
                    slanted(self.pen, at, ALONG, _beyond(at, ONWARD, way))
                    break


def slants(made: LayoutMade) -> bool:
    """Whether a layout is made of slanting rows."""
    return any(line.role == "slant" for line in made.lines)


def _beyond(at: Point, way: Point, pressed: Way) -> Point | None:
    """A point on the side that a seam is pressed to."""
    sign = SIGNS.get(pressed)
    return None if sign is None else (at[0] + way[0] * sign, at[1] + way[1] * sign)


def _moved(part: Lying, along: float, onward: float) -> Lying:
    x = ALONG[0] * along + ONWARD[0] * onward
    return part.moved(x, ALONG[1] * along + ONWARD[1] * onward)


def _along(point: Point) -> float:
    return point[0] * ALONG[0] + point[1] * ALONG[1]


def _between(one: Point, other: Point) -> Point:
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2
