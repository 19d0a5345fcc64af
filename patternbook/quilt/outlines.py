"""The edges of patches as they lie, whatever their shape: each on its line, between whole numbers
that compare as the lengths do."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from math import gcd, lcm
from typing import Final, Literal, NamedTuple, Protocol

from patternbook.exact import Exact
from patternbook.methods.made import Outline
from patternbook.quilt.place import oblong

# Two lengths whose floats are closer than this are compared exactly.
CLOSE: Final = 1e-6


class Lying(Protocol):
    """A patch of the top, or a part of a unit: what has a box, and an outline where that is not
    all."""

    @property
    def x(self) -> Exact: ...
    @property
    def y(self) -> Exact: ...
    @property
    def across(self) -> Exact: ...
    @property
    def down(self) -> Exact: ...
    @property
    def outline(self) -> Outline | None: ...


class Point(NamedTuple):
    """A corner in whole numbers."""

    x: int
    y: int


class Line(NamedTuple):
    """The line that an edge lies on; equal lines are equal records. A slanted one is known by its
    slope and by where it meets x = 0, an arc by its circle and both its ends."""

    lies: Literal["across", "down", "slant", "arc"]
    at: int | Exact
    slope: Exact | tuple[int, int] | None = None
    centre: Point | None = None
    ends: tuple[Point, Point] | None = None


class Edge(NamedTuple):
    """One edge of a patch, on its line from `start` to `end` (from the left, or from the top);
    `forward` where the patch, walked round clockwise, is walked that way."""

    line: Line
    start: int
    end: int
    forward: bool
    patch: int


def lines(shape: Lying) -> Outline:
    """The seam lines of any patch."""
    return shape.outline or oblong(shape.x, shape.y, shape.across, shape.down)


class Plane:
    """Lengths as whole numbers of one small length. Where a root is left in one of them the
    numbers are ranks: they compare as the lengths do, and their differences mean nothing."""

    def __init__(self, outlines: Iterable[Outline]) -> None:
        values: set[Exact] = set()
        for outline in outlines:
            for corner in outline.corners:
                values.update(corner)
            for arc in outline.arcs:
                values.update(arc.centre)
        self._ranked = any(value.roots for value in values)
        self._scale = scale = lcm(*{value.denominator for value in values})
        if self._ranked:
            self._lengths = dict(enumerate(_ordered(values)))
        else:
            self._lengths = {v.numerator * (scale // v.denominator): v for v in values}
        self._numbers = {value: number for number, value in self._lengths.items()}
        self._floats = {number: float(value) for number, value in self._lengths.items()}
        self._lines: dict[tuple[Point, Point], Line] = {}
        self._slopes: dict[tuple[Exact, Exact], Exact] = {}
        self._risen: dict[tuple[Exact, int], Exact] = {}

    def length(self, number: int) -> Exact:
        """The length behind a number."""
        return self._lengths[number]

    def on(self, line: Line, place: int) -> tuple[float, float]:
        """About where a place on a line lies."""
        if line.ends is not None:
            return self.near(line.ends[place])
        along, at = self._floats[place], line.at
        if line.slope is None:
            known = self._floats[at] if isinstance(at, int) else float(at)
            return (along, known) if line.lies == "across" else (known, along)
        if isinstance(line.slope, Exact):
            return along, float(line.slope) * along + float(at)
        across, down = line.slope
        return along, (float(at) / self._scale + along * down) / across

    def near(self, point: Point) -> tuple[float, float]:
        """About where a point lies."""
        return self._floats[point.x], self._floats[point.y]

    def points(self, outline: Outline) -> tuple[Point, ...]:
        """The corners of an outline."""
        numbers = self._numbers
        return tuple([Point(numbers[x], numbers[y]) for x, y in outline.corners])

    def edges(self, outline: Outline, patch: int) -> Iterator[Edge]:
        """The edges of an outline, in order."""
        corners = self.points(outline)
        curved = {arc.edge: arc for arc in outline.arcs}
        for number, (one, other) in enumerate(pairwise((*corners, corners[0]))):
            if number in curved:
                arc = curved[number]
                centre = Point(self._numbers[arc.centre.x], self._numbers[arc.centre.y])
                # Every arc is known as it is walked with its circle on the right.
                ends = (other, one) if arc.hollow else (one, other)
                line = Line("arc", arc.radius, None, centre, ends)
                yield Edge(line, 0, 1, not arc.hollow, patch)
            elif one != other:
                yield self.edge(one, other, patch)

    def edge(self, one: Point, other: Point, patch: int) -> Edge:
        """The straight edge from one corner to another."""
        if one.x == other.x:
            start, end = one.y, other.y
            line = Line("down", one.x)
        else:
            start, end = one.x, other.x
            line = Line("across", one.y) if one.y == other.y else self._slant(one, other)
        if start < end:
            return Edge(line, start, end, True, patch)
        return Edge(line, end, start, False, patch)

    def _slant(self, one: Point, other: Point) -> Line:
        key = (one, other) if one < other else (other, one)
        if key not in self._lines:
            self._lines[key] = self._ranked_line(*key) if self._ranked else _whole_line(*key)
        return self._lines[key]

    def _ranked_line(self, one: Point, other: Point) -> Line:
        """Few slopes meet few distances from the left: each product is worked out once."""
        x, right = self._lengths[one.x], self._lengths[other.x]
        y, low = self._lengths[one.y], self._lengths[other.y]
        rise = (right - x, low - y)
        if rise not in self._slopes:
            self._slopes[rise] = rise[1] / rise[0]
        slope = self._slopes[rise]
        if (slope, one.x) not in self._risen:
            self._risen[slope, one.x] = slope * x
        return Line("slant", y - self._risen[slope, one.x], slope)

    def side(self, one: Point, other: Point, third: Point) -> int:
        """1 where the third point lies to the right of the way from the first to the second,
        -1 to the left, 0 on the line."""
        if not self._ranked:
            across, down = other.x - one.x, other.y - one.y
            cross = across * (third.y - one.y) - down * (third.x - one.x)
            return (cross > 0) - (cross < 0)
        at = self._floats
        across_, down_ = at[other.x] - at[one.x], at[other.y] - at[one.y]
        about = across_ * (at[third.y] - at[one.y]) - down_ * (at[third.x] - at[one.x])
        if abs(about) > CLOSE:
            return 1 if about > 0 else -1
        of = self._lengths
        exact = (of[other.x] - of[one.x]) * (of[third.y] - of[one.y]) - (
            of[other.y] - of[one.y]
        ) * (of[third.x] - of[one.x])
        return exact.sign()


def _whole_line(one: Point, other: Point) -> Line:
    across, down = other.x - one.x, other.y - one.y
    common = gcd(across, down)
    across, down = across // common, down // common
    return Line("slant", one.y * across - one.x * down, (across, down))


def _ordered(values: Iterable[Exact]) -> Sequence[Exact]:
    """The values in order: by their floats, and exactly where two of these are close."""
    ordered = sorted(values, key=float)
    floats = [float(value) for value in ordered]
    if any(other - one < CLOSE for one, other in pairwise(floats)):
        ordered.sort()
    return ordered
