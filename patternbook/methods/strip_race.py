"""Strip race: strips sewn end to end, then folded and sewn until they are a quilt."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar, Final

from patternbook.methods.fields import Cells, Count, More
from patternbook.methods.form import MethodForm
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenMade
from patternbook.value import LengthValue, every


class WrittenStripRace(WrittenMade):
    """The strips, how often they are folded, and what is cut off the end first."""

    called: ClassVar = "a strip race"
    from_: EachSize[Cells]
    folds: EachSize[Count]
    shorten: EachSize[More] = every(LengthValue(Fraction(0), "0"))


METHOD: Final = MethodForm("strip race", WrittenStripRace)
