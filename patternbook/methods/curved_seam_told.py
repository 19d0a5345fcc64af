"""How a curved seam is sewn, in words, and in sketches of its two pieces as they are cut."""

from __future__ import annotations

from fractions import Fraction
from math import cos, pi, sin
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES, INCHES, ruler_near
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn, Sides
from patternbook.methods.pieced import Point
from patternbook.methods.world import World

# Only for what is said to be "about" so long, and for the thread.
PI: Final = Fraction(355, 113)
STEPS: Final = 24


def actions(curve: Curve, radius: Exact, seam: Exact, world: World) -> tuple[Action, ...]:
    """Marked, laid and pinned, and sewn."""
    system = CENTIMETRES if world.unit == "cm" else INCHES
    longer = Exact(ruler_near(seam * PI, system))
    line = Exact(ruler_near(radius * (PI / 2), system))
    pie, ground = curve.pie, curve.ground
    return (
        Action(
            "mark",
            f"Fold {pie} and {ground} in half from corner to corner and mark the middle of both "
            f"curves. The curved edge of {pie} is about {{0}} longer than that of {ground} once "
            "both are cut; the seam lines are equally long, about {1}: do not trim it.",
            (longer, line),
            curve.apart(),
        ),
        Action(
            "lay",
            f"Lay {ground} on {pie}, right sides together. Pin the middle marks, then both ends, "
            "straight edges level, then in between.",
            (),
            curve.pinned(),
        ),
        Action(
            "sew",
            f"Sew with {ground} on top, where you see it, and a seam of {{0}}. Sew slowly and "
            "smooth the fold away before it reaches the needle; do not pull.",
            (seam,),
            curve.stitched(),
        ),
    )


class Curve:
    """The two pieces as they are cut, in raw measures, for the sketches."""

    def __init__(self, pie: str, ground: str, radius: float, seam: float, raw: float) -> None:
        self.pie, self.ground = pie, ground
        self.radius, self.seam, self.raw = radius, seam, raw

    def quarter(self, reach: float) -> tuple[Point, ...]:
        """A quarter circle about the seams' corner, from the right end to the low one, run on
        straight to the raw edges."""
        seam, angles = self.seam, [pi / 2 * step / STEPS for step in range(STEPS + 1)]
        bow = [(seam + reach * cos(angle), seam + reach * sin(angle)) for angle in angles]
        return ((seam + reach, 0.0), *bow, (0.0, seam + reach))

    def pie_cut(self) -> tuple[Point, ...]:
        """The pie with its allowance."""
        return ((0.0, 0.0), *self.quarter(self.radius + self.seam))

    def ground_cut(self, out: float = 0.0) -> tuple[Point, ...]:
        """The ground with its allowance; `out`: with so much of it pressed away."""
        bow = self.quarter(self.radius - self.seam + out)
        far = ((self.raw, 0.0), (self.raw, self.raw), (0.0, self.raw))
        return (*far, *bow[::-1])

    def apart(self) -> tuple[Drawn, ...]:
        """The two side by side, the middles marked."""
        beside = self.raw + 2 * self.seam
        pie = tuple((x + beside, y) for x, y in self.pie_cut())
        return (
            pieced.cloth(self.ground, self.ground_cut()),
            self._pin(self.radius - self.seam, pi / 4),
            pieced.cloth(self.pie, pie),
            self._pin(self.radius + self.seam, pi / 4, beside),
        )

    def _pin(self, reach: float, angle: float, beside: float = 0.0) -> Drawn:
        """A mark, or a pin, straight across the edge of a curve."""
        ends = (reach - 2 * self.seam, reach + 2 * self.seam)
        points = [
            (self.seam + end * cos(angle) + beside, self.seam + end * sin(angle)) for end in ends
        ]
        return pieced.mark(*points)

    def pinned(self) -> tuple[Drawn, ...]:
        """The ground wrong side up; the pie under it, turned over along the middle of the curve."""
        fold = 2 * self.seam + self.radius * 2**0.5
        under = tuple((fold - y, fold - x) for x, y in self.pie_cut())
        reach = self.radius - self.seam
        return (
            pieced.cloth(self.pie, under),
            pieced.wrong_side(self.ground, self.ground_cut()),
            *(self._pin(reach, angle) for angle in (0.0, pi / 4, pi / 2)),
        )

    def stitched(self) -> tuple[Drawn, ...]:
        """The ground wrong side up, its edge eased onto the pie's, and the seam."""
        return (
            pieced.wrong_side(self.ground, self.ground_cut()),
            pieced.sew(*self.quarter(self.radius)),
        )

    def open(self) -> tuple[Drawn, ...]:
        """The unit once it is pressed."""
        pie = ((0.0, 0.0), *self.quarter(self.radius))
        return pieced.cloth(self.pie, pie), pieced.cloth(self.ground, self.ground_cut(self.seam))

    def pressed(self) -> Action:
        """Pressed open, the seam whichever way the plan says."""
        return Action("press", "Press the seam {way}.", (), self.open())

    def trimmed(self, measure: Exact, ends: Exact) -> Action:
        """Trimmed on the two sides that are only ground."""
        words = (
            f"Trim to {{0}}. Level the two sides that meet at the corner of {self.pie}, taking off "
            "as little as you can; both ends of the curve lie {1} from that corner. Measure from "
            "these sides and cut the two others, so that the ends keep their seam."
        )
        at = float(measure)
        cuts = (
            pieced.cut((at, 0.0), (at, self.raw)),
            pieced.cut((0.0, at), (self.raw, at)),
        )
        return Action("trim", words, (Sides(measure, measure), ends), (*self.open(), *cuts))
