"""The cloth that a patch takes: its shape with the seam allowance all round, in floats."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import atan2, cos, dist, hypot, sin, tau
from typing import Final

from patternbook.methods.made import Arc, Outline

STEPS: Final = 16  # straight pieces to an arc
Point = tuple[float, float]


def corners_of(outline: Outline) -> list[Point]:
    """The corners, clockwise; arcs in short straight pieces."""
    spots = [(float(x), float(y)) for x, y in outline.corners]
    curved = {arc.edge: arc for arc in outline.arcs}
    found: list[Point] = []
    for number, spot in enumerate(spots):
        found.append(spot)
        if number in curved:
            found += _bent(curved[number], spot, spots[(number + 1) % len(spots)])
    return found


def _bent(arc: Arc, start: Point, end: Point) -> Iterator[Point]:
    x, y, radius = float(arc.centre.x), float(arc.centre.y), float(arc.radius)
    first, last = (atan2(spot[1] - y, spot[0] - x) for spot in (start, end))
    sweep = (last - first) % tau if not arc.hollow else -((first - last) % tau)
    for step in range(1, STEPS):
        angle = first + sweep * step / STEPS
        yield x + radius * cos(angle), y + radius * sin(angle)


def with_seams(corners: Sequence[Point], seam: float) -> list[Point]:
    """The shape with so much more all round, its points kept sharp."""
    number = len(corners)
    return [
        _moved_out(corners[n - 1], corners[n], corners[(n + 1) % number], seam)
        for n in range(number)
    ]


def _moved_out(before: Point, corner: Point, after: Point, seam: float) -> Point:
    """Where the two edges that meet in a corner meet once both are moved outward."""
    (a, b), (c, d) = _outward(before, corner), _outward(corner, after)
    share = seam / (1 + a * c + b * d)
    return corner[0] + (a + c) * share, corner[1] + (b + d) * share


def _outward(one: Point, other: Point) -> Point:
    """The direction, one long, to the left of the way: outward, walked clockwise."""
    across, down = other[0] - one[0], other[1] - one[1]
    long = hypot(across, down)
    return down / long, -across / long


def area(corners: Sequence[Point]) -> float:
    """The area inside."""
    ends = (*corners[1:], corners[0])
    return sum(x * low - right * y for (x, y), (right, low) in zip(corners, ends, strict=True)) / 2


def around(corners: Sequence[Point]) -> float:
    """The length of all edges."""
    return sum(map(dist, corners, (*corners[1:], corners[0])))
