"""Straight stretches of stitching, and which of them lies nearest to a spot."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from patternbook.quilting.records import Path

Floats = NDArray[np.float64]
Whole = NDArray[np.intp]
NODE: Final = 4  # stretches a node of the tree holds; measured: with 10, half as quick


def stretches(paths: Sequence[Path]) -> Floats:
    """The straight stretches of paths, one row of two points each; those of no length left out."""
    longer = [path for path in paths if len(path) > 1]
    if not longer:
        return np.empty((0, 2, 2))
    spots = np.concatenate([np.asarray(path, dtype=np.float64)[:, :2] for path in longer])
    ends = np.cumsum([len(path) for path in longer])[:-1] - 1
    pairs = np.stack([spots[:-1], spots[1:]], axis=1)
    pairs = np.delete(pairs, ends, axis=0)
    return np.asarray(pairs[(pairs[:, 0] != pairs[:, 1]).any(axis=1)])


class Stitching:
    """Stretches that can be asked for the nearest. Long ones are looked for in parts, for a box
    around a long slanting one holds half the top."""

    def __init__(self, straight: Floats) -> None:
        self._start = straight[:, 0]
        self._way = straight[:, 1] - straight[:, 0]
        self._square = np.maximum((self._way**2).sum(-1), 1e-30)
        parts, self._whole = parted(straight)
        self._tree = shapely.STRtree(np.asarray(shapely.linestrings(parts)), NODE)

    def nearest(self, spots: Floats) -> Whole:
        """The number of the nearest stretch to each spot."""
        asked, found = self._tree.query_nearest(shapely.points(spots), all_matches=False)
        which = np.empty(len(spots), dtype=np.intp)
        which[asked] = self._whole[found]
        return which

    def foot(self, spots: Floats, which: Whole) -> Floats:
        """The spot of a stretch that is nearest to each spot."""
        start, way = self._start[which], self._way[which]
        share = ((spots - start) * way).sum(-1) / self._square[which]
        return np.asarray(start + np.clip(share, 0.0, 1.0)[..., None] * way)

    def distance(self, spots: Floats, which: Whole) -> Floats:
        """How far each spot lies from a stretch."""
        apart = spots - self.foot(spots, which)
        return np.hypot(apart[..., 0], apart[..., 1])


def parted(straight: Floats) -> tuple[Floats, Whole]:
    """The stretches in parts no longer than a usual one, and which stretch each is part of."""
    long = np.hypot(*(straight[:, 1] - straight[:, 0]).T)
    usual = max(float(np.hypot(*np.ptp(straight.reshape(-1, 2), axis=0))) / 32, 1e-9)
    number = np.maximum(1, np.ceil(long / usual)).astype(np.intp)
    whole = np.repeat(np.arange(len(straight)), number)
    first = np.repeat(np.cumsum(number) - number, number)
    step = (np.arange(len(whole)) - first)[:, None]
    way = (straight[:, 1] - straight[:, 0])[whole] / number[whole][:, None]
    starts = straight[whole, 0] + step * way
    return np.stack([starts, starts + way], axis=1), whole
