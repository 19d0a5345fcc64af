"""Strip sets: strips sewn side by side, then sliced across."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.fields import Cells, Count, Length
from patternbook.methods.form import MethodForm
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenMade


class WrittenStripSet(WrittenMade):
    """Drawn as a slice lies: its strips from left to right."""

    called: ClassVar = "a strip set"
    from_: EachSize[Cells]
    segment: EachSize[Length] | None = None
    sets: EachSize[Count] | None = None
    per_set: EachSize[Count] | None = None
    set_measure: EachSize[Length] | None = None


METHOD: Final = MethodForm("strip set", WrittenStripSet)
