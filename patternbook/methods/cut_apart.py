"""Cut apart: a block that is sewn, then cut into equal parts."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.fields import Count, Part
from patternbook.methods.form import MethodForm
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenMade
from patternbook.value import every, whole


class WrittenCutApart(WrittenMade):
    """How many parts it is cut into, across and down."""

    called: ClassVar = "a block cut apart"
    from_: EachSize[Part]
    across: EachSize[Count] = every(whole(1))
    down: EachSize[Count] = every(whole(1))


METHOD: Final = MethodForm("cut apart", WrittenCutApart)
