"""Lengths, shares and places of the quilting in a quilter's words, on the ruler's marks."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Final

from patternbook.booklet import wording
from patternbook.inch import System, printed, ruler_near
from patternbook.quilting.records import Path, QuiltingPlan, Spot, Top, measured

NEAR: Final = 0.26  # inches: what lies so near an edge is said to lie on it
DUST: Final = 1e-6
CERTAIN: Final = 2e-3  # what a certified gap may be told less than it is
HALF: Final = Fraction(1, 2)
QUARTER: Final = Fraction(1, 4)
TEN: Final = Fraction(10)
SIDES: Final = (("left", "right"), ("top", "bottom"))
STRAIGHT: Final = 1.3  # times the way from end to end: a longer line goes round something


def up(value: float, step: Fraction) -> Fraction:
    """The next step above, floats' own dust aside."""
    return math.ceil(value / float(step) - DUST) * step


def told(value: float, system: System) -> str:
    """The nearest mark: `1½″`."""
    return wording.length(ruler_near(Fraction(value), system), system)


def at_most(value: float, system: System) -> str:
    """The next mark above, for what is never to be told too small."""
    if not math.isfinite(value):
        return wording.NONE
    return wording.length(up(value - CERTAIN, system.step), system)


def spread(values: list[float], system: System) -> str:
    """`1½″`, or `1 to 1½″` where they differ."""
    marks = sorted({ruler_near(Fraction(value), system) for value in values})
    if not marks:
        return wording.NONE
    if len(marks) == 1:
        return wording.length(marks[0], system)
    return wording.between(marks[0], marks[-1], system)


def in_shop(stitched: float, system: System) -> str:
    """A length of stitching in yards or metres, to the next half, from ten on to the next one."""
    shop = stitched / system.bolt
    return wording.amount(up(shop, HALF if shop < TEN else Fraction(1)), system.bolt_unit)


def thread(long: float, system: System) -> str:
    """Thread in yards or metres, to the next ten."""
    return wording.amount(up(long, TEN), system.bolt_unit)


def hours(least: float, most: float) -> str:
    """`1½ to 2½ hours`, to the quarter hour, the range never narrower than it is."""
    low = max(QUARTER, -up(-least, QUARTER))
    high = max(low, up(most, QUARTER))
    if low >= TEN:
        low, high = Fraction(int(low)), Fraction(math.ceil(high))
    if low == high:
        return printed(low)
    return f"{printed(low)} to{wording.NBSP}{printed(high)}"


def percent(share: float) -> str:
    """A share in whole hundredths, rounded up."""
    return f"{max(Fraction(0), up(share * 100, Fraction(1)))}{wording.NBSP}%"


def where(spot: Spot, top: Top, system: System) -> str:
    """`on the left edge, 6½″ from the top edge`."""
    left, high, right, low = top.edge.bounds
    near = NEAR * top.rules.inch
    sides = (
        _side(spot[0], left, right, near, SIDES[0]),
        _side(spot[1], high, low, near, SIDES[1]),
    )
    across, down = sides
    if across and down:
        return f"at the {down} {across} corner"
    if across:
        return f"on the {across} edge, {_far(spot[1], high, low, SIDES[1], system)}"
    if down:
        return f"on the {down} edge, {_far(spot[0], left, right, SIDES[0], system)}"
    one = _far(spot[0], left, right, SIDES[0], system)
    other = _far(spot[1], high, low, SIDES[1], system)
    return f"{one} and {other}"


def _side(at: float, low: float, high: float, near: float, names: tuple[str, str]) -> str:
    if at - low <= near:
        return names[0]
    return names[1] if high - at <= near else ""


def _far(at: float, low: float, high: float, names: tuple[str, str], system: System) -> str:
    """How far from the nearer of two edges."""
    first = at - low <= high - at
    far = at - low if first else high - at
    return f"{told(far, system)} from the {names[0] if first else names[1]} edge"


def way(path: Path) -> str:
    """Where a straight line goes: `down`, `up and right`; nothing of one that turns."""
    (ax, ay), (bx, by) = path[0], path[-1]
    far = math.dist(path[0], path[-1])
    if far <= 0 or measured(path) > far * STRAIGHT:
        return ""
    across = "right" if bx > ax else "left"
    down = "down" if by > ay else "up"
    if abs(bx - ax) < far * 0.2:
        return down
    return across if abs(by - ay) < far * 0.2 else f"{down} and {across}"


def limit(plan: QuiltingPlan, system: System) -> str:
    """How far apart the batting allows, and who says so."""
    far = told(plan.wishes.limit, system)
    return f"{far}, {'stated' if plan.wishes.limit_stated else 'assumed'}"
