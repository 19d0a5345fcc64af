"""Moving, turning and scaling of strokes, so that one drawing can be put into another."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import ClassVar

from patternbook.strokes.stroke import Label, Point, Stroke

_QUARTERS = ((1, 0, 0, 1), (0, 1, -1, 0), (-1, 0, 0, -1), (0, -1, 1, 0))


@dataclass(frozen=True)
class Placing:
    """x' = a x + c y + e and y' = b x + d y + f; steps are chained in the order they happen."""

    a: float
    b: float
    c: float
    d: float
    e: float
    f: float

    still: ClassVar[Placing]

    def then(self, a: float, b: float, c: float, d: float, e: float = 0, f: float = 0) -> Placing:
        """This placing, followed by another given as its six numbers."""
        return Placing(
            a * self.a + c * self.b,
            b * self.a + d * self.b,
            a * self.c + c * self.d,
            b * self.c + d * self.d,
            a * self.e + c * self.f + e,
            b * self.e + d * self.f + f,
        )

    def moved(self, dx: float, dy: float) -> Placing:
        return self.then(1, 0, 0, 1, dx, dy)

    def scaled(self, by: float) -> Placing:
        return self.then(by, 0, 0, by)

    def turned(self, quarters: int) -> Placing:
        """Turned about the origin by quarter turns, clockwise as seen."""
        return self.then(*_QUARTERS[quarters % 4])

    def mirrored(self) -> Placing:
        """Left for right, about the upright line through the origin."""
        return self.then(-1, 0, 0, 1)

    def point(self, point: Point) -> Point:
        x, y = point
        return self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f

    def stroke(self, stroke: Stroke) -> Stroke:
        """The stroke in its new place; labels stay upright and sizes in points stay."""
        if isinstance(stroke, Label):
            x, y = self.point((stroke.x, stroke.y))
            return replace(stroke, x=x, y=y)
        return replace(stroke, points=tuple(map(self.point, stroke.points)))


Placing.still = Placing(1, 0, 0, 1, 0, 0)
