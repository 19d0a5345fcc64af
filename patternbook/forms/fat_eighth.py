"""A fat eighth: half a fat quarter, as wide and half as long; sold singly."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.forms.form import ClothForm, Sides, as_on_the_bolt

# 9 × 21 in (trade facts 4.5); in centimetres half of a fat quarter (common practice, no source).
USUAL: Final[dict[str, Sides]] = {
    "in": (Fraction(9), Fraction(21)),
    "cm": (Fraction(25), Fraction(107, 2)),
}
FORM: Final = ClothForm(
    "fat eighth", "fat eighth", "fat eighths", "singly", as_on_the_bolt, usual=USUAL, pieces=True
)
