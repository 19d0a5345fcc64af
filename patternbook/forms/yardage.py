"""Yardage: cloth off the bolt, of the pattern's own usable width."""

from __future__ import annotations

from typing import Final

from patternbook.forms.form import ClothForm, off_the_bolt

FORM: Final = ClothForm("yardage", "length", "lengths", "by length", off_the_bolt)
