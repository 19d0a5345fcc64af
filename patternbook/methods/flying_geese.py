"""Flying geese: a large triangle, tip up, between two small ones."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.fields import GeeseGive, Part
from patternbook.methods.form import MethodForm
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenMade
from patternbook.value import WholeValue, every


class WrittenGeese(WrittenMade):
    """The goose, its wings, and how many are sewn at once."""

    called: ClassVar = "a unit of flying geese"
    goose: EachSize[Part]
    wings: EachSize[Part]
    gives: EachSize[GeeseGive] = every(WholeValue(4))


METHOD: Final = MethodForm("flying geese", WrittenGeese)
