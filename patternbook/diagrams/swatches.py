"""A swatch of each fabric: its right side, and a corner turned over."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Fill
from patternbook.strokes.tones import wrong_side

SWATCH: Final = (0.5, 0.36)  # inches


def swatches(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing a fabric, in inches on paper."""
    for fabric in dict.fromkeys(one for size in pattern.sizes for one in size.quilt.fabrics):
        pen = Pen(1, 1, 1)
        size = next(size for size in pattern.sizes if fabric in size.quilt.fabrics)
        swatch(pen, size, fabric, 0, 0)
        tone = size.quilt.fabrics[fabric].tone
        alt = f"Swatch of {words.title(fabric)}{f', a {tone} fabric' if tone else ''}, its corner "
        alt += "turned over."
        yield cropped(pen, name("swatch", fabric), words.title(fabric), alt)


def swatch(pen: Pen, size: Size, fabric: str, x: float, y: float) -> None:
    """The right side, with a corner turned over that shows the wrong side."""
    wide, high = SWATCH
    prints = size.cloths.prints.get(fabric, ())[:4]
    fills = [size.cloths.fabric(fabric, number + 1) for number in range(len(prints))]
    fills = fills or [size.cloths.fabric(fabric)]
    for number, fill in enumerate(fills):
        part = wide / len(fills)
        pen.rectangle(x + number * part, y, part, high, fill)
    fold = 0.15
    corner = ((x + wide, y + high - fold), (x + wide, y + high), (x + wide - fold, y + high))
    pen.patch(corner, Fill("#ffffff"), None)
    flap = (
        (x + wide, y + high - fold),
        (x + wide - fold, y + high),
        (x + wide - fold, y + high - fold),
    )
    pen.patch(flap, wrong_side(fills[-1]))
