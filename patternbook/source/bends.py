"""Bends as straight pieces, as few as lie near enough."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import Final

Point = tuple[float, float]
Curve = tuple[Point, ...]
# Straight pieces of one bend.
PIECES: Final = 32


def bent(curve: Iterable[Point]) -> Iterator[Point]:
    """Points along a bend, from behind its start to its end; the bend is known by its start, what
    draws it aside, and its end (after de Casteljau)."""
    corners = [(float(x), float(y)) for x, y in curve]
    for step in range(1, PIECES + 1):
        share, line = step / PIECES, corners
        while len(line) > 1:
            line = [(a + (c - a) * share, b + (d - b) * share) for (a, b), (c, d) in pairwise(line)]
        yield line[0]


def area(curve: Sequence[Point]) -> float:
    """What it encloses; below nought where it runs anticlockwise as seen."""
    pairs = zip(curve, (*curve[1:], curve[0]), strict=True)
    return sum(x * v - u * y for (x, y), (u, v) in pairs) / 2


def simpler(curve: Sequence[Point], near: float) -> Curve:
    """The line with as few points as keep it so near to all of them (after Douglas and Peucker,
    1973). A closed one is halved at its point furthest from the start."""
    if len(curve) < 3:
        return tuple(curve)
    kept = {0, len(curve) - 1}
    if curve[0] == curve[-1]:
        kept.add(max(range(len(curve)), key=lambda at: math.dist(curve[0], curve[at])))
    ends = sorted(kept)
    spans = list(pairwise(ends))
    while spans:
        first, last = spans.pop()
        far, off = first, 0.0
        for at in range(first + 1, last):
            beside = _beside(curve[at], curve[first], curve[last])
            if beside > off:
                far, off = at, beside
        if off > near:
            kept.add(far)
            spans += [(first, far), (far, last)]
    return tuple(curve[at] for at in sorted(kept))


def _beside(point: Point, start: Point, end: Point) -> float:
    """How far a point lies from a piece of line."""
    length = math.dist(start, end)
    if length == 0:
        return math.dist(point, start)
    dx, dy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    along = (point[0] - start[0]) * dx + (point[1] - start[1]) * dy
    along = min(max(along, 0.0), length)
    return math.dist(point, (start[0] + dx * along, start[1] + dy * along))
