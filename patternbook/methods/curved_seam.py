"""Curved seam: a quarter circle set into its ground."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.fields import Letter
from patternbook.methods.form import MethodForm
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenMade


class WrittenCurved(WrittenMade):
    """The pie lies at the top left."""

    called: ClassVar = "a unit with a curved seam"
    pie: EachSize[Letter]
    ground: EachSize[Letter]


METHOD: Final = MethodForm("curved seam", WrittenCurved)
