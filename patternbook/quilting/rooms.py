"""The room that an area leaves a design: what is free of seams and of the finished edge."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.designs.form import Room
from patternbook.quilting.records import Area, Spot, Top

NEAR: Final = 1e-3
NEARER: Final = (1.0, 0.5, 0.25)
MOST: Final = 0.95  # a share of what is free, so large that the rest may be left
# Where corners of patches matter: lines run through them.
CORNERED: Final = frozenset({"body", "piecing", "square"})


def rooms(areas: Sequence[Area], top: Top) -> Mapping[str, Room]:
    """The room of each area, by its key."""
    shapes = np.array([area.shape for area in areas])
    within = shapely.buffer(top.edge, -top.rules.edge, join_style="mitre")
    free = [_free(shape, within, top.rules.seam) for shape in shapes]
    found = _corners(areas, shapes, top)
    return {
        area.key: Room(area.shape, left, top.edge, area.kind, top.rules, spots, area.centre)
        for area, left, spots in zip(areas, free, found, strict=True)
    }


def _free(shape: Polygon, within: Polygon, seam: float) -> Polygon:
    """What keeps so far from the rim, in one part: nearer to it where the area is so narrow
    somewhere that it would fall in several."""
    largest = Polygon()
    for share in NEARER:
        narrower = shapely.buffer(shape, -seam * share, join_style="mitre")
        left = shapely.intersection(narrower, within)
        parts = [part for part in shapely.get_parts(left) if isinstance(part, Polygon)]
        one = max(parts, key=lambda part: float(part.area), default=Polygon())
        if len(parts) == 1 or one.area > MOST * left.area:
            return one
        largest = largest if largest.area >= one.area else one
    return largest


def _corners(areas: Sequence[Area], shapes: np.ndarray, top: Top) -> list[tuple[Spot, ...]]:
    """The corners of patches in each area, from the left and from above, each once."""
    spots = sorted({_rounded(spot) for cloth in top.cloths for spot in cloth.shape.exterior.coords})
    found: list[list[Spot]] = [[] for _ in areas]
    wanted = [n for n, area in enumerate(areas) if area.kind in CORNERED]
    if wanted:
        tree = shapely.STRtree(shapely.points(spots))
        close = shapely.buffer(shapes[wanted], NEAR)
        for number, spot in zip(*tree.query(close, predicate="intersects"), strict=True):
            found[wanted[number]].append(spots[spot])
    return [tuple(sorted(each)) for each in found]


def _rounded(spot: tuple[float, ...]) -> Spot:
    return round(spot[0], 6), round(spot[1], 6)
