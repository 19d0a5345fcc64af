"""Arrows of pressing: across the seam, the head on the fabric that receives the allowances."""

from __future__ import annotations

import math
from typing import Final

from patternbook.diagrams.shape import Points, around
from patternbook.diagrams.sheet import Box, reach
from patternbook.quilt.pressing import Way
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import press, press_open
from patternbook.strokes.stroke import Arrow, Label, Point, Stroke
from patternbook.strokes.tones import PAPER

_STEPS: Final = {"left": (-1, 0), "right": (1, 0), "up": (0, -1), "down": (0, 1)}
SHORT: Final = 13.0  # points
OPEN: Final = 9.0  # points of an arrow to both sides, from its middle


def arrow(pen: Pen, x: float, y: float, way: Way, *, upright: bool, long: float = SHORT) -> None:
    """An arrow over the seam at (x, y); `upright` tells how the seam itself runs."""
    if way == "open":
        _slip(pen, x, y, 2 * OPEN, level=upright)
        press_open(pen, (x, y), (0, 1) if upright else (1, 0))
        return
    _slip(pen, x, y, long, level=way in {"left", "right"})
    dx, dy = (step * pen.pt(long / 2) for step in _STEPS[way])
    press(pen, (x - dx, y - dy), (x + dx, y + dy))


def clear(pen: Pen, x: float, y: float, *, upright: bool, long: float = SHORT) -> bool:
    """Whether an arrow over an (upright) seam there would cover no words and no other arrow."""
    left, top, right, low = _cover(pen, x, y, long, level=upright)
    here = (left, top, right, low)
    return not any(_meet(here, reach(one, pen.pt(1))) for one in pen.strokes if _taken(one))


def slanted(pen: Pen, at: Point, along: Point, toward: Point | None) -> None:
    """An arrow over a seam that runs `along`, to the side of `toward`; to both where it is none."""
    way = _across(along, at, toward or at)
    far = pen.pt(OPEN if toward is None else SHORT / 2)
    start, end = ((at[0] + way[0] * step, at[1] + way[1] * step) for step in (-far, far))
    pen.patch(_under(pen, at, along), PAPER, None)
    if toward is None:
        pen.arrow((start, end), "press", "both", 5.0)
    else:
        press(pen, start, end)


def _across(along: Point, at: Point, toward: Point) -> Point:
    """The way across a seam, to the side of a point."""
    long = math.hypot(*along)
    across = (along[1] / long, -along[0] / long)
    there = (toward[0] - at[0]) * across[0] + (toward[1] - at[1]) * across[1]
    return across if there >= 0 else (-across[0], -across[1])


def _under(pen: Pen, at: Point, along: Point) -> Points:
    """The white slip under an arrow over a slanting seam."""
    x, y = _across(along, at, at)
    far, near = pen.pt(SHORT / 2 + 1), pen.pt(3.2)
    corners = ((-far, -near), (far, -near), (far, near), (-far, near))
    return tuple((at[0] + x * u - y * v, at[1] + y * u + x * v) for u, v in corners)


def free(pen: Pen, at: Point, along: Point) -> bool:
    """Whether an arrow over a seam there covers no words and no other arrow."""
    left, top, across, down = around(_under(pen, at, along))
    here = (left, top, left + across, top + down)
    return not any(_meet(here, reach(one, pen.pt(1))) for one in pen.strokes if _taken(one))


def _taken(stroke: Stroke) -> bool:
    return isinstance(stroke, Label) or (isinstance(stroke, Arrow) and stroke.role == "press")


def _meet(one: Box, other: Box) -> bool:
    level = one[0] < other[2] and other[0] < one[2]
    return level and one[1] < other[3] and other[1] < one[3]


def _slip(pen: Pen, x: float, y: float, long: float, *, level: bool) -> None:
    """White under an arrow, so that it reads on a dark fabric too."""
    left, top, right, low = _cover(pen, x, y, long, level=level)
    pen.rectangle(left, top, right - left, low - top, PAPER, None)


def _cover(pen: Pen, x: float, y: float, long: float, *, level: bool) -> Box:
    far, near = pen.pt(long / 2 + 1), pen.pt(3.2)
    half, high = (far, near) if level else (near, far)
    return x - half, y - high, x + half, y + high
