"""The same shape cut off in two empty corners of the top, mirrored."""

from __future__ import annotations

import math
import random
from collections.abc import Iterator, Sequence
from typing import Final, Literal, NamedTuple

import shapely
from shapely import Point, Polygon

from patternbook.quilting.records import Path, Spot, Top

SMALLEST: Final = 6.0  # inches
LARGEST: Final = 12.0
CLEAR: Final = 3.0  # inches to the piecing
LARGE: Final = 300.0  # square inches of ground around a corner that is worth it
Form = Literal["square", "triangle"]
FORMS: Final[tuple[Form, ...]] = ("square", "triangle")


class Corner(NamedTuple):
    """A shape in one corner of the top; `ways` are the signs to the inside."""

    form: Form
    size: float
    spot: Spot
    ways: tuple[int, int]

    def _at(self, across: float, down: float) -> Spot:
        x, y = self.spot
        return round(x + across * self.ways[0], 6), round(y + down * self.ways[1], 6)

    @property
    def line(self) -> Path:
        """What is to be marked, from one edge to the other."""
        one, other = self._at(self.size, 0), self._at(0, self.size)
        return (
            (one, self._at(self.size, self.size), other) if self.form == "square" else (one, other)
        )

    @property
    def shape(self) -> Polygon:
        return Polygon([self.spot, *self.line])

    def room(self, clear: float) -> Polygon:
        x, y = self.spot
        far_x, far_y = self._at(self.size + clear, self.size + clear)
        return shapely.box(min(x, far_x), min(y, far_y), max(x, far_x), max(y, far_y))


def corners(grounds: Sequence[Polygon], top: Top, rng: random.Random) -> tuple[Corner, ...]:
    """The two upper corners, the two lower ones, or all four, all of one form and size."""
    form = rng.choice(FORMS)
    large = [ground for ground in grounds if ground.area > LARGE * top.rules.inch**2]
    pairs = [pair for pair in _pairs(form, top) if all(_empty(one, large) for one in pair)]
    for size in _sizes(top):
        held = [tuple(one._replace(size=size) for one in pair) for pair in pairs]
        fits = [all(_holds(one, large, top) for one in pair) for pair in held]
        if pairs and all(fits):
            return tuple(one for pair in held for one in pair)
    return ()


def _pairs(form: Form, top: Top) -> Iterator[tuple[Corner, Corner]]:
    x0, y0, x1, y1 = top.inside.bounds
    for y, down in ((y0, 1), (y1, -1)):
        yield Corner(form, 0.0, (x0, y), (1, down)), Corner(form, 0.0, (x1, y), (-1, down))


def _sizes(top: Top) -> Iterator[float]:
    """From a sixth of the shorter side down, on every fourth mark of the ruler."""
    x0, y0, x1, y1 = top.inside.bounds
    inch, grid = top.rules.inch, 4 * top.rules.step
    most = min(LARGEST * inch, max(SMALLEST * inch, min(x1 - x0, y1 - y0) / 6))
    for marks in range(math.floor(most / grid), math.ceil(SMALLEST * inch / grid) - 1, -2):
        yield marks * grid


def _empty(corner: Corner, large: Sequence[Polygon]) -> bool:
    """Whether the corner itself lies in large ground."""
    return any(ground.exterior.distance(Point(corner.spot)) < 1e-4 for ground in large) and any(
        ground.contains(Point(corner._replace(size=0.01).room(0.0).centroid)) for ground in large
    )


def _holds(corner: Corner, large: Sequence[Polygon], top: Top) -> bool:
    room = corner.room(CLEAR * top.rules.inch)
    return any(ground.buffer(1e-4, join_style="mitre").covers(room) for ground in large)


def resized(corner: Corner, shift: float, grounds: Sequence[Polygon]) -> Corner | None:
    """The shape so much larger; nothing where it has no room."""
    if corner.size + shift <= 0:
        return None
    new = corner._replace(size=corner.size + shift)
    inside = (one.buffer(1e-4, join_style="mitre").covers(new.shape) for one in grounds)
    return new if any(inside) else None
