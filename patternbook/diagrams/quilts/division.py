"""The lines to mark before quilting, over the pale top, numbered as the words number them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.quilts.ground import ground
from patternbook.diagrams.quilts.marks import Taken, numbered
from patternbook.diagrams.quilts.overview import largest
from patternbook.diagrams.quilts.paths import fine
from patternbook.diagrams.sheet import Inches, cropped, fitted
from patternbook.quilting.records import QuiltingPlan
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing

MOST: Final[Inches] = (3.45, 4.3)


def divisions(size: Size, plan: QuiltingPlan) -> Iterator[Drawing]:
    """One, where there is anything to mark."""
    if not plan.divided.marked:
        return
    numbers = to_mark(plan)
    pen = fitted(lambda pen: _drawn(pen, size, plan), MOST, largest(size))
    many = words.counted(len(plan.divided.marked), "line")
    title = f"What to mark on {words.title(size.name)}"
    told = f"{many} to mark over the pale top, numbered 1 to {len(numbers)}."
    yield cropped(pen, name("quilts", size.name, "mark"), title, told)


def to_mark(plan: QuiltingPlan) -> Mapping[str, int]:
    """The words of each line to mark, and their number; lines of the same words share it."""
    found: dict[str, int] = {}
    for line in plan.divided.marked:
        found.setdefault(line.words, len(found) + 1)
    return found


def _drawn(pen: Pen, size: Size, plan: QuiltingPlan) -> None:
    ground(pen, size)
    numbers, taken = to_mark(plan), Taken(pen)
    for line in plan.divided.marked:
        pen.line(fine(pen, line.path), "sewing")
    for line in plan.divided.marked:
        numbered(pen, taken, line.path, str(numbers[line.words]))
