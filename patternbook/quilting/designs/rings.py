"""Rings inside of a shape, one within the other, sewn as one path that ends where it began."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final, NamedTuple

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.designs.frame import DECIMALS, FINE, Spots
from patternbook.quilting.designs.rim import Ring

SMALL: Final = 0.2  # of the spacing squared: what is smaller inside is no ring
STRAIGHT: Final = 1e-3  # radians: a lesser turn is no corner
STEP: Final = 3.0  # spacings: how far a step from corner to corner may be


def inset(shape: Polygon, by: float) -> list[Polygon]:
    """What lies further than so much from the rim, the largest part first."""
    left = shape.buffer(-by, join_style="mitre") if by > 0 else shape
    parts = [part for part in shapely.get_parts(left) if part.area > FINE]
    return sorted(parts, key=lambda part: (-round(part.area, DECIMALS), part.bounds))


def depth(shape: Polygon) -> float:
    """How far the spot lies from the rim that lies furthest from it."""
    if shape.is_empty or shape.area <= FINE:
        return 0.0
    box = shape.bounds
    fine = max(1e-3, 1e-4 * max(box[2] - box[0], box[3] - box[1]))
    return float(shapely.maximum_inscribed_circle(shape, tolerance=fine).length)


def cornered(ring: shapely.LinearRing) -> Spots:
    """The corners of a ring, closed; what lies on a straight side is left out."""
    spots = shapely.get_coordinates(shapely.remove_repeated_points(ring, 1e-3))[:-1]
    before, after = spots - np.roll(spots, 1, axis=0), np.roll(spots, -1, axis=0) - spots
    turn = np.abs(before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0])
    far = np.hypot(*before.T) * np.hypot(*after.T)
    kept = spots[turn > STRAIGHT * far]
    return np.vstack([kept, kept[:1]])


class Nested(NamedTuple):
    """A ring, and which rings are sewn on the way round it: where on it each is left for, and
    where on the other it is come to."""

    ring: Ring
    inner: list[tuple[float, float, int]]


def tour(rings: Sequence[Spots], near: Spots, spacing: float, room: Polygon) -> Spots | None:
    """All rings in one closed path: round the outermost, and by short steps into the others and
    back. It begins at the corner of the first ring that is nearest to `near`. Nothing where a ring
    is not to be reached within the room."""
    lines = [Ring(ring) for ring in rings]
    tree = _tree(lines, near, spacing, room) if lines else None
    return None if tree is None else _round(tree, 0, _corner_at(lines[0], near))


def _corner_at(ring: Ring, near: Spots) -> float:
    spots = np.round(ring.spots[:-1], 4)
    away = np.round(np.hypot(*(spots - near).T), 3)
    return float(ring.run[int(np.lexsort((spots[:, 0], spots[:, 1], away))[0])])


def _tree(
    lines: Sequence[Ring], near: Spots, spacing: float, room: Polygon
) -> Mapping[int, Nested] | None:
    """Which ring is reached from which: each from the nearest, beginning with the first."""
    tree = {0: Nested(lines[0], [])}
    entries = {0: lines[0].spot(_corner_at(lines[0], near))}
    shapes = np.array([line.line for line in lines])
    away = np.round(shapely.distance(shapes[:, None], shapes[None, :]), 4)
    wide = room.buffer(1e-6, join_style="mitre")
    while len(tree) < len(lines):
        rest = [number for number in range(len(lines)) if number not in tree]
        pairs = [(float(away[one, other]), other, -one) for one in tree for other in rest]
        _, other, one = min(pairs)
        leave, reach = _step(lines[-one], lines[other], entries[-one], spacing)
        entries[other] = lines[other].spot(reach)
        if not wide.covers(shapely.LineString([lines[-one].spot(leave), entries[other]])):
            return None
        tree[-one].inner.append((leave, reach, other))
        tree[other] = Nested(lines[other], [])
    return tree


def _step(ring: Ring, other: Ring, near: Spots, spacing: float) -> tuple[float, float]:
    """The step from one ring to another: from corner to corner nearest to `near`, where there
    are two so near one another, else the shortest."""
    apart = np.hypot(*(ring.spots[:-1, None, :] - other.spots[None, :-1, :]).transpose(2, 0, 1))
    ones, others = np.nonzero(apart <= STEP * spacing)
    if len(ones):
        away = np.hypot(*(ring.spots[ones] - near).T) / 2 + apart[ones, others]
        best = int(np.argmin(np.round(away, 4)))
        return float(ring.run[ones[best]]), float(other.run[others[best]])
    shortest = shapely.shortest_line(ring.line, other.line)
    start, end = (shapely.Point(spot) for spot in shortest.coords)
    return float(ring.line.project(start)), float(other.line.project(end))


def _round(tree: Mapping[int, Nested], number: int, start: float) -> Spots:
    """Once round a ring from a place on it, with the rings within on the way; those that are
    left for at the very place are kept for the end."""
    ring, inner = tree[number]
    stops = sorted(((leave - start) % ring.length or ring.length, to, n) for leave, to, n in inner)
    return np.vstack(list(_parts(tree, ring, start, stops)))


def _parts(
    tree: Mapping[int, Nested], ring: Ring, start: float, stops: Sequence[tuple[float, float, int]]
) -> Iterator[Spots]:
    done = 0.0
    for far, to, number in stops:
        yield _cut(ring, start + done, start + far)
        yield _round(tree, number, to)
        yield ring.spot((start + far) % ring.length)[None, :]
        done = far
    if ring.length - done > FINE:
        yield _cut(ring, start + done, start + ring.length)


def _cut(ring: Ring, start: float, end: float) -> Spots:
    """From one place on to another that lies no more than once round from it."""
    if end <= ring.length:
        return ring.forward(start, end)
    if start >= ring.length:
        return ring.forward(start - ring.length, end - ring.length)
    return (
        ring.forward(start, end - ring.length)
        if end - start < ring.length - FINE
        else (np.vstack([ring.forward(start, ring.length), ring.forward(0.0, end - ring.length)]))
    )
