"""Cloth forms: one file a way in which cloth is sold, and the one list of them."""

from __future__ import annotations

from typing import Final

from patternbook.forms import (
    fat_eighth,
    fat_quarter,
    panel,
    squares,
    strip_roll,
    wide_backing,
    yardage,
)
from patternbook.forms.form import ClothForm

FORMS: Final[tuple[ClothForm, ...]] = (
    yardage.FORM,
    wide_backing.FORM,
    strip_roll.FORM,
    squares.FORM,
    fat_quarter.FORM,
    fat_eighth.FORM,
    panel.FORM,
)
by_name: Final = {form.name: form for form in FORMS}


def by_length(name: str) -> bool:
    """Whether this form is bought by length, off the bolt."""
    return by_name[name].sold == "by length"
