"""Round corners of a rectangle, as fine as paper shows them."""

from __future__ import annotations

import math
from typing import Final

Point = tuple[float, float]
# Upper left, upper right, lower right, lower left: how far across and down.
SQUARE: Final = ((0, 0), (1, 0), (1, 1), (0, 1))
_STEPS: Final = 12  # straight lines to a quarter of a circle


def rounded(x: float, y: float, wide: float, long: float, radius: float) -> tuple[Point, ...]:
    """The outline, clockwise from the upper left; with no radius just the four corners."""
    places = [(x + right * wide, y + low * long, right, low) for right, low in SQUARE]
    if radius <= 0:
        return tuple((across, down) for across, down, _, _ in places)
    outline: list[Point] = []
    for across, down, right, low in places:
        arc = corner(across, down, radius, right, low)
        outline += arc if right == low else reversed(arc)
    return tuple(outline)


def corner(
    x: float, y: float, radius: float, right: int, low: int, beyond: float = 0.0
) -> tuple[Point, ...]:
    """The quarter of a circle that rounds the corner at x, y, from its upright side to its level
    one; `beyond` it by so much."""
    side, foot = 1 - 2 * right, 1 - 2 * low  # from the corner inward
    turns = (math.pi / 2 * step / _STEPS for step in range(_STEPS + 1))
    reach = radius + beyond
    return tuple(
        (
            x + side * (radius - reach * math.cos(turn)),
            y + foot * (radius - reach * math.sin(turn)),
        )
        for turn in turns
    )
