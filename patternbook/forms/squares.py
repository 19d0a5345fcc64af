"""Squares, cut already; bought by the pack."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.forms.form import ClothForm, Sides, either_way

# 10 and 5 in (trade facts 4.3): 25.4 and 12.7 cm, on the ruler's mark below.
OFFERED: Final[dict[str, tuple[Sides, ...]]] = {
    "in": ((Fraction(10), Fraction(10)), (Fraction(5), Fraction(5))),
    "cm": ((Fraction(101, 4), Fraction(101, 4)), (Fraction(25, 2), Fraction(25, 2))),
}
FORM: Final = ClothForm(
    "squares",
    "square",
    "squares",
    "by pack",
    either_way,
    offered=OFFERED,
    pieces=True,
    selvedges=False,
    trusted="how many squares a pack holds, and whether they measure so to the points of a pinked "
    "edge or to its valleys",
)
