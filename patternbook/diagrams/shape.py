"""Shapes in a drawing, as points: boxes, what is moved, turned and clipped."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import Final

from patternbook.quilt.records import Turn
from patternbook.strokes.stroke import Point

Points = tuple[Point, ...]
NEAR: Final = 1e-9
STEPS: Final = 8  # places tried across and down a shape for a letter


def box(x: float, y: float, across: float, down: float) -> Points:
    """An upright rectangle, clockwise from its top left corner."""
    right, low = x + across, y + down
    return (x, y), (right, y), (right, low), (x, low)


def around(points: Sequence[Point]) -> tuple[float, float, float, float]:
    """The box around: from the left, from above, width, length."""
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys)


def moved(points: Sequence[Point], dx: float, dy: float) -> Points:
    """So far to the right and down."""
    return tuple((x + dx, y + dy) for x, y in points)


def turned(points: Sequence[Point], across: float, down: float, turn: Turn) -> Points:
    """Where points of a unit (across × down) lie once it is turned, from the top left corner of
    the box around it; clockwise as before."""
    lies = [_turned(point, across, down, turn) for point in points]
    return tuple(reversed(lies)) if turn.mirrored else tuple(lies)


def _turned(point: Point, across: float, down: float, turn: Turn) -> Point:
    x, y = point
    x = across - x if turn.mirrored else x
    for _ in range(turn.quarters):
        x, y = down - y, x
        across, down = down, across
    if turn.on_point:
        half = math.sqrt(0.5)
        return (x - y + down) * half, (x + y) * half
    return x, y


# ---- seam allowances


def grown(points: Sequence[Point], out: Callable[[Point, Point], float]) -> Points:
    """The shape with each side moved outward by what `out` says of it; the sides are made longer
    or shorter until they meet again, as seams run on into the allowance."""
    sides = [(start, end, out(start, end)) for start, end in pairwise((*points, points[0]))]
    return tuple(_met(sides[at - 1], sides[at]) for at in range(len(sides)))


Side = tuple[Point, Point, float]


def _met(one: Side, other: Side) -> Point:
    """Where two sides that follow one another meet once both are moved outward."""
    (ax, ay), along = _out(*one)
    (bx, by), beside = _out(*other)
    cross = along[0] * beside[1] - along[1] * beside[0]
    if abs(cross) < NEAR:
        return bx, by
    far = ((bx - ax) * beside[1] - (by - ay) * beside[0]) / cross
    return ax + along[0] * far, ay + along[1] * far


def _out(start: Point, end: Point, out: float) -> tuple[Point, Point]:
    """The start of a side moved outward, and its direction. Clockwise, outward is to the left."""
    long = math.dist(start, end)
    along = ((end[0] - start[0]) / long, (end[1] - start[1]) / long)
    return (start[0] + along[1] * out, start[1] - along[0] * out), along


def reaching(points: Sequence[Point], across: float, down: float, raw: float) -> Points:
    """A patch of a unit with its seam allowance where its sides are the unit's; a slanting seam
    runs on to the unit's raw edge."""

    def out(start: Point, end: Point) -> float:
        edges = ((0, 0.0), (1, 0.0), (0, across), (1, down))
        on = any(abs(start[n] - at) < NEAR and abs(end[n] - at) < NEAR for n, at in edges)
        return raw if on else 0.0

    return clipped(grown(points, out), -raw, -raw, across + raw, down + raw)


def clipped(points: Points, left: float, top: float, right: float, low: float) -> Points:
    """What of a shape lies within a box."""
    for axis, limit, sign in ((0, left, 1), (1, top, 1), (0, right, -1), (1, low, -1)):
        found: list[Point] = []
        for one, other in pairwise((points[-1], *points)):
            here, there = ((point[axis] - limit) * sign for point in (one, other))
            if (here < -NEAR and there > NEAR) or (here > NEAR and there < -NEAR):
                share = here / (here - there)
                found.append(
                    (one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share)
                )
            if there >= -NEAR:
                found.append(other)
        points = tuple(found)
        if not points:
            break
    return points


# ---- places for letters


def holds(points: Sequence[Point], point: Point) -> bool:
    """Whether a point lies in a shape."""
    x, y = point
    inside = False
    for (ax, ay), (bx, by) in pairwise((*points, points[0])):
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            inside = not inside
    return inside


def centre(points: Sequence[Point]) -> Point:
    """The centre of gravity."""
    area = x = y = 0.0
    for (ax, ay), (bx, by) in pairwise((*points, points[0])):
        part = ax * by - bx * ay
        area, x, y = area + part, x + (ax + bx) * part, y + (ay + by) * part
    return x / (3 * area), y / (3 * area)


def room(
    points: Sequence[Point], wide: float, high: float, over: Sequence[Points] = ()
) -> Point | None:
    """The middle of a place in the shape for words so wide and high, clear of what lies `over`
    it: as near to its centre as there is one."""
    left, top, across, down = around(points)
    heart = centre(points)
    steps = [step / STEPS for step in range(1, STEPS)]
    others = [(left + across * x, top + down * y) for x in steps for y in steps]
    others.sort(key=lambda one: math.dist(one, heart))
    for x, y in (heart, *others):
        words = box(x - wide / 2, y - high / 2, wide, high)
        if _within(words, points) and not any(_meet(words, one) for one in over):
            return x, y
    return None


def _within(words: Points, points: Sequence[Point]) -> bool:
    return holds(points, _middle(words)) and not _crossed(words, points)


def _meet(words: Points, points: Points) -> bool:
    """Whether words touch a shape, or a line given by its points."""
    inside = any(holds(points, place) for place in words)
    return inside or holds(words, points[0]) or _crossed(words, points)


def _middle(words: Points) -> Point:
    return (words[0][0] + words[2][0]) / 2, (words[0][1] + words[2][1]) / 2


def _crossed(words: Points, points: Sequence[Point]) -> bool:
    """Whether a side of a shape runs through words."""
    return any(_through(words, one, other) for one, other in pairwise((*points, points[0])))


def _through(words: Points, one: Point, other: Point) -> bool:
    first, last = 0.0, 1.0
    for axis in (0, 1):
        low, high = words[0][axis] + NEAR, words[2][axis] - NEAR
        start, way = one[axis], other[axis] - one[axis]
        if abs(way) < NEAR:
            if not low < start < high:
                return False
            continue
        near, far = sorted(((low - start) / way, (high - start) / way))
        first, last = max(first, near), min(last, far)
    return first < last
