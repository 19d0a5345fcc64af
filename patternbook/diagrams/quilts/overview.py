"""The whole of the quilting over a pale top, every line at its place, the areas lettered."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.quilts.ground import ground
from patternbook.diagrams.quilts.letters import counted, lettered
from patternbook.diagrams.quilts.marks import Taken
from patternbook.diagrams.quilts.paths import fine
from patternbook.diagrams.sheet import Inches, cropped, fitted
from patternbook.quilting.records import LineKind, QuiltingPlan
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Role

MOST: Final[Inches] = (7.2, 7.5)
SMALL: Final[Inches] = (2.9, 3.1)
LARGEST: Final = 0.2
ROOM: Final = 9.0  # points between lines; closer ones are drawn thinner
LINES: Final[dict[LineKind, Role]] = {
    "ditch": "stitched",
    "beside": "quilting-fine",
    "marked": "quilting-fine",
}


def overviews(size: Size, plan: QuiltingPlan) -> Iterator[Drawing]:
    """As large as the page takes it, and small for the booklet."""
    for called, most in (("overview", MOST), ("overview-small", SMALL)):
        pen = fitted(lambda pen: drawn(pen, size, plan), most, largest(size))
        title = f"The quilting of {words.title(size.name)}"
        yield cropped(pen, name("quilts", size.name, called), title, described(size, plan))


def largest(size: Size) -> float:
    """Inches on paper of one unit, at most."""
    return LARGEST / (2.54 if size.system.unit == "cm" else 1)


def drawn(pen: Pen, size: Size, plan: QuiltingPlan) -> None:
    """The top, the lines of the first stage, the designs, the letters."""
    ground(pen, size)
    stitches(pen, plan)
    lettered(pen, plan.divided.areas, Taken(pen))


def stitches(pen: Pen, plan: QuiltingPlan) -> None:
    """Every line and every design."""
    for line in plan.lines:
        pen.line(fine(pen, line.path), LINES[line.kind])
    for fill in plan.fills:
        role: Role = "quilting" if fill.drawn.spacing >= pen.pt(ROOM) else "quilting-fine"
        for path in fill.drawn.paths:
            pen.line(fine(pen, path), role, closed=fill.drawn.closed)


def described(size: Size, plan: QuiltingPlan) -> str:
    """The designs in words, letter by letter."""
    designs = {fill.area.letter: fill.design for fill in plan.fills}
    told = "; ".join(
        f"{letter}, {words.counted(number, 'area')}: {designs.get(letter, 'not quilted')}"
        for letter, number in counted(plan.divided.areas).items()
    )
    return (
        f"The quilting of the {size.name} size over its pale top. {told}. Grey lines lie in the "
        "ditch of seams."
    )
