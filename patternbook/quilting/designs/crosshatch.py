"""Cross-hatch: lines that slant both ways, from seam to seam. No open spot is wider than 1.1 times
the spacing."""

from __future__ import annotations

import math
from typing import Final

import numpy as np
import shapely

from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import (
    Frame,
    Spots,
    as_path,
    frame,
    on_step,
    reach,
    side_frame,
)
from patternbook.quilting.designs.lines import clipped, middle_levels, straight_lines
from patternbook.quilting.designs.rim import Rim, serpentine
from patternbook.quilting.designs.rings import depth
from patternbook.quilting.records import Drawn, Path

LEAST: Final = 0.25
NEAR: Final = 0.12  # how far from square, and from the width wanted, a diamond may be
FULL: Final = 0.999  # of the box around it: a shape that fills so much is a rectangle


def draw(room: Room, spacing: float, _seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    if depth(room.shape) < told / 2:
        return None
    side = side_frame(room.shape)
    low, high = reach(room.shape, side)
    if room.shape.area >= FULL * float((high - low).prod()):
        lines, apart = diamonds(side, low, high, told)
        told = on_step(apart, room.rules)
    else:
        lines = both_ways(room, turned(side, frame(45)), told)
    pieces, _ = clipped(lines, room.shape, LEAST * told)
    paths = serpentine(Rim(room.shape), pieces)
    if not paths:
        return None
    found = tuple(map(as_path, paths))
    closed = len(found) == 1 and found[0][0] == found[0][-1]
    return Drawn(found, told, closed=closed, touches=True)


def turned(one: Frame, other: Frame) -> Frame:
    """Axes turned by the angles of both."""
    return Frame(
        one.cos * other.cos - one.sin * other.sin, one.sin * other.cos + one.cos * other.sin
    )


def both_ways(room: Room, axes: Frame, spacing: float) -> list[Spots]:
    found: list[Spots] = []
    for way in (axes, axes.across):
        low, high = reach(room.shape, way)
        at = middle_levels(float(low[1]), float(high[1]), spacing)
        found += straight_lines(room.shape, way, at)
    return found


def diamonds(side: Frame, low: Spots, high: Spots, spacing: float) -> tuple[list[Spots], float]:
    """Lines of whole diamonds along each side of a rectangle, as near to square as fits: they
    meet at the seams, so that each line goes on where another ends. And how far apart they lie.

    In a square they run through the corners. Else they begin half a diamond from them, and where
    the two counts have no common part all of them are one round trip.
    """
    size = high - low
    counts, half = _counts(size, spacing * math.sqrt(2))
    wide, tall = size / counts
    total = int(counts.sum())
    falling = [(number + half, 1.0) for number in range(-int(counts[1]), int(counts[0]))]
    rising = [(number + half, -1.0) for number in range(total)]
    ends = np.array([-1.0, total + 1.0])
    lines = [
        side.back(low + np.column_stack([(number + slope * ends) * wide, ends * tall]))
        for number, slope in falling + rising
    ]
    return lines, float(wide * tall / math.hypot(wide, tall))


def _counts(size: Spots, across: float) -> tuple[Spots, float]:
    """How many diamonds lie along each side, and which part of one lies before the first line."""
    near = np.maximum(1, np.round(size / across))
    if abs(size[0] - size[1]) < NEAR * across:
        return near, 0.0
    tried = [
        near + np.array([one, other])
        for one in (0, 1, -1)
        for other in (0, 1, -1)
        if math.gcd(int(near[0]) + one, int(near[1]) + other) == 1
    ]
    fit = [counts for counts in tried if counts.min() >= 1 and _off(size, counts, across) <= NEAR]
    best = min(fit, key=lambda counts: round(_off(size, counts, across), 6), default=near)
    return best, 0.5


def _off(size: Spots, counts: Spots, across: float) -> float:
    """By how much diamonds are wider or narrower than wanted, or out of square."""
    wide, tall = size / counts
    return float(max(abs(wide / across - 1), abs(tall / across - 1), abs(wide / tall - 1)))


def element() -> tuple[Path, ...]:
    """A square of three diamonds each way, in one line."""
    square = np.array([[0.0, 0.0], [3.0, 3.0]])
    lines, _ = diamonds(Frame(1.0, 0.0), square[0], square[1], 1 / math.sqrt(2))
    shape = shapely.box(0, 0, 3, 3)
    pieces, _ = clipped(lines, shape, LEAST)
    return tuple(map(as_path, serpentine(Rim(shape), pieces)))


DESIGN: Final = Design(
    name="cross-hatch",
    foot="walking foot",
    plain=False,
    kinds=("square", "ground", "corner", "band", "border"),
    suits=lambda _room: True,
    draw=draw,
    sewn={
        "walking foot": "Mark all lines. Sew one to the seam, turn there, and sew back along the "
        "next that begins there; where none does, go on in the seam.",
        "ruler": "Mark the lines and sew each along the thick quilting ruler with the ruler foot; "
        "go from one to the next in the seam around.",
    },
    corner="Turn at the seam with the needle down, and sew in the seam to the next line.",
    element=element,
)
