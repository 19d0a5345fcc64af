"""How dense a design lies in an area: the length of its lines per square unit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

import shapely
from shapely import MultiLineString, Polygon

from patternbook.quilting.records import Drawn, Filled

ON_RIM: Final = 2e-3


def density(drawn: Drawn, shape: Polygon) -> float:
    """What lies on the rim is not counted, for it belongs to both sides; what is stitched twice
    counts once."""
    lines = MultiLineString([path for path in drawn.paths if len(path) > 1])
    core = shapely.buffer(shape, -ON_RIM, join_style="mitre")
    return float(lines.intersection(core).length) / float(shape.area)


def spread(fills: Sequence[Filled]) -> float:
    """How unevenly a top is quilted: the standard deviation of the density over its mean, each
    area with a design weighed by its size."""
    fills = [fill for fill in fills if fill.drawn.paths]
    weights = [float(fill.area.shape.area) for fill in fills]
    whole = sum(weights)
    if not whole:
        return 0.0
    mean = sum(w * fill.density for w, fill in zip(weights, fills, strict=True)) / whole
    square = sum(w * (fill.density - mean) ** 2 for w, fill in zip(weights, fills, strict=True))
    return math.sqrt(square / whole) / mean if mean else 0.0
