"""The shape of one patch: its edges meet at its corners only and run clockwise."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import combinations

from patternbook.exact import Exact
from patternbook.methods.made import Arc, Outline, Spot
from patternbook.quilt.outlines import Plane, Point
from patternbook.quilt.place import shifted


def simple(outline: Outline, plane: Plane) -> bool:
    """Whether the outline encloses one area, clockwise, its edges meeting at the corners alone."""
    corners = _turns(plane.points(outline), plane)
    if len(corners) < 3:
        return False
    if not _convex(corners, plane) and not _uncrossed(corners, plane):
        return False
    if not outline.arcs:
        return True
    first = outline.corners[0]
    return _curves_hold(shifted(outline, -first.x, -first.y))


def area(outline: Outline) -> Exact:
    """The area between the corners, each arc taken as straight: where two patches share an arc,
    one gains what the other loses."""
    corners = outline.corners
    twice = Exact(0)
    for (x, y), (right, low) in zip(corners, (*corners[1:], corners[0]), strict=True):
        twice = twice + x * low - right * y
    return twice / 2


def _turns(corners: Sequence[Point], plane: Plane) -> list[Point]:
    """The corners at which the outline turns: those that lie on a straight edge, or come twice,
    enclose nothing."""
    apart = [one for n, one in enumerate(corners) if one != corners[n - 1]]
    return [
        one
        for n, one in enumerate(apart)
        if plane.side(apart[n - 1], one, apart[(n + 1) % len(apart)])
    ]


def _convex(corners: Sequence[Point], plane: Plane) -> bool:
    """Whether it turns to the right at every corner, and once round in all."""
    three = [(corners[n - 2], corners[n - 1], corners[n]) for n in range(len(corners))]
    if any(plane.side(*each) < 0 for each in three):
        return False
    return sum(before > here < after for before, here, after in three) == 1


def _uncrossed(corners: Sequence[Point], plane: Plane) -> bool:
    number = len(corners)
    first = min(range(number), key=corners.__getitem__)
    if plane.side(corners[first - 1], corners[first], corners[(first + 1) % number]) < 0:
        return False
    edges = [(corners[n - 1], corners[n]) for n in range(number)]
    return not any(
        _meet(edges[one], edges[other], plane)
        for one, other in combinations(range(number), 2)
        if other - one not in (1, number - 1)
    )


def _meet(edge: tuple[Point, Point], other: tuple[Point, Point], plane: Plane) -> bool:
    """Whether two edges have a point in common."""
    here = plane.side(*edge, other[0]), plane.side(*edge, other[1])
    there = plane.side(*other, edge[0]), plane.side(*other, edge[1])
    if here == (0, 0):
        return max(min(edge), min(other)) <= min(max(edge), max(other))
    return here[0] * here[1] <= 0 and there[0] * there[1] <= 0


# ---- arcs: each lies in the triangle between its chord and the tangents at its ends


@lru_cache(maxsize=512)
def _curves_hold(outline: Outline) -> bool:
    """Whether each arc is one of the circle it names, less than half of it, and touches no other
    edge: its triangle is clear of them. Some shapes that are sound are too narrow for this."""
    corners = outline.corners
    around = (*corners, corners[0])
    triangles = {}
    for arc in outline.arcs:
        triangle = _triangle(arc, around[arc.edge], around[arc.edge + 1])
        if triangle is None:
            return False
        triangles[arc.edge] = triangle
    for number, triangle in triangles.items():
        for other in range(len(corners)):
            bent = triangles.get(other)
            sides = _sides(bent) if bent else [(around[other], around[other + 1])]
            if other != number and any(_enters(*side, triangle) for side in sides):
                return False
    return True


Triangle = tuple[Spot, Spot, Spot]


def _triangle(arc: Arc, start: Spot, end: Spot) -> Triangle | None:
    """The ends of the arc and where its tangents meet, clockwise; None where it is no such arc."""
    radius = arc.radius * arc.radius
    if any(_square(spot, arc.centre) != radius for spot in (start, end)):
        return None
    turn = _cross(start, end, arc.centre).sign()
    if turn != (-1 if arc.hollow else 1):
        return None
    middle = Spot((start.x + end.x) / 2, (start.y + end.y) / 2)
    out = radius / _square(middle, arc.centre)
    across, down = middle.x - arc.centre.x, middle.y - arc.centre.y
    tip = Spot(arc.centre.x + across * out, arc.centre.y + down * out)
    # The tip lies on the other side of the chord than the centre.
    return (end, start, tip) if turn > 0 else (start, end, tip)


def _sides(triangle: Triangle) -> Iterator[tuple[Spot, Spot]]:
    first, second, third = triangle
    return iter(((first, second), (second, third), (third, first)))


def _square(spot: Spot, centre: Spot) -> Exact:
    across, down = spot.x - centre.x, spot.y - centre.y
    return across * across + down * down


def _cross(one: Spot, other: Spot, third: Spot) -> Exact:
    return (other.x - one.x) * (third.y - one.y) - (other.y - one.y) * (third.x - one.x)


def _enters(start: Spot, end: Spot, triangle: Triangle) -> bool:
    """Whether a straight edge has a point inside the triangle, not only on its sides."""
    low, high = Exact(0), Exact(1)  # the part of the edge that may be inside
    for one, other in _sides(triangle):
        near, far = _cross(one, other, start), _cross(one, other, end)
        if near <= 0 and far <= 0:
            return False
        if near < 0 or far < 0:
            at = near / (near - far)
            low, high = (max(low, at), high) if near < 0 else (low, min(high, at))
    return low < high
