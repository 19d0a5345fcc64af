"""Arrows of pressing: across the seam, the head on the fabric that receives the allowances."""

from __future__ import annotations

from typing import Final

from patternbook.diagrams.sheet import Box, reach
from patternbook.quilt.pressing import Way
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import press, press_open
from patternbook.strokes.stroke import Label
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
    """Whether an arrow over an (upright) seam there would cover no words."""
    left, top, right, low = _cover(pen, x, y, long, level=upright)
    boxes = (reach(stroke, pen.pt(1)) for stroke in pen.strokes if isinstance(stroke, Label))
    return all(right <= box[0] or box[2] <= left or low <= box[1] or box[3] <= top for box in boxes)


def _slip(pen: Pen, x: float, y: float, long: float, *, level: bool) -> None:
    """White under an arrow, so that it reads on a dark fabric too."""
    left, top, right, low = _cover(pen, x, y, long, level=level)
    pen.rectangle(left, top, right - left, low - top, PAPER, None)


def _cover(pen: Pen, x: float, y: float, long: float, *, level: bool) -> Box:
    far, near = pen.pt(long / 2 + 1), pen.pt(3.2)
    half, high = (far, near) if level else (near, far)
    return x - half, y - high, x + half, y + high
