"""Where a strip of piecing ends squarely at the open ground: what a channel grows out of."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final, NamedTuple

import numpy as np
import shapely
from shapely import LineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from patternbook.quilting.records import Cloth, Rules, Spot, Top

NEAR: Final = 1e-3
# Inches: what is narrower cannot hold a design, what is wider is an area of its own.
WIDTHS: Final = (1.5, 4.0)


class Root(NamedTuple):
    """The end of a strip: its middle, the way out into the ground, its width. `back` is how far
    the echo runs back on the two sides, beside a strip that stands in the ground by itself: no
    farther than the strip is `long`."""

    middle: Spot
    way: Spot
    width: float
    long: float
    cloth: int
    back: tuple[float, float]

    @property
    def side(self) -> Spot:
        """Square to the way out: the first of the two sides."""
        return -self.way[1], self.way[0]

    def spot(self, out: float, aside: float) -> Spot:
        """The point so far out from the end of the strip, and so far to the first side."""
        (x, y), (dx, dy), (sx, sy) = self.middle, self.way, self.side
        return round(x + out * dx + aside * sx, 6), round(y + out * dy + aside * sy, 6)


def firm(ground: Polygon, top: Top) -> BaseGeometry:
    """The seams at the rim of a ground, and the edge of the top: what a line can run up to."""
    if not top.seams:
        return top.edge.exterior
    lines = shapely.linestrings([(seam.path[0], seam.path[-1]) for seam in top.seams])
    near = shapely.STRtree(lines).query(ground.boundary, predicate="dwithin", distance=NEAR)
    return shapely.union_all([*lines[np.sort(near)], top.edge.exterior])


def roots(ground: Polygon, rim: BaseGeometry, top: Top) -> tuple[Root, ...]:
    """The ends of strips at one ground, by place. `rim` is what is firm of its rim."""
    shapely.prepare(ground)
    shapely.prepare(rim)
    tree = shapely.STRtree([cloth.shape for cloth in top.cloths])
    near = tree.query(ground.boundary, predicate="dwithin", distance=NEAR)
    cloths = [top.cloths[n] for n in np.sort(near) if not top.cloths[n].laid_on]
    ends = [end for cloth in cloths for end in _ends(cloth, top.rules)]
    if not ends:
        return ()
    spots = [(end.spot(0, 0), _outer(end, 1), _outer(end, -1)) for end in ends]
    near_rim = np.asarray(shapely.dwithin(rim, shapely.points(np.array(spots)), NEAR))
    outside = shapely.points(np.array([end.spot(4 * NEAR, 0) for end in ends]))
    kept = np.all(near_rim, axis=1) & np.asarray(shapely.contains(ground, outside))
    held = [ends[n] for n in np.flatnonzero(kept)]
    found = [root for end in held if (root := _with_back(end, ground, rim, top.rules))]
    return tuple(sorted(found, key=lambda root: (root.middle[1], root.middle[0], root.way)))


def _outer(end: Root, side: int) -> Spot:
    return end.spot(0, side * (end.width / 2 - 2 * NEAR))


def _ends(cloth: Cloth, rules: Rules) -> Iterator[Root]:
    """The straight ends of a patch between two sides that stand square to them."""
    corners = [(float(x), float(y)) for x, y in shapely.normalize(cloth.shape).exterior.coords[:-1]]
    count = len(corners)
    for n in range(count):
        before, start, end, after = (corners[(n + k) % count] for k in (-1, 0, 1, 2))
        width = math.dist(start, end)
        if not WIDTHS[0] * rules.inch - NEAR < width < WIDTHS[1] * rules.inch + NEAR:
            continue
        along = (end[0] - start[0]) / width, (end[1] - start[1]) / width
        if _square(along, before, start) and _square(along, after, end):
            middle = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
            # The rim of a normalized shape runs so that the outside lies to the left.
            way = round(-along[1], 9) + 0.0, round(along[0], 9) + 0.0
            long = min(math.dist(before, start), math.dist(after, end))
            yield Root(middle, way, round(width, 6), round(long, 6), cloth.number, (0.0, 0.0))


def _square(along: Spot, far: Spot, near: Spot) -> bool:
    """Whether a side goes back square from an end."""
    dx, dy = near[0] - far[0], near[1] - far[1]
    return abs(dx * along[0] + dy * along[1]) < NEAR < -dx * along[1] + dy * along[0]


def _with_back(end: Root, ground: Polygon, rim: BaseGeometry, rules: Rules) -> Root | None:
    """The root with its echo carried back on both sides as far as the ground is open there."""
    left, right = (_back(end, side, ground, rim, rules) for side in (1, -1))
    return None if left is None or right is None else end._replace(back=(left, right))


def _back(end: Root, side: int, ground: Polygon, rim: BaseGeometry, rules: Rules) -> float | None:
    """How far an echo runs back; nothing where it would end in the open."""
    half, wide = end.width / 2, end.width / 2 + rules.inch / 2
    middle = side * (half + wide) / 2
    behind = Point(end.spot(-4 * NEAR, middle))
    if not ground.contains(behind):
        flush = LineString([end.spot(0, side * half), end.spot(0, side * wide)])
        return 0.0 if on_rim(flush, rim) else None
    ray = LineString([end.spot(-4 * NEAR, middle), end.spot(-end.long - 10 * NEAR, middle)])
    length = reach(ray, ground)
    if length is None:
        return None
    back = round(length + 4 * NEAR, 6)
    foot = LineString([end.spot(-back, side * half), end.spot(-back, side * wide)])
    return back if on_rim(foot, rim) else None


def reach(ray: LineString, ground: Polygon) -> float | None:
    """How far a ray runs before it leaves the ground; nothing where it never does."""
    start = Point(ray.coords[0])
    parts: list[BaseGeometry] = shapely.get_parts(shapely.intersection(ray, ground)).tolist()
    first = [part for part in parts if part.distance(start) < NEAR and part.length > NEAR]
    if not first or first[0].length > ray.length - NEAR:
        return None
    return float(first[0].length)


def on_rim(line: LineString, rim: BaseGeometry) -> bool:
    """Whether a line lies on what is firm of a rim."""
    near = line.buffer(5 * NEAR, cap_style="flat").intersection(rim)
    return bool(near.length > line.length - 20 * NEAR)
