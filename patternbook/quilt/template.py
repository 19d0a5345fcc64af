"""Shapes that no ruler cuts: the seam lines of each, in the box around it, exact wherever a curve
drawn by hand is not what they come from."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal, NamedTuple, get_args

from patternbook.exact import ROOT3, Exact
from patternbook.methods.made import Arc, Outline, Sides, Spot

Kind = Literal["quarter circle", "quarter hollow", "hexagon", "half hexagon", "outline", "drawing"]
KINDS: Final[tuple[Kind, ...]] = get_args(Kind)
HEXAGONS: Final[tuple[Kind, ...]] = ("hexagon", "half hexagon")
Curve = tuple[tuple[float, float], ...]
NOUGHT: Final = Exact(0)


@dataclass(frozen=True)
class Template:
    """How one letter is cut by a template.

    `sew` are its seam lines. `radius` is the finished radius of a quarter, `side` the finished
    side of a hexagon. A drawing has `curves` as well, closed lines within 1/64 inch of what the
    author drew, the largest first; it is laid on its ground, so it has no seam allowance and is
    traced reversed.
    """

    kind: Kind
    sew: Outline
    radius: Exact | None = None
    side: Exact | None = None
    curves: tuple[Curve, ...] = ()

    @property
    def laid_on(self) -> bool:
        """Whether it is a shape to be laid on a ground: drawn reversed, without allowance."""
        return self.kind == "drawing"

    @property
    def trims(self) -> bool:
        """Whether its cloth is cut along it before anything is sewn."""
        return not self.laid_on and self.kind not in HEXAGONS


def quarter_circle(radius: Exact) -> Outline:
    """A quarter of a circle, its centre at the top left."""
    corners = Spot(NOUGHT, NOUGHT), Spot(radius, NOUGHT), Spot(NOUGHT, radius)
    return Outline(corners, (Arc(1, corners[0], radius, False),))


def quarter_hollow(box: Sides, radius: Exact) -> Outline:
    """A rectangle, larger both ways, without that quarter circle at its top left."""
    across, down = box
    right = Spot(radius, NOUGHT), Spot(across, NOUGHT), Spot(across, down)
    corners = (*right, Spot(NOUGHT, down), Spot(NOUGHT, radius))
    return Outline(corners, (Arc(4, Spot(NOUGHT, NOUGHT), radius, True),))


def hexagon_box(side: Exact, *, half: bool = False) -> Sides:
    """Width and height of a hexagon that stands on a point, or of one half of it."""
    return Sides(side * ROOT3 / (2 if half else 1), side * 2)


def hexagon(side: Exact) -> Outline:
    """A hexagon that stands on a point."""
    across, down = hexagon_box(side)
    half, high, low = across / 2, side / 2, side * Fraction(3, 2)
    top, right = Spot(half, NOUGHT), (Spot(across, high), Spot(across, low))
    return Outline((top, *right, Spot(half, down), Spot(NOUGHT, low), Spot(NOUGHT, high)))


def half_hexagon(side: Exact) -> Outline:
    """The right half of it: its straight edge begins a row."""
    across, down = hexagon_box(side, half=True)
    high, low = side / 2, side * Fraction(3, 2)
    right = Spot(across, high), Spot(across, low)
    return Outline((Spot(NOUGHT, NOUGHT), *right, Spot(NOUGHT, down)))


def polygon(points: Sequence[tuple[Fraction, Fraction]]) -> Outline:
    """The shape with these corners: clockwise, its box at nought, none of them in a line."""
    left, top = min(x for x, _ in points), min(y for _, y in points)
    around = [(x - left, y - top) for x, y in points]
    if _turning(around) < 0:
        around.reverse()
    corners = [
        Spot(Exact(x), Exact(y))
        for number, (x, y) in enumerate(around)
        if _bend(around[number - 1], (x, y), around[(number + 1) % len(around)]) != 0
    ]
    return Outline(tuple(corners))


def _turning(points: Sequence[tuple[Fraction, Fraction]]) -> Fraction:
    """Twice the area; above nought where the corners go round clockwise, y downward."""
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return sum((x * v - u * y for (x, y), (u, v) in pairs), Fraction(0))


def _bend(
    before: tuple[Fraction, Fraction],
    at: tuple[Fraction, Fraction],
    after: tuple[Fraction, Fraction],
) -> Fraction:
    (ax, ay), (bx, by), (cx, cy) = before, at, after
    return (bx - ax) * (cy - by) - (by - ay) * (cx - bx)


class CurvedPair(NamedTuple):
    """A quarter circle and the hollow it is sewn into. Between the ends of the seam the edge of
    the hollow is cut shorter than the seam, that of the quarter longer by as much."""

    pie: str
    ground: str
    radius: Exact
    allowance: Fraction

    @property
    def seam_line(self) -> float:
        """How long the seam is: a quarter of the circle, on both templates."""
        return math.pi / 2 * float(self.radius)

    @property
    def longer(self) -> float:
        """By how much the cut edge of the quarter is longer than that of the hollow, whatever
        the radius: π/4 inch at a seam of 1/4."""
        return math.pi * float(self.allowance)


def curved_pairs(found: Mapping[str, Template], seam: Fraction) -> Iterator[CurvedPair]:
    """Every quarter circle with the hollows of its radius."""
    for pie, round_ in found.items():
        for ground, hollow in found.items():
            kinds = (round_.kind, hollow.kind)
            if kinds == ("quarter circle", "quarter hollow") and round_.radius == hollow.radius:
                yield CurvedPair(pie, ground, round_.radius or NOUGHT, seam)
