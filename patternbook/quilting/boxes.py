"""Boxes of one size that an area is laid out in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon

from patternbook.quilting.nearest import Floats

SIGNS: Final = np.array([(-1, -1), (1, -1), (-1, 1), (1, 1)], dtype=np.float64)


@dataclass(frozen=True)
class Boxes:
    """Boxes of one size by their middles; `half` their sides."""

    middles: Floats
    half: Floats

    @property
    def reach(self) -> float:
        """From the middle to a corner."""
        return float(np.hypot(*self.half))

    @property
    def corners(self) -> Floats:
        return np.asarray(self.middles[:, None] + SIGNS * self.half)

    def only(self, kept: NDArray[np.bool_]) -> Boxes:
        return Boxes(self.middles[kept], self.half)

    def quartered(self) -> Boxes:
        return Boxes(Boxes(self.middles, self.half / 2).corners.reshape(-1, 2), self.half / 2)


def covering(edge: Polygon, across: int) -> Boxes:
    """Boxes near to squares that cover the edge's own box exactly."""
    west, north, east, south = edge.bounds
    side = max(east - west, south - north) / across
    columns, rows = (max(1, int(np.ceil(one / side))) for one in (east - west, south - north))
    half = np.array([(east - west) / columns, (south - north) / rows]) / 2
    x = west + half[0] * (2 * np.arange(columns) + 1)
    y = north + half[1] * (2 * np.arange(rows) + 1)
    return Boxes(np.stack(np.meshgrid(x, y), -1).reshape(-1, 2), half)
