"""What is written of the cloths, and of the pieces cut from them."""

from __future__ import annotations

from typing import Annotated, ClassVar

from patternbook.forms import FORMS
from patternbook.methods.fields import (
    Amount,
    CmSize,
    Colour,
    Count,
    Cut,
    FromOne,
    Length,
    Letter,
    Line,
    Metres,
    Name,
    Point,
    Size,
    Whole,
    Yards,
    YesNo,
)
from patternbook.methods.reading import EachSize, choice
from patternbook.methods.written import WrittenNode
from patternbook.value import NameValue, Text, WholeValue, every

Tone = Annotated[Text, choice("light", "medium", "dark")]
Form = Annotated[Text, choice(*(form.name for form in FORMS))]
Direction = Annotated[Text, choice("any", "one-way")]
Diagonal = Annotated[Text, choice("once", "twice")]
Template = Annotated[
    Text,
    choice("quarter circle", "quarter hollow", "hexagon", "half hexagon", "outline", "drawing"),
]
Along = Annotated[Text, choice("width", "length")]
Join = Annotated[Text, choice("diagonal", "straight", "none")]


class WrittenFabric(WrittenNode):
    """One cloth: its part in the quilt, how it is sold, and how much of it is asked for."""

    called: ClassVar = "a fabric"
    use: Line | None = None
    tone: Tone | None = None
    colour: Colour | None = None
    form: Form = Text("yardage")
    width: Length | None = None
    size: Size | None = None
    pack: FromOne | None = None
    direction: Direction = Text("any")
    prints: EachSize[Count] | None = None
    one_print_per: Name = NameValue("piece")
    apart: YesNo = Text("yes")
    seed: Whole = WholeValue(1)
    yards: EachSize[Yards] | None = None
    metres: EachSize[Metres] | None = None
    packs: EachSize[Count] | None = None


class WrittenPiece(WrittenNode):
    """One letter: the size it is cut, the cloth it is cut from, and how many there are."""

    called: ClassVar = "a piece"
    fabric: EachSize[Name] | None = None
    cut: EachSize[Cut] | None = None
    finished: EachSize[Size] | None = None
    diagonal: EachSize[Diagonal] | None = None
    template: Template | None = None
    side: EachSize[Length] | None = None
    radius: EachSize[Length] | None = None
    outline: EachSize[tuple[Point, ...]] | None = None
    edges: EachSize[tuple[Length, ...]] | None = None
    angle: EachSize[Amount] | None = None
    around: EachSize[Count] | None = None
    drawing: Line | None = None
    along: EachSize[Along] = every(Text("width"))
    join: EachSize[Join] = every(Text("diagonal"))
    with_: EachSize[Letter] | None = None
    strip_width: EachSize[Length] | None = None
    spare: EachSize[Count] | None = None
    count: EachSize[Count] | None = None
    mirrored: EachSize[Count] | None = None
    squares: EachSize[Count] | None = None
    strips: EachSize[Count] | None = None
    per_strip: EachSize[Count] | None = None
    strip_length: EachSize[Length] | None = None
    per_square: EachSize[Count] | None = None
    cut_cm: EachSize[CmSize] | None = None
