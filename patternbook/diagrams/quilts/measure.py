"""How far apart the lines of a design lie, measured between two of them that lie side by side."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final

import numpy as np
import shapely

from patternbook import inch
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.quilts.paths import Box
from patternbook.quilting.records import Path, Spot

NEAR: Final = 0.04  # of the spacing: so much a measure may be off and still be it
SHORT: Final = 0.15  # of the spacing: straight parts shorter than this are not measured from


def told_length(value: float, size: Size) -> str:
    """`1½″`: a length as the ruler shows it."""
    return inch.length(inch.ruler_near(Fraction(value), size.system), size.system)


def apart(parts: Sequence[Path], spacing: float, box: Box) -> tuple[Spot, Spot] | None:
    """Two places that face each other on neighbouring lines, as near the middle as can be."""
    starts, ends = _across(parts, spacing)
    if not starts:
        return None
    rays = shapely.linestrings(np.stack([np.array(starts), np.array(ends)], axis=1))
    lines = shapely.multilinestrings([shapely.linestrings(part) for part in parts])
    shapely.prepare(lines)
    froms = shapely.points(np.array(starts))
    met = shapely.intersection(rays, lines)
    far = np.asarray(shapely.distance(froms, met))
    good = np.flatnonzero(np.abs(far - spacing) <= NEAR * spacing)
    middle = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
    found = [(starts[at], ends[at], float(far[at])) for at in good]
    if not found:
        return None
    start, end, long = min(found, key=lambda one: (round(math.dist(one[0], middle), 6), one[0]))
    share = long / math.dist(start, end)
    there = (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
    return start, there


def _across(parts: Sequence[Path], spacing: float) -> tuple[list[Spot], list[Spot]]:
    """Ways square to the lines, from just beside them, as long as a little more than a spacing."""
    starts: list[Spot] = []
    ends: list[Spot] = []
    for (x, y), (dx, dy) in _places(parts, spacing):
        for side in (1, -1):
            nx, ny = side * -dy, side * dx
            starts.append((x + nx * 1e-4 * spacing, y + ny * 1e-4 * spacing))
            ends.append((x + nx * 1.05 * spacing, y + ny * 1.05 * spacing))
    return starts, ends


def _places(parts: Sequence[Path], spacing: float) -> Iterator[tuple[Spot, Spot]]:
    """Places along the straight parts of the lines, and the way of each."""
    for part in parts:
        for one, other in pairwise(part):
            long = math.dist(one, other)
            if long < SHORT * spacing:
                continue
            along = ((other[0] - one[0]) / long, (other[1] - one[1]) / long)
            for at in range(count := max(1, min(9, int(long / spacing)))):
                share = (at + 0.5) / count
                yield (
                    (one[0] + along[0] * long * share, one[1] + along[1] * long * share),
                    along,
                )
