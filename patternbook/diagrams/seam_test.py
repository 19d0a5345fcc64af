"""The seam test: three strips joined; the middle one must measure what is left of it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.pattern import Pattern
from patternbook.diagrams.sheet import cropped
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import plus, seam
from patternbook.strokes.stroke import Drawing, Fill

STRIP: Final = 6  # seam allowances in the width of a strip (1½ in for a seam of ¼)
LONG: Final = 12  # and in its length
SIZE: Final = 0.48  # inches on paper for a strip's width
LIGHT, DARK = Fill("#f2f2f2"), Fill("#c9c9c9")


def seam_test(pattern: Pattern) -> Iterator[Drawing]:
    """Before and after, with the two measures that matter."""
    quilt = pattern.first.quilt
    allowance = quilt.seam
    wide, middle = allowance * STRIP, allowance * (STRIP - 2)
    long = float(allowance * LONG)
    pen = Pen(1, 1, SIZE / float(wide))
    right = _before(pen, float(wide), long, float(allowance))
    text = words.length(wide, quilt.system)
    pen.dimension((0, 0), (float(wide), 0), text, pen.pt(8), 8)
    start = right + pen.pt(30)
    pen.arrow(((right + pen.pt(6), long / 2), (start - pen.pt(6), long / 2)), "edge", "end", 7)
    _after(pen, start, float(wide), long, float(allowance))
    at = start + float(wide - allowance)
    exact = words.length(middle, quilt.system)
    pen.dimension((at, 0), (at + float(middle), 0), exact, pen.pt(8), 8)
    pen.label(at + float(middle) / 2, -pen.pt(26), "exactly", 8, weight=600)
    alt = (
        f"Three strips, each {text} wide, are joined along their long sides with seams of "
        f"{words.length(allowance, quilt.system)}. In the joined piece the middle strip measures "
        f"exactly {exact} from seam to seam."
    )
    yield cropped(pen, "seam-test", f"Seam test: the middle strip measures {exact}", alt)


def _before(pen: Pen, wide: float, long: float, allowance: float) -> float:
    """The strips apart, with the seams to sew; gives their right end."""
    gap = pen.pt(14)
    for number, fill in enumerate((LIGHT, DARK, LIGHT)):
        x = number * (wide + gap)
        pen.rectangle(x, 0, wide, long, fill)
        if number:
            seam(pen, (x + allowance, 0), (x + allowance, long))
            plus(pen, x - gap / 2, long / 2)
        if number < 2:
            seam(pen, (x + wide - allowance, 0), (x + wide - allowance, long))
    return 3 * wide + 2 * gap


def _after(pen: Pen, start: float, wide: float, long: float, allowance: float) -> None:
    x = start
    for fill, width in (
        (LIGHT, wide - allowance),
        (DARK, wide - 2 * allowance),
        (LIGHT, wide - allowance),
    ):
        pen.rectangle(x, 0, width, long, fill)
        x += width
