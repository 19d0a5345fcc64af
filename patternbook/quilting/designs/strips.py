"""The middle line of a strip, and how wide it is."""

from __future__ import annotations

import math
from typing import Final

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.designs.form import Room
from patternbook.quilting.designs.frame import DECIMALS, Spots, long_ways, reach
from patternbook.quilting.designs.rings import depth

EVEN: Final = 0.75  # of its greatest width: narrower anywhere, and it is no strip
ROUND: Final = 0.84  # of it, for a strip that runs round: at its corners it is wider by itself
LONG: Final = 1.5  # times as long as wide


def middle_line(room: Room) -> Spots:
    """The middle line of a channel or of a border that runs round; else that along the longer
    way of the shape."""
    if room.centre is not None:
        return np.array(room.centre)
    if room.shape.interiors:
        return _middle_ring(room.shape)
    axes = long_ways(room.shape)[0]
    low, high = reach(room.shape, axes)
    across = (low[1] + high[1]) / 2
    return axes.back(np.array([[low[0], across], [high[0], across]]))


def _middle_ring(shape: Polygon) -> Spots:
    outside = Polygon(shape.exterior)
    ring = outside.buffer(-round_width(shape) / 2, join_style="mitre")
    return shapely.get_coordinates(largest(ring).exterior)


def largest(left: shapely.Geometry) -> Polygon:
    """The largest part of a shape; empty where there is none."""
    parts = [part for part in shapely.get_parts(left) if isinstance(part, Polygon)]
    return max(parts, key=lambda part: round(float(part.area), DECIMALS), default=Polygon())


def round_width(shape: Polygon) -> float:
    """How wide a strip is that runs round a hole, where it is narrowest."""
    return min(float(shape.exterior.distance(hole)) for hole in shape.interiors)


def half_width(room: Room, middle: Spots) -> float:
    """Half the width of a strip, where it is narrowest between its two ends."""
    line = shapely.LineString(middle)
    spots = line.interpolate(np.linspace(0.25, 0.75, 9), normalized=True)
    return float(shapely.distance(spots, room.shape.boundary).min())


def runs_round(middle: Spots) -> bool:
    return math.dist(middle[0], middle[-1]) < 1e-6


def is_strip(room: Room) -> bool:
    """Whether it is much longer than wide: a channel, a strip, or a ring of even width."""
    shape = room.shape
    if room.centre is not None:
        return True
    if len(shape.interiors) == 1:
        return bool(round_width(shape) >= ROUND * 2 * depth(shape))
    low, high = reach(shape, long_ways(shape)[0])
    wide, tall = (high - low).tolist()
    full = shape.area >= EVEN * wide * tall
    return not shape.interiors and full and wide >= LONG * tall
