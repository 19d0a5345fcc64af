"""A template that is larger than a sheet of paper, parted into tiles that overlap and are taped."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from patternbook.diagrams.template_text import Box, clipped
from patternbook.quilt.template import Curve
from patternbook.strokes import signs
from patternbook.strokes.pen import Pen

# Inches that a template may take on a page, so that its tiles fit A4 and Letter alike beside the
# heading, the test bar and a caption (184.6 × 254 mm is free on both, trade facts 14.5).
MOST: Final = (7.0, 7.6)
OVERLAP: Final = 0.5


@dataclass(frozen=True)
class Tile:
    """One part: its number of so many, and what of the whole lies on it, in inches from the top
    left of the whole. `joins` are the lines along which it meets others, and their numbers."""

    number: int
    of: int
    within: Box
    joins: tuple[tuple[Box, int], ...]

    def on(self, scale: float) -> Box:
        """What lies on it, in the drawing's own measures."""
        left, top, right, low = (number / scale for number in self.within)
        return left, top, right, low


def tiles(size: tuple[float, float]) -> tuple[Tile, ...]:
    """The tiles of a drawing so large, row by row; one where it needs no parting."""
    columns, rows = (_parts(side, most) for side, most in zip(size, MOST, strict=True))
    spans = [_spans(side, parts) for side, parts in zip(size, (columns, rows), strict=True)]
    found = []
    for row, (top, low) in enumerate(spans[1]):
        for column, (left, right) in enumerate(spans[0]):
            number = row * columns + column + 1
            within = left, top, right, low
            near = _joins(within, number, (column, row), (columns, rows))
            found.append(Tile(number, columns * rows, within, tuple(near)))
    return tuple(found)


def _parts(side: float, most: float) -> int:
    return 1 if side <= most else math.ceil((side - OVERLAP) / (most - OVERLAP))


def _spans(side: float, parts: int) -> list[tuple[float, float]]:
    if parts == 1:
        return [(0.0, side)]
    step = (side - OVERLAP) / parts
    return [(part * step, (part + 1) * step + OVERLAP) for part in range(parts)]


def _joins(
    within: Box, number: int, at: tuple[int, int], of: tuple[int, int]
) -> Iterator[tuple[Box, int]]:
    left, top, right, low = within
    half = OVERLAP / 2
    if at[0] > 0:
        yield (left + half, top, left + half, low), number - 1
    if at[0] < of[0] - 1:
        yield (right - half, top, right - half, low), number + 1
    if at[1] > 0:
        yield (left, top + half, right, top + half), number - of[0]
    if at[1] < of[1] - 1:
        yield (left, low - half, right, low - half), number + of[0]


def parted(curve: Curve, within: Box, *, closed: bool) -> Iterator[Curve]:
    """What of a line lies in a box, as lines."""
    run: list[tuple[float, float]] = []
    for start, end in pairwise((*curve, curve[0]) if closed else curve):
        part = clipped(start, end, within)
        if part is None:
            continue
        if run and math.dist(run[-1], part[0]) > 1e-9:
            yield tuple(run)
            run = []
        run += part[1:] if run else part
    if run:
        yield tuple(run)


def draw_joins(pen: Pen, tile: Tile, scale: float) -> None:
    """The dashed lines where tiles are laid on one another, a cross at both quarters of each."""
    for ends, other in tile.joins:
        x, y, u, v = (number / scale for number in ends)
        pen.line(((x, y), (u, v)), "trim")
        for share in (0.25, 0.75):
            signs.plus(pen, x + (u - x) * share, y + (v - y) * share)
        middle = (x + u) / 2, (y + v) / 2
        upright = x == u
        pen.label(
            *middle, f"tile {other} joins here", 8, angle=90.0 if upright else 0.0, plate="#ffffff"
        )


def shows_something(curve: Curve, tile: Tile, scale: float) -> bool:
    """Whether the line runs over the tile."""
    return next(parted(curve, tile.on(scale), closed=True), None) is not None
