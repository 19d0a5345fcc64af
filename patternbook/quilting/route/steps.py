"""The short steps between the end of a fill and the lines around it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import STRtree

from patternbook.quilting.records import Rules, Spot
from patternbook.quilting.route.pieces import Piece

NEAR: Final = 1e-3  # as good as on the line
GRID: Final = 1e-4  # the same spot
FARTHER: Final = 1.25  # times as long as the shortest: a step to another line around a corner
ASIDE: Final = 0.7  # how much two steps may point the same way (the cosine between them)
WIDEST: Final = 1.9  # inches: a longer way over is no step
DIRECT: Final = 1.0  # inches between two ends that are joined directly, at most

End = tuple[int, Spot]  # of which path, and where


class Hit(NamedTuple):
    """A spot upon a line: how far along it, and where."""

    line: int
    along: float
    spot: Spot


def points(spots: Iterable[Sequence[float]]) -> NDArray[np.object_]:
    return np.array([shapely.Point(spot) for spot in spots], dtype=object)


def attached(
    tree: STRtree, found: Sequence[Piece], ends: Sequence[End], rules: Rules
) -> list[list[Hit]]:
    """For each end the nearest places on lines around it: one, or in a corner two. The step there
    stays in the area, or goes no farther over its rim than to the line beside a seam."""
    if not len(tree.geometries) or not ends:
        return [[] for _ in ends]
    spots = points(spot for _, spot in ends)
    _, nearest = tree.query_nearest(spots, return_distance=True, all_matches=False)
    within = np.minimum(nearest * FARTHER + 2 * rules.beside, WIDEST * rules.inch)
    at, line = tree.query(spots, predicate="dwithin", distance=within)
    along = shapely.line_locate_point(tree.geometries[line], spots[at])
    feet = shapely.get_coordinates(shapely.line_interpolate_point(tree.geometries[line], along))
    start = np.array([spot for _, spot in ends])[at]
    allowed = _staying(found, [ends[n][0] for n in at], np.stack([start, feet], axis=1), rules)
    far = np.hypot(*(feet - start).T)
    order = np.lexsort((line, far.round(6), at))
    offered: list[list[tuple[float, Hit]]] = [[] for _ in ends]
    for n in order[allowed[order]].tolist():
        end = int(at[n])
        hit = Hit(int(line[n]), float(along[n]), _spot(feet[n], ends[end][1]))
        offered[end].append((float(far[n]), hit))
    return [_apart(those, spot) for those, (_, spot) in zip(offered, ends, strict=True)]


def _staying(
    found: Sequence[Piece], owners: Sequence[int], steps: NDArray[np.float64], rules: Rules
) -> NDArray[np.bool_]:
    shapes = np.array([piece.shape for piece in found], dtype=object)
    around = shapely.buffer(shapes, rules.beside + NEAR)
    shapely.prepare(around)
    return np.atleast_1d(shapely.covers(around[owners], shapely.linestrings(steps)))


def _apart(offered: Sequence[tuple[float, Hit]], spot: Spot) -> list[Hit]:
    """The nearest, and those that are almost as near and lie another way."""
    kept: list[tuple[float, Hit]] = []
    for far, hit in offered:
        if kept and far > kept[0][0] * FARTHER:
            break
        if all(_aside(spot, hit.spot, other.spot, far * near) for near, other in kept):
            kept.append((far, hit))
    return [hit for _, hit in kept]


def _aside(spot: Spot, one: Spot, other: Spot, scale: float) -> bool:
    alike = (one[0] - spot[0]) * (other[0] - spot[0]) + (one[1] - spot[1]) * (other[1] - spot[1])
    return alike < ASIDE * scale


def _spot(foot: NDArray[np.float64], end: Spot) -> Spot:
    """The place on the line; the end itself where it lies there."""
    there = round(float(foot[0]), 6), round(float(foot[1]), 6)
    return end if math.dist(there, end) <= GRID else there


def direct(found: Sequence[Piece], ends: Sequence[End], rules: Rules) -> Iterator[tuple[int, int]]:
    """Pairs of ends of two paths that are so close that the needle goes straight over, and stays
    within the two areas."""
    spots = points(spot for _, spot in ends)
    one, other = STRtree(spots).query(
        spots, predicate="dwithin", distance=DIRECT * rules.inch + GRID
    )
    owner = np.array([number for number, _ in ends], dtype=np.intp)
    kept = (one < other) & (owner[one] != owner[other])
    one, other = one[kept], other[kept]
    if not len(one):
        return
    where = np.array([spot for _, spot in ends])
    steps = shapely.linestrings(np.stack([where[one], where[other]], axis=1))
    shapes = np.array([piece.shape for piece in found], dtype=object)
    outside = shapely.difference(
        shapely.difference(steps, shapes[owner[one]]), shapes[owner[other]]
    )
    allowed = np.atleast_1d(shapely.length(outside)) <= NEAR
    yield from sorted(zip(one[allowed].tolist(), other[allowed].tolist(), strict=True))
