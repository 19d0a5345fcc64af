"""Lines side by side: how far apart they come to lie, and what of them a room holds."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from patternbook.quilting.designs.form import Room
from patternbook.quilting.designs.frame import FINE, Frame, Spots, reach

Levels = NDArray[np.float64]


def levels(low: float, high: float, spacing: float, clear: float = 0.0) -> Levels:
    """Where lines lie between two sides: exactly the spacing apart, the rest shared by the two
    sides. The rest is no wider than the spacing, unless that came nearer than `clear` to them."""
    width = high - low
    count = max(1, math.ceil(width / spacing - FINE) - 1)
    if count > 1 and (width - (count - 1) * spacing) / 2 < clear - FINE:
        count -= 1
    first = low + (width - (count - 1) * spacing) / 2
    return np.asarray(first + spacing * np.arange(count), dtype=np.float64)


def middle_levels(low: float, high: float, spacing: float) -> Levels:
    """As `levels`, with one line through the middle; the rest is a quarter of the spacing to
    five quarters of it. For lines that run into corners, where there is less room."""
    half = (high - low) / 2
    count = max(0, math.ceil(half / spacing - 1.25 - FINE))
    return np.asarray(low + half + spacing * np.arange(-count, count + 1), dtype=np.float64)


def kept(room: Room, axes: Frame) -> float:
    """How much is kept free across the lines, on the side where it is more."""
    (low, high), (free_low, free_high) = reach(room.shape, axes), reach(room.free, axes)
    return float(max((free_low - low)[1], (high - free_high)[1]))


def straight_lines(shape: Polygon, axes: Frame, at: Levels) -> list[Spots]:
    """Lines along the axes, longer than the shape is."""
    low, high = reach(shape, axes)
    spots = np.empty((len(at), 2, 2))
    spots[:, 0, 0], spots[:, 1, 0] = low[0] - 1, high[0] + 1
    spots[:, :, 1] = at[:, None]
    return list(axes.back(spots))


def clipped(
    lines: Sequence[Spots], room: Polygon, least: float, hug: float = 0.0
) -> tuple[list[Spots], list[int]]:
    """What of the lines lies in a room, with the number of the line that each is a piece of.

    Pieces shorter than `least` are left out, and those that keep within `hug` of the rim.
    """
    if not lines:
        return [], []
    shapes = np.array([shapely.LineString(line) for line in lines])
    cut = shapely.line_merge(shapely.intersection(shapes, room))
    parts, number = shapely.get_parts(cut, return_index=True)
    kept = (shapely.get_type_id(parts) == 1) & (shapely.length(parts) >= least)
    parts, number = parts[kept], number[kept]
    if hug and len(parts):
        core = room.buffer(-hug, join_style="mitre")
        held = shapely.intersects(parts, core)
        parts, number = parts[held], number[held]
    return [_forward(shapely.get_coordinates(part)) for part in parts], [int(n) for n in number]


def _forward(piece: Spots) -> Spots:
    """A piece from its first end to its last in reading order, whichever way it was cut."""
    first, last = np.round(piece[0], 6), np.round(piece[-1], 6)
    return piece if tuple(first) <= tuple(last) else piece[::-1]
