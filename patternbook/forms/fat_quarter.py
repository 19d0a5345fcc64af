"""A fat quarter: half the width of the cloth, half a yard (or metre) long; sold singly."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.forms.form import ClothForm, Sides, as_on_the_bolt

# Sold as 18 × 22, 18 × 21 or 18 × 20 in (trade facts 4.4): one selvedge off, 18 × 21 is what
# most give; 50 × 53.5 cm from cloth of 107 cm (3.6).
USUAL: Final[dict[str, Sides]] = {
    "in": (Fraction(18), Fraction(21)),
    "cm": (Fraction(50), Fraction(107, 2)),
}
FORM: Final = ClothForm(
    "fat quarter",
    "fat quarter",
    "fat quarters",
    "singly",
    as_on_the_bolt,
    usual=USUAL,
    offered={unit: (size,) for unit, size in USUAL.items()},
    pieces=True,
)
