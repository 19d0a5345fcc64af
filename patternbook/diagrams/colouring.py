"""The colouring page: the lines of the top and no tone."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.tops import framed
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing
from patternbook.strokes.tones import PAPER

MOST: Final = (7.0, 8.3)
LARGEST: Final = 0.4


def colouring(pattern: Pattern) -> Iterator[Drawing]:
    """One page for every size."""
    for size in pattern.tops:
        scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
        pen = fitted(_lines(size), MOST, scale)
        number = len(size.plans.patches)
        alt = f"Line drawing of the {size.name} top to colour in: {number} patches, no tones."
        title = f"{words.title(size.name)} to colour in"
        yield cropped(pen, name("colouring", size.name), title, alt)


def _lines(size: Size) -> Callable[[Pen], None]:
    def drawn(pen: Pen) -> None:
        covers = any(patch.laid_on for patch in size.plans.patches)
        for patch in size.shown:
            patch.put(pen, PAPER if covers else None, "outline")
        framed(pen, size, 0, 0)

    return drawn
