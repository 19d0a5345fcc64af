"""One element of each design at full size, to be traced with a finger, a pencil and the needle."""

from __future__ import annotations

from typing import Final

from patternbook.diagrams.naming import name
from patternbook.diagrams.quilts.marks import disc, heads, stop
from patternbook.diagrams.sheet import cropped
from patternbook.quilting.designs.form import Design
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing

LETTER: Final = 8.0
EVERY: Final = 60.0
ARROW: Final = 6.0


def practice(design: Design) -> Drawing:
    """The element, as large as it is stitched."""
    pen = Pen(1, 1, 1.0)
    paths = [path for path in design.element() if len(path) > 1]
    for path in paths:
        pen.line(path, "sewing")
        heads(pen, path, "sewing", ARROW, EVERY)
    for number, path in enumerate(paths, start=1):
        which = str(number) if len(paths) > 1 else ""
        by = pen.pt(11)
        disc(pen, path[0], f"S{which}", LETTER, dark=True)
        end = path[-1]
        if abs(end[0] - path[0][0]) + abs(end[1] - path[0][1]) < by:
            end = (end[0] + by * 1.3, end[1])
        stop(pen, end, f"E{which}", LETTER)
    told = f"One element of {design.name} at full size, from S, the start, to E, the end."
    return cropped(pen, called(design.name), design.name, told)


def called(design: str) -> str:
    """The name of its drawing."""
    return name("quilts-practice", design)
