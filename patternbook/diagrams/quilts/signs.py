"""The signs of the quilting pages, each with its word."""

from __future__ import annotations

from typing import Final

from patternbook.diagrams.quilts.marks import disc, head, stop
from patternbook.diagrams.quilts.paths import Place
from patternbook.diagrams.sheet import cropped
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Role

NAME: Final = "quilts-signs"
COLUMN: Final = 178.0  # points
ROW: Final = 15.0
LONG: Final = 30.0
SIZE: Final = 8.5
LINES: Final[tuple[tuple[tuple[Role, ...], str], ...]] = (
    (("sewing",), "stitch now, that way"),
    (("travel", "hollow"), "go back over stitches"),
    (("under-binding",), "along the edge, under the binding"),
    (("stitched",), "stitched before"),
)
DISCS: Final = (
    ("S", "start"),
    ("E", "stop, cut the thread"),
    ("3", "third in the order"),
    ("B", "new bobbin"),
    ("P", "letter of an area"),
)


def signs() -> Drawing:
    """Three columns: lines, then discs."""
    pen = Pen(1, 1, 1.0)
    told = [*(text for _, text in LINES), *(text for _, text in DISCS)]
    for number, (roles, _) in enumerate(LINES):
        x, y = _place(pen, number)
        ends = ((x, y), (x + pen.pt(LONG), y))
        for role in roles:
            pen.line(ends, role)
        if roles[-1] != "stitched":
            head(pen, Place((x + pen.pt(LONG * 0.6), y), (1.0, 0.0)), "sewing", 5.0)
    for number, (sign, _) in enumerate(DISCS, start=len(LINES)):
        x, y = _place(pen, number)
        at = (x + pen.pt(LONG / 2), y)
        if sign == "E":
            stop(pen, at, sign, 7.0)
        else:
            disc(pen, at, sign, 7.0, dark=sign == "S")
    for number, text in enumerate(told):
        x, y = _place(pen, number)
        pen.label(x + pen.pt(LONG + 7), y, text, SIZE, anchor="start")
    return cropped(pen, NAME, "The signs", f"The signs: {'; '.join(told)}.")


def _place(pen: Pen, number: int) -> tuple[float, float]:
    column, row = divmod(number, 3)
    return pen.pt(column * COLUMN), pen.pt(row * ROW)
