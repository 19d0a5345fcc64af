"""Lengths, places and directions on a top, in words."""

from __future__ import annotations

from fractions import Fraction

from patternbook import inch
from patternbook.quilting.records import Rules, Spot, Top

WAYS = {(1, 0): "right", (-1, 0): "left", (0, 1): "down", (0, -1): "up"}


def told(length: float, rules: Rules) -> str:
    """A length on the ruler's marks; `about` where it does not lie on one."""
    system = inch.INCHES if rules.inch == 1.0 else inch.CENTIMETRES
    exact = Fraction(length).limit_denominator(10**6)
    near = inch.ruler_near(exact, system)
    about = "" if abs(near - exact) < Fraction(1, 100) else "about "
    return about + inch.length(near, system)


def way(one: Spot, other: Spot) -> str:
    """In which direction a line runs: left, right, up or down, or slanting."""
    dx, dy = other[0] - one[0], other[1] - one[1]
    if min(abs(dx), abs(dy)) < 1e-3 * max(abs(dx), abs(dy)):
        sign = round(dx / max(abs(dx), abs(dy))), round(dy / max(abs(dx), abs(dy)))
        return WAYS[sign]
    return f"{'down' if dy > 0 else 'up'} and to the {'right' if dx > 0 else 'left'}"


def place(spot: Spot, top: Top) -> str:
    """Where a point lies on the top, from its left and upper edge."""
    x0, y0, _, _ = top.edge.bounds
    across, down = told(spot[0] - x0, top.rules), told(spot[1] - y0, top.rules)
    return f"{across} from the left edge and {down} from the top"
