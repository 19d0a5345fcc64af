"""Smooth curves through spots."""

from __future__ import annotations

import numpy as np
import shapely

from patternbook.quilting.designs.frame import Spots


def rounded(spots: Spots, times: int, *, closed: bool) -> Spots:
    """Each corner cut off by a quarter of its sides, so many times over: a soft curve."""
    for _ in range(times):
        after = np.roll(spots, -1, axis=0) if closed else spots[1:]
        before = spots if closed else spots[:-1]
        cut = np.empty((2 * len(before), 2))
        cut[0::2] = 0.75 * before + 0.25 * after
        cut[1::2] = 0.25 * before + 0.75 * after
        spots = cut if closed else np.vstack([spots[:1], cut, spots[-1:]])
    return spots


def closed_up(spots: Spots) -> Spots:
    """With its first spot once more at the end."""
    return np.vstack([spots, spots[:1]])


def thinned(spots: Spots, within: float) -> Spots:
    """Without the spots that its bends do not need."""
    return shapely.get_coordinates(shapely.LineString(spots).simplify(within))
