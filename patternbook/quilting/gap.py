"""The widest place that no stitch crosses: found between two bounds, so that it can be trusted.

The top is laid out in boxes. How far a spot lies from the nearest stitch changes by no more than
the spot moves, and how far it lies from one straight stretch of stitching is convex. So in a box

- no spot lies farther than its middle does, plus half its diagonal;
- nor farther than the worst of its corners from any one stretch;
- nor farther than the worst of its corners from any two stretches in the mean (which closes the
  flat ridge between two lines that run side by side).

Boxes that cannot hold a wider place than one that is known are let go, the others are quartered.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from patternbook.quilting.boxes import SIGNS, Boxes, covering
from patternbook.quilting.nearest import Floats, Stitching, Whole, stretches
from patternbook.quilting.records import Gap, Path

BUDGET: Final = 1_000_000  # boxes looked at before the answer is left as wide as it is
ACROSS: Final = 48  # boxes along the longer side of a top to begin with
FEW: Final = 12  # the same of a small area
TRIED: Final = 2_000  # spots of the most hopeful boxes that are tried for a wider place
Shapes = NDArray[np.object_]


def widest(
    lines: Sequence[Path],
    edge: Polygon,
    *,
    rim: bool,
    within: float = 1e-3,
    budget: int = BUDGET,
) -> Gap:
    """The widest circle, its middle on `edge`, that no stitch crosses; `rim` counts the edge as
    stitched. The bounds lie no more than `within` apart, or as far as the budget brought them."""
    return _found(lines, edge, rim, within, budget, ACROSS)


def quick(lines: Sequence[Path], shape: Polygon, within: float = 0.02) -> float:
    """At most so wide is the widest place in one area, its rim counted."""
    return _found(lines, shape, True, within, BUDGET // 10, FEW).high


def _found(
    lines: Sequence[Path], edge: Polygon, rim: bool, within: float, budget: int, across: int
) -> Gap:
    if not edge.is_valid:
        edge = edge.buffer(0)
    if edge.is_empty:
        return Gap(0.0, 0.0, (0.0, 0.0))
    straight = stretches([*lines, *(_rings(edge) if rim else ())])
    if not len(straight):
        at = edge.representative_point()
        return Gap(np.inf, np.inf, (at.x, at.y))
    search = _Search(Stitching(straight), edge, rim, within / 2)
    return search.run(covering(edge, across), budget)


def _rings(edge: Polygon) -> list[Path]:
    return [tuple(ring.coords) for ring in shapely.get_rings(shapely.get_parts(edge))]


class _Search:
    """Branch and bound; `known` is the widest place found so far (as a radius), `at` its middle."""

    def __init__(self, stitching: Stitching, edge: Polygon, rim: bool, within: float) -> None:
        self._stitching = stitching
        self._edge = edge
        self._rim = rim
        self._within = within
        self._full = bool(edge.area >= shapely.box(*edge.bounds).area * (1 - 1e-12))
        shapely.prepare(edge)
        self.known = 0.0
        somewhere = edge.representative_point()
        self.at = (somewhere.x, somewhere.y)

    def run(self, boxes: Boxes, budget: int) -> Gap:
        high = 0.0
        while len(boxes.middles):
            budget -= len(boxes.middles)
            boxes, most = self._bounded(boxes)
            open_ = most > self.known + self._within
            if 4 * int(open_.sum()) > budget:
                open_[:] = False  # the budget is used up: the boxes are let go as they are
            high = max(high, float(most.max(initial=0.0, where=~open_)))
            boxes = boxes.only(open_).quartered()
        return Gap(2 * self.known, 2 * max(high, self.known), self.at)

    def _bounded(self, boxes: Boxes) -> tuple[Boxes, Floats]:
        """The boxes that lie on the top, and how far from stitching a spot in each can be."""
        nearest = self._stitching.nearest(boxes.middles)
        far = self._stitching.distance(boxes.middles, nearest)
        most = far + boxes.reach
        if self._full:
            self._try(boxes.middles, far)
            return boxes, self._tight(boxes, nearest, most)
        inside = np.asarray(shapely.contains_xy(self._edge, *boxes.middles.T))
        self._try(boxes.middles[inside], far[inside])
        beyond = np.zeros(len(far))
        beyond[~inside] = shapely.distance(self._edge, shapely.points(boxes.middles[~inside]))
        if self._rim:  # from a middle beyond the rim the way to a spot on the top crosses it
            most = np.where(inside, most, np.minimum(most, boxes.reach - beyond))
        kept = beyond <= boxes.reach
        boxes, nearest, most = boxes.only(kept), nearest[kept], most[kept]
        if not self._rim:
            self._try_edge(boxes.middles[~inside[kept]])
        return boxes, self._tight(boxes, nearest, most)

    def _try_edge(self, spots: Floats) -> None:
        """The spots of the edge that lie nearest to spots beyond it."""
        if len(spots):
            ways = shapely.shortest_line(self._edge, shapely.points(spots))
            feet = shapely.get_coordinates(shapely.get_point(ways, 0))
            self._try(feet, self._stitching.distance(feet, self._stitching.nearest(feet)))

    def _try(self, spots: Floats, far: Floats) -> None:
        if len(far) and far.max() > self.known:
            best = int(np.argmax(far))
            self.known = float(far[best])
            self.at = (float(spots[best, 0]), float(spots[best, 1]))

    def _tight(self, boxes: Boxes, nearest: Whole, most: Floats) -> Floats:
        """The better bounds, where the first is not enough."""
        open_ = np.flatnonzero(most > self.known + self._within)
        if not len(open_):
            return most
        middles, one = boxes.middles[open_], nearest[open_]
        foot = self._stitching.foot(middles, one)
        other = self._stitching.nearest(2 * middles - foot)
        between = (foot + self._stitching.foot(middles, other)) / 2
        self._try_best(between, most[open_])
        if not self._rim:  # the widest place may lie on the edge, where only corners come
            corners = Boxes(middles, boxes.half).corners.reshape(-1, 2)
            self._try_best(corners, np.repeat(most[open_], len(SIGNS)))
        most[open_] = np.minimum(most[open_], self._by_corners(middles, boxes.half, one, other))
        return most

    def _by_corners(self, middles: Floats, half: Floats, one: Whole, other: Whole) -> Floats:
        """By the corners' distances from the nearest stretch, and from the one across."""
        corners = Boxes(middles, half).corners
        first = self._stitching.distance(corners, one[:, None])
        second = self._stitching.distance(corners, other[:, None])
        most = np.minimum(first.max(1), ((first + second) / 2).max(1))
        if not self._rim and not self._full:
            boxes = np.asarray(shapely.box(*(middles - half).T, *(middles + half).T))
            over = np.flatnonzero(~shapely.contains_properly(self._edge, boxes))
            most[over] = self._by_cut_corners(boxes[over], one[over], other[over])
        return np.asarray(most)

    def _by_cut_corners(self, boxes: Shapes, one: Whole, other: Whole) -> Floats:
        """The same of boxes that reach over the edge, by the corners of what is on the top."""
        on_top = shapely.intersection(boxes, self._edge)
        corners, which = shapely.get_coordinates(on_top, return_index=True)
        first = self._stitching.distance(corners, one[which])
        mean = (first + self._stitching.distance(corners, other[which])) / 2
        worst = np.zeros((2, len(boxes)))
        np.maximum.at(worst[0], which, first)
        np.maximum.at(worst[1], which, mean)
        return np.asarray(worst.min(0))

    def _try_best(self, spots: Floats, most: Floats) -> None:
        """Those spots on the top whose boxes may hold the widest place."""
        if len(spots) > TRIED:
            spots = spots[np.argsort(-most, kind="stable")[:TRIED]]
        spots = spots[shapely.intersects_xy(self._edge, *spots.T)]
        if len(spots):
            self._try(spots, self._stitching.distance(spots, self._stitching.nearest(spots)))
