"""Arrows of pressing: across the seam, the head on the fabric that receives the allowances."""

from __future__ import annotations

from typing import Final

from patternbook.quilt.pressing import Way
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import press, press_open

_STEPS: Final = {"left": (-1, 0), "right": (1, 0), "up": (0, -1), "down": (0, 1)}
SHORT: Final = 13.0  # points


def arrow(pen: Pen, x: float, y: float, way: Way, *, upright: bool, long: float = SHORT) -> None:
    """An arrow over the seam at (x, y); `upright` tells how the seam itself runs."""
    if way == "open":
        press_open(pen, (x, y), (0, 1) if upright else (1, 0))
        return
    dx, dy = (step * pen.pt(long / 2) for step in _STEPS[way])
    press(pen, (x - dx, y - dy), (x + dx, y + dy))


def word(way: Way) -> str:
    """The way in words."""
    return "open" if way == "open" else way
