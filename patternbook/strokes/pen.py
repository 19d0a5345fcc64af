"""The pen: it collects the strokes of one drawing, in the order they lie on top of one another."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import TypedDict, Unpack

from patternbook.strokes.lettering import CAP_HEIGHT, text_width
from patternbook.strokes.placing import Placing
from patternbook.strokes.stroke import (
    INK,
    Anchor,
    Arrow,
    Drawing,
    Fill,
    Heads,
    Label,
    Line,
    Patch,
    Point,
    Role,
    Stroke,
    Weight,
)
from patternbook.strokes.tones import ink_on

_CORNERS = 48


class LabelLook(TypedDict, total=False):
    """What a label may have besides its place, words and size."""

    anchor: Anchor
    weight: Weight
    colour: str
    angle: float
    italic: bool
    plate: str | None


class Pen:
    """Draws on a sheet `width` by `height` units, printed at `scale` inches a unit."""

    def __init__(self, width: float, height: float, scale: float) -> None:
        self.width = width
        self.height = height
        self.scale = scale
        self.strokes: list[Stroke] = []

    def pt(self, points: float) -> float:
        """Points on paper, in units of the drawing."""
        return points / 72 / self.scale

    def patch(
        self, points: Iterable[Point], fill: Fill | None = None, outline: Role | None = "outline"
    ) -> None:
        self.strokes.append(Patch(tuple(points), fill, outline))

    def rectangle(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        fill: Fill | None = None,
        outline: Role | None = "outline",
    ) -> None:
        right, low = x + width, y + height
        self.patch(((x, y), (right, y), (right, low), (x, low)), fill, outline)

    def circle(
        self,
        x: float,
        y: float,
        radius: float,
        fill: Fill | None = None,
        outline: Role | None = "outline",
    ) -> None:
        turns = [2 * math.pi * corner / _CORNERS for corner in range(_CORNERS)]
        points = ((x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns)
        self.patch(points, fill, outline)

    def dot(self, x: float, y: float, size: float = 3.0, colour: str = INK) -> None:
        """A filled dot, `size` points across."""
        self.circle(x, y, self.pt(size / 2), Fill(colour), None)

    def line(self, points: Iterable[Point], role: Role, *, closed: bool = False) -> None:
        self.strokes.append(Line(tuple(points), role, closed))

    def arrow(
        self,
        points: Iterable[Point],
        role: Role = "press",
        heads: Heads = "end",
        size: float = 5.0,
    ) -> None:
        self.strokes.append(Arrow(tuple(points), role, heads, size))

    def label(
        self, x: float, y: float, text: str, size: float = 8.0, **look: Unpack[LabelLook]
    ) -> None:
        self.strokes.append(Label(x, y, text, size, **look))

    def letter(
        self, x: float, y: float, text: str, fill: Fill, size: float = 9.0, *, weight: Weight = 600
    ) -> None:
        """A label on a fabric: in an ink that reads there, on a slip where there is hatching."""
        plate = fill.colour if fill.hatch else None
        self.label(x, y, text, size, weight=weight, colour=ink_on(fill.colour), plate=plate)

    def dimension(
        self, a: Point, b: Point, text: str, offset: float = 0.0, size: float = 7.0
    ) -> None:
        """A measure from a to b, moved `offset` units to the left of the way from a to b.

        With y down, the way from left to right has "above" on its left.
        """
        length = math.dist(a, b)
        along = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
        left = (along[1], -along[0])
        start, end = (self._beside(point, left, offset) for point in (a, b))
        bar = self.pt(2.5)
        for point in (start, end):
            ends = (self._beside(point, left, -bar), self._beside(point, left, bar))
            self.line(ends, "dimension")
        self.arrow((start, end), "dimension", "both", 3.5)
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        at = self._beside(middle, left, self.pt(size * CAP_HEIGHT / 2 + 2.5))
        angle = math.degrees(math.atan2(-along[1], along[0]))
        upright = 90 - (90 - angle) % 180  # never upside down; a standing measure reads upward
        self.label(*at, text, size, angle=upright)

    @staticmethod
    def _beside(point: Point, left: Point, offset: float) -> Point:
        return point[0] + left[0] * offset, point[1] + left[1] * offset

    def text_width(self, text: str, size: float, weight: Weight = 400) -> float:
        """How wide the words are, in units of the drawing."""
        return self.pt(text_width(text, size, weight))

    def fits(
        self, text: str, size: float, width: float, height: float, *, weight: Weight = 400
    ) -> bool:
        """Whether a label and a point of air round it go into a box of the drawing."""
        wide, high = self.room(text, size, weight=weight)
        return wide <= width and high <= height

    def room(self, text: str, size: float, *, weight: Weight = 400) -> tuple[float, float]:
        """How wide and high a label is with a point of air round it."""
        return self.text_width(text, size, weight) + self.pt(2), self.pt(size * CAP_HEIGHT + 2)

    def place(self, strokes: Drawing | Sequence[Stroke], placing: Placing) -> None:
        """Put other strokes in; those of a drawing are taken in its own units."""
        others = strokes.strokes if isinstance(strokes, Drawing) else strokes
        self.strokes.extend(placing.stroke(stroke) for stroke in others)

    def drawing(self, name: str, title: str, alt: str) -> Drawing:
        """All that was drawn, finished."""
        size = self.width, self.height, self.scale
        return Drawing(name, title, alt, *size, tuple(self.strokes))
