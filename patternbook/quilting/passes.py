"""How often each place is stitched over: the length stitched once, twice, three times and more."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

import numpy as np
import shapely

from patternbook.quilting.nearest import Floats, Whole, parted, stretches
from patternbook.quilting.records import Path

# Lines nearer to one another than this lie on one another: no needle tells them apart.
SAME: Final = 2e-3
NOTHING: Final = 1e-9


def passes(paths: Sequence[Path]) -> Mapping[int, float]:
    """The length of line by how often it is stitched, each line counted once: two paths of 10
    that share 4 come to 12 once and 4 twice."""
    straight = stretches(paths)
    if not len(straight):
        return {}
    parts, _ = parted(straight)
    long = np.hypot(*(parts[:, 1] - parts[:, 0]).T)
    which, start, end = _shared(parts, long)
    times, length = _swept(
        np.concatenate([np.arange(len(parts)), which]),
        np.concatenate([np.zeros(len(parts)), start]),
        np.concatenate([long, end]),
    )
    # what lies m times in one place is met in each of the m parts
    most = int(times.max(initial=0))
    sums = np.bincount(times, weights=length / np.maximum(times, 1), minlength=most + 1)
    return {number: float(sums[number]) for number in range(1, most + 1) if sums[number] > SAME}


def once(paths: Sequence[Path]) -> float:
    """The length when nothing counts twice."""
    return sum(passes(paths).values())


def _shared(parts: Floats, long: Floats) -> tuple[Whole, Floats, Floats]:
    """Where another part lies on a part: the part, from where on it and to where."""
    one, other = _near(parts)
    way = (parts[:, 1] - parts[:, 0]) / np.maximum(long, NOTHING)[:, None]
    along = way[one]
    ends = parts[other] - parts[one, :1]
    at = (ends * along[:, None]).sum(-1)
    aside = ends[..., 0] * along[:, None, 1] - ends[..., 1] * along[:, None, 0]
    turned = at[:, 0] > at[:, 1]
    at[turned], aside[turned] = at[turned, ::-1], aside[turned, ::-1]
    start, end = np.maximum(at[:, 0], 0), np.minimum(at[:, 1], long[one])
    span = np.maximum(at[:, 1] - at[:, 0], NOTHING)
    slope = (aside[:, 1] - aside[:, 0]) / span
    farthest = np.maximum(*(np.abs(aside[:, 0] + slope * (to - at[:, 0])) for to in (start, end)))
    level = np.abs(slope) < 0.5  # side by side, not across
    kept = (end - start > NOTHING) & (farthest <= SAME) & level
    return one[kept], start[kept], end[kept]


def _near(parts: Floats) -> tuple[Whole, Whole]:
    """Each two parts whose boxes touch, both ways round."""
    low, high = parts.min(1) - SAME, parts.max(1) + SAME
    boxes = np.asarray(shapely.box(*low.T, *high.T))
    one, other = shapely.STRtree(boxes).query(boxes)
    apart = one != other
    return one[apart], other[apart]


def _swept(which: Whole, start: Floats, end: Floats) -> tuple[Whole, Floats]:
    """Along each part: how many lie there, and for how long."""
    part = np.concatenate([which, which])
    at = np.concatenate([start, end])
    change = np.repeat([1, -1], len(which))
    order = np.lexsort((-change, at, part))
    times = np.cumsum(change[order])[:-1]
    length = np.diff(at[order])
    same = np.diff(part[order]) == 0
    return times[same], length[same]
