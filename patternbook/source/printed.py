"""What a pattern that is in print already says beside its parts: tables, and figures told twice."""

from __future__ import annotations

from typing import ClassVar

from patternbook.methods.fields import (
    Amount,
    Count,
    Cut,
    FromOne,
    Length,
    Line,
    Metres,
    Name,
    Part,
    Size,
    Yards,
)
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenNode


class WrittenChartRow(WrittenNode):
    """One row of a typed table: a piece of cloth, and how long it is or what comes off it."""

    called: ClassVar = "a row of a chart"
    yards: Yards | None = None
    metres: Metres | None = None
    from_: Size | None = None
    inches: Length | None = None
    cm: Amount | None = None
    cut: Size | None = None
    across: FromOne | None = None
    down: FromOne | None = None
    gives: FromOne | None = None


class WrittenChart(WrittenNode):
    """A typed table; `width` is the usable width of cloth that stands over it."""

    called: ClassVar = "a chart"
    width: Length | None = None
    rows: tuple[WrittenChartRow, ...] = ()


class WrittenSaid(WrittenNode):
    """What another place of the pattern says of one part, fabric or the finishing."""

    called: ClassVar = "what is said elsewhere"
    fabric: EachSize[Name] | None = None
    segment: EachSize[Length] | None = None
    set_measure: EachSize[Length] | None = None
    before_borders: EachSize[Size] | None = None
    side_length: EachSize[Length] | None = None
    end_length: EachSize[Length] | None = None
    strip_length: EachSize[Length] | None = None
    cut: EachSize[Cut] | None = None
    finished: EachSize[Size] | None = None
    measure: EachSize[Size] | None = None
    size: EachSize[Size] | None = None
    length: EachSize[Length] | None = None
    count: EachSize[Count] | None = None
    make: EachSize[Count] | None = None
    squares: EachSize[Count] | None = None
    strips: EachSize[Count] | None = None
    per_strip: EachSize[Count] | None = None
    sets: EachSize[Count] | None = None
    per_set: EachSize[Count] | None = None
    panels: EachSize[Count] | None = None
    pieces: EachSize[Count] | None = None
    packs: EachSize[Count] | None = None
    yards: EachSize[Yards] | None = None
    metres: EachSize[Metres] | None = None


Charts = dict[Name, WrittenChart]
Elsewhere = dict[Line, dict[Part, WrittenSaid]]
