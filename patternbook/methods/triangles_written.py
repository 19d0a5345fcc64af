"""What is written of all units sewn from two pieces and cut apart along a diagonal."""

from __future__ import annotations

from patternbook.methods.fields import Cells, PairsGive
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenMade
from patternbook.value import WholeValue, every


class WrittenTriangles(WrittenMade):
    """Two pieces, and how many units a pair of them gives."""

    from_: EachSize[Cells]
    gives: EachSize[PairsGive] = every(WholeValue(2))
