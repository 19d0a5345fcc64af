"""Shapes that lie over one another: how far one reaches under the next."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final, Literal, NamedTuple

from patternbook.methods.made import Outline

# Corners are compared as so many 1024ths, as fine as drawings are kept.
FINE: Final = 1024
Point = tuple[int, int]
Corners = Sequence[Point]


class Lies(NamedTuple):
    """How one shape lies under another: `apart`, `hidden` by it, wholly `under` it seen from
    above (the upper one lies on it), or they `meet`, the one reaching `deep` into the other."""

    how: Literal["apart", "hidden", "under", "meet"]
    deep: float = 0.0


def lies(lower: Outline, upper: Outline) -> Lies:
    """How the lower shape lies under the upper one; both have straight edges only."""
    one, other = _corners(lower), _corners(upper)
    below = [point for point in one if _holds(other, point)]
    above = [point for point in other if _holds(one, point)]
    if len(below) == len(one):
        return Lies("hidden")
    if len(above) == len(other):
        return Lies("under")
    if not below and not above:
        return Lies("apart")
    far = [*(_far(point, other) for point in below), *(_far(point, one) for point in above)]
    return Lies("meet", float(max(far)) ** 0.5 / FINE)


def _corners(outline: Outline) -> list[Point]:
    fine = Fraction(1, FINE)
    return [(int(x.down(fine) * FINE), int(y.down(fine) * FINE)) for x, y in outline.corners]


def _holds(corners: Corners, point: Point) -> bool:
    """Whether a point lies in a shape or on its edge."""
    x, y = point
    inside = False
    for (ax, ay), (bx, by) in pairwise((*corners, corners[0])):
        cross = (bx - ax) * (y - ay) - (by - ay) * (x - ax)
        between = min(ax, bx) <= x <= max(ax, bx) and min(ay, by) <= y <= max(ay, by)
        if cross == 0 and between:
            return True
        if (ay > y) != (by > y) and (cross > 0) == (by > ay):
            inside = not inside
    return inside


def _far(point: Point, corners: Corners) -> Fraction:
    """The square of how far a point lies from the nearest edge."""
    return min(_from_edge(point, *edge) for edge in pairwise((*corners, corners[0])))


def _from_edge(point: Point, start: Point, end: Point) -> Fraction:
    (x, y), (ax, ay), (bx, by) = point, start, end
    across, down = bx - ax, by - ay
    along = (x - ax) * across + (y - ay) * down
    long = across * across + down * down
    if along <= 0 or not long:
        return Fraction((x - ax) ** 2 + (y - ay) ** 2)
    if along >= long:
        return Fraction((x - bx) ** 2 + (y - by) ** 2)
    return Fraction((across * (y - ay) - down * (x - ax)) ** 2, long)
