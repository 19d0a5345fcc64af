"""The bar by which every page of templates is measured before anything is cut."""

from __future__ import annotations

from typing import Final

from patternbook.diagrams.sheet import cropped
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Fill

NAME: Final = "templates-bar"
INCHES: Final = 2
CENTIMETRES: Final = 5
CENTIMETRE: Final = 1 / 2.54
HIGH: Final = 0.11
GREY: Final = Fill("#9a9a9a")
BESIDE: Final = 2.45  # inches from the start of the one to the start of the other


def print_bar() -> Drawing:
    """Two inches and five centimetres, beside one another."""
    pen = Pen(1, 1, 1.0)
    _bar(pen, 0.0, 0.5, INCHES * 2, f"{INCHES} inches")
    _bar(pen, BESIDE, CENTIMETRE, CENTIMETRES, f"{CENTIMETRES} centimetres")
    alt = (
        f"Test bar: one part is exactly {INCHES} inches long, the other {CENTIMETRES} centimetres, "
        "if the page was printed at actual size."
    )
    return cropped(pen, NAME, "Test bar", alt)


def _bar(pen: Pen, x: float, step: float, steps: int, text: str) -> None:
    for number in range(0, steps, 2):
        pen.rectangle(x + number * step, 0, step, HIGH, GREY, None)
    pen.rectangle(x, 0, step * steps, HIGH, None, "sewn")
    pen.label(x + step * steps / 2, HIGH + pen.pt(7.5), text, 8, weight=600)
