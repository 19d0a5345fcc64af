"""A printed panel: one picture of a stated size; sold singly."""

from __future__ import annotations

from typing import Final

from patternbook.forms.form import ClothForm, either_way

FORM: Final = ClothForm(
    "panel", "panel", "panels", "singly", either_way, pieces=True, selvedges=False
)
