"""The grid that the corners of squares lie on, and the slanted lines through them."""

from __future__ import annotations

import math
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from patternbook.quilting.designs.form import Room
from patternbook.quilting.designs.frame import Frame, frame, reach

Values = NDArray[np.float64]
FEW: Final = 8  # fewer corners than these make no grid
MOST: Final = 0.7  # of the corners lie on the grid, else there is none
NEAR: Final = 0.02  # inches: how far from the grid a corner may lie
SQUARES: Final = 0.4  # of the corners have a square to the right of them and below
SLANTS: Final = (45.0, 135.0)


class Slant(NamedTuple):
    """Lines through corners one way: the axes along them, where one lies, how far apart."""

    axes: Frame
    first: float
    apart: float


def slants(room: Room) -> tuple[Slant, ...]:
    """Both ways of the lines through the corners of squares; none where squares do not lie on one
    grid, or stand on their points."""
    if len(room.corners) < FEW:
        return ()
    found = tuple(_slant(room, frame(angle)) for angle in SLANTS)
    both = [one for one in found if one is not None]
    if len(both) < len(SLANTS) or abs(both[0].apart - both[1].apart) > NEAR * room.rules.inch:
        return ()
    return tuple(both) if squared(room, both[0].apart) else ()


def _slant(room: Room, axes: Frame) -> Slant | None:
    places = axes.turned(np.array(room.corners))[:, 1]
    near = NEAR * room.rules.inch
    values, counts = _counted(places, near)
    strong = values[counts >= counts.max() / 3]
    steps = np.round(np.diff(strong) / near) * near
    wide = steps[steps > room.rules.inch / 2]
    if not len(wide):
        return None
    apart = _mean_step(strong, float(np.median(wide)), near)
    off = np.abs((places - strong[0] + apart / 2) % apart - apart / 2)
    return Slant(axes, float(strong[0]), apart) if (off <= 3 * near).mean() >= MOST else None


def _mean_step(values: Values, step: float, near: float) -> float:
    """The step measured over its longest even run, so that no error adds up."""
    counts = np.round((values - values[0]) / step)
    even = np.abs(values - values[0] - counts * step) <= near * np.maximum(1, counts)
    last = int(np.flatnonzero(even)[-1])
    return float((values[last] - values[0]) / counts[last]) if counts[last] else step


def _counted(places: Values, near: float) -> tuple[Values, NDArray[np.int64]]:
    """Places, each once, and how many there are of it."""
    ordered = np.sort(places)
    group = np.concatenate([[0], np.cumsum(np.diff(ordered) > near)])
    counts = np.bincount(group)
    return np.bincount(group, weights=ordered) / counts, counts


def squared(room: Room, apart: float) -> bool:
    """Whether there are squares with level and upright sides between the slanted lines: enough
    corners have others a square away, and fewer have one half a square away both level and
    upright, as where squares stand on their points."""
    near = NEAR * room.rules.inch
    spots = np.array(room.corners)
    tree = shapely.STRtree([shapely.Point(spot) for spot in spots])

    def has(right: float, down: float) -> NDArray[np.bool_]:
        moved = shapely.points(spots + np.array([right, down]))
        found = tree.query(moved, predicate="dwithin", distance=3 * near)[0]
        return np.isin(np.arange(len(spots)), found)

    side = apart * math.sqrt(2)
    square = has(side, 0) & has(0, side) & has(side, side)
    standing = has(side / 2, side / 2) & ~has(side / 2, 0)
    return bool(square.mean() >= SQUARES and standing.mean() < square.mean())


def through(room: Room, slant: Slant, times: float) -> Values:
    """Where lines lie that are so many times the grid's step apart, all of them within a room:
    those through as many corners as can be."""
    low, high = reach(room.shape, slant.axes)
    apart = slant.apart * times
    middle = float(low[1] + high[1]) / 2
    offsets = slant.first + slant.apart * np.arange(max(1, round(times)))
    first = min((float(o) for o in offsets), key=lambda o: round(_off(middle, o, apart), 6))
    start = np.ceil((low[1] - first) / apart + 1e-6)
    stop = np.floor((high[1] - first) / apart - 1e-6)
    return first + apart * np.arange(start, stop + 1)


def _off(middle: float, first: float, apart: float) -> float:
    return abs((middle - first + apart / 2) % apart - apart / 2)
