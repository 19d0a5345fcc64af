"""Where the widest gap is: a ring as large as it, over all that is stitched."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.quilts.ground import ground
from patternbook.diagrams.quilts.measure import told_length
from patternbook.diagrams.quilts.overview import largest
from patternbook.diagrams.quilts.paths import fine
from patternbook.diagrams.sheet import Inches, cropped, fitted
from patternbook.quilting.records import QuiltingPlan
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing

MOST: Final[Inches] = (2.0, 1.75)
LEAST: Final = 4.0  # points: the radius of the ring where the gap itself is smaller on paper


def widest(size: Size, plan: QuiltingPlan) -> Iterator[Drawing]:
    """One drawing: the stitches in grey, the ring, how wide it is."""
    pen = fitted(lambda pen: _drawn(pen, size, plan), MOST, largest(size))
    far = told_length(plan.gap.high, size)
    title = f"The widest gap on {words.title(size.name)}: about {far}"
    told = f"A ring shows where the widest place without stitches is, about {far} across."
    yield cropped(pen, name("quilts", size.name, "gap"), title, told)


def _drawn(pen: Pen, size: Size, plan: QuiltingPlan) -> None:
    ground(pen, size)
    for line in plan.lines:
        pen.line(fine(pen, line.path), "stitched")
    for fill in plan.fills:
        for path in fill.drawn.paths:
            pen.line(fine(pen, path), "stitched", closed=fill.drawn.closed)
    x, y = plan.gap.at
    radius = max(plan.gap.high / 2, pen.pt(LEAST))
    pen.circle(x, y, radius, None, "emphasis")
    wide = pen.text_width(told_length(plan.gap.high, size), 8) + pen.pt(6)
    right = x + radius + wide < size.top[0]
    at = x + radius + pen.pt(4) if right else x - radius - pen.pt(4)
    pen.label(
        at,
        y,
        told_length(plan.gap.high, size),
        8,
        weight=600,
        anchor="start" if right else "end",
        plate="#ffffff",
    )
