"""A close look at the quilting: how far the first lines lie from their seams and one another."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.exact import Exact
from patternbook.quilting.echo_records import QuiltingMap, StitchLine
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import start_dot
from patternbook.strokes.stroke import Drawing, Point
from patternbook.strokes.tones import ghost

MOST: Final = (3.5, 2.0)
LARGEST: Final = 0.25
TIERS: Final = 3  # rows of measures, where they are wider than what they measure
BANDS: Final = 2  # bands that are shown, from the edge,
MOST_LINES: Final = 7  # unless they hold more lines than this;
FEW_LINES: Final = 4  # then so many lines are shown
DEEP: Final = Exact(5)  # spacings that are shown along the lines


def quilting_close(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing, of the first size: the corner of the top with its first lines."""
    for size in pattern.tops[:1]:
        if size.quilting is not None and size.quilting.lines:
            scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
            corner = Corner(size, size.quilting)
            pen = fitted(corner.drawn, MOST, scale)
            yield cropped(pen, "quilting-close", "Where the first lines lie", corner.described())


class Corner:
    """The corner at the start of the bands, the lines drawn as they run on the quilt."""

    def __init__(self, size: Size, plan: QuiltingMap) -> None:
        self.size = size
        self.plan = plan
        bands = plan.bands[:BANDS]
        self.wide = bands[-1].start + bands[-1].width
        self.deep = plan.spacing * DEEP / 2
        self.lines = sorted((line for line in plan.lines if line.at < self.wide), key=_at)
        self.whole = len(self.lines) <= MOST_LINES
        if not self.whole:  # no long seam is near: the first lines alone
            self.lines = self.lines[:FEW_LINES]
            self.wide = self.lines[-1].at + plan.spacing / 2
        self.seams = [band.start for band in bands[1:] if band.start < self.wide]

    def _point(self, at: float, along: float) -> Point:
        return (at, along) if self.plan.way == "down" else (along, at)

    def drawn(self, pen: Pen) -> None:
        """Patches, lines and their distances."""
        wide, deep = float(self.wide), float(self.deep)
        right, low = self._point(wide, deep)
        for patch in self.size.shown:
            part = patch.within(right, low)
            if part is not None:
                part.put(pen, ghost(part.fill), "ground")
        pen.line((self._point(wide, 0), (0, 0), self._point(0, deep)), "edge")
        for line in self.lines:
            at, margin = float(line.at), float(self.plan.margin)
            pen.line((self._point(at, margin), self._point(at, deep)), "quilting")
            start_dot(pen, *self._point(at, margin))
        for seam in self.seams:
            pen.line((self._point(float(seam), 0), self._point(float(seam), deep)), "outline")
        self._named(pen, "edge", 0.0)
        for seam in self.seams:
            self._named(pen, "seam", float(seam))
        self._measured(pen)

    def _named(self, pen: Pen, text: str, at: float) -> None:
        """The word at the end of a line."""
        x, y = self._point(at, float(self.deep))
        if self.plan.way == "down":
            pen.label(x, y + pen.pt(8), text, 8)
        else:
            pen.label(x + pen.pt(4), y, text, 8, anchor="start")

    def stops(self) -> list[Exact]:
        """The edge, the lines and the seams, from the edge inward."""
        end = [self.wide] if self.whole else []
        return sorted({Exact(0), *(line.at for line in self.lines), *self.seams, *end})

    def _measured(self, pen: Pen) -> None:
        """From the edge to the first line, from line to line and to the seams."""
        down = self.plan.way == "down"
        tier = 0
        for one, other in pairwise(self.stops()):
            text = words.length(other - one, self.size.system)
            fits = pen.text_width(text, 8) + pen.pt(4) < float(other - one)
            tier = 0 if fits else tier % (TIERS - 1) + 1
            a, b = self._point(float(one), 0), self._point(float(other), 0)
            far = pen.pt(9 + 15 * tier)
            pen.dimension(*((a, b) if down else (b, a)), text, far, 8)

    def described(self) -> str:
        """The distances in words."""
        stops = self.stops()
        steps = [words.length(other - one, self.size.system) for one, other in pairwise(stops)]
        kinds = [
            "seam" if stop in self.seams or stop == self.wide else "line" for stop in stops[1:]
        ]
        told = ", ".join(f"{step} to a {kind}" for step, kind in zip(steps, kinds, strict=True))
        margin = words.length(self.plan.margin, self.size.system)
        return f"From the edge inward: {told}. Lines start {margin} inside the edge."


def _at(line: StitchLine) -> Exact:
    return line.at
