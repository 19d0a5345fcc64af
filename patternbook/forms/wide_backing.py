"""Wide backing: cloth off the bolt that covers most quilts without a seam."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.forms.form import ClothForm, off_the_bolt

# 108 in wide (trade facts 3.5), a selvedge of 1 in or less (3.4) off each side; 270 cm and 2.5 cm
# (common practice, no source). Its usual width is of unwashed cloth: washing takes some of it.
WIDTHS: Final = {
    "in": (Fraction(108), Fraction(2)),
    "cm": (Fraction(270), Fraction(5)),
}
FORM: Final = ClothForm(
    "wide backing", "length", "lengths", "by length", off_the_bolt, widths=WIDTHS
)
