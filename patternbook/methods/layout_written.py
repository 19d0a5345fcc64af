"""Layouts: parts sewn in rows or columns, with sashing between and borders around."""

from __future__ import annotations

from typing import Annotated, ClassVar

from pydantic import Field

from patternbook.methods.fields import Cells, Count, Length, Part, Size, SizeName, YesNo
from patternbook.methods.reading import EachSize, Several, choice
from patternbook.methods.written import WrittenMade, WrittenNode
from patternbook.value import PerSize, Text, every

Setting = Annotated[Text, choice("straight", "on point", "hexagons")]
SidesOrEnds = Annotated[Text, choice("sides", "ends")]
Lines = Annotated[tuple[Cells, ...], Field(min_length=1)]
Corners = Annotated[Text, choice("butted", "mitred")]


class WrittenSashing(WrittenNode):
    """What stands between the blocks, and where two of its strips meet."""

    called: ClassVar = "the sashing"
    sash: EachSize[Part]
    cross: EachSize[Part] | None = None
    stones: EachSize[Part] | None = None
    round: EachSize[YesNo] = every(Text("no"))


class WrittenBorder(WrittenNode):
    """One border, all round."""

    called: ClassVar = "a border"
    strip: EachSize[Part] | None = None
    sides: EachSize[Part] | None = None
    ends: EachSize[Part] | None = None
    first: EachSize[SidesOrEnds] = every(Text("sides"))
    corners: EachSize[Corners] = every(Text("butted"))
    stones: EachSize[Part] | None = None
    only: Several[SizeName] = ()
    side_length: EachSize[Length] | None = None
    end_length: EachSize[Length] | None = None
    measure: EachSize[Size] | None = None


class WrittenLayout(WrittenMade):
    """Cells in rows or columns, repeated until the layout is full."""

    called: ClassVar = "a layout"
    rows: EachSize[Lines] | None = None
    columns: EachSize[Lines] | None = None
    across: EachSize[Count] | None = None
    down: EachSize[Count] | None = None
    setting: EachSize[Setting] = every(Text("straight"))
    between: EachSize[Lines] | None = None
    side_triangle: EachSize[Part] | None = None
    corner_triangle: EachSize[Part] | None = None
    sashing: WrittenSashing | None = None
    before_borders: EachSize[Size] | None = None
    borders: EachSize[tuple[WrittenBorder, ...]] = PerSize(bare=())
    row_measure: EachSize[Several[Size]] | None = None
