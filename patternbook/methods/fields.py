"""The kinds of value that the fields of written parts hold."""

from __future__ import annotations

from typing import Annotated, Final

from patternbook.methods.reading import (
    Kind,
    Reading,
    SizeNameForm,
    choice,
)
from patternbook.value import (
    AmountValue,
    CellsValue,
    CountValue,
    CutValue,
    DateValue,
    LengthValue,
    LetterValue,
    NameValue,
    PartValue,
    ShiftValue,
    SizeValue,
    Text,
    ValueFault,
    WholeValue,
    parse_amount,
    parse_cells,
    parse_colour,
    parse_count,
    parse_cut,
    parse_date,
    parse_length,
    parse_letter,
    parse_name,
    parse_part,
    parse_percent,
    parse_point,
    parse_shift,
    parse_size,
    parse_whole,
    quoted,
)
from patternbook.value.number import GLYPHS
from patternbook.value.text import LETTER, NAME, one_line

# What an editor checks a value by; the reader itself is stricter, and says why.
_GLYPH: Final = "[" + "".join(GLYPHS) + "]"
_NUMBER: Final = rf"(?:[0-9]+(?: ?{_GLYPH}| [0-9]+[/⁄][0-9]+|[/⁄][0-9]+|\.[0-9]+)?|{_GLYPH})"
_LENGTH: Final = rf"{_NUMBER} ?(?:in|inch|inches|cm|\"|″)?"
_SIZE: Final = rf"(?:{_LENGTH} ?[x×] ?{_LENGTH}|{_LENGTH} square)"
_SIDE: Final = rf"(?:{_LENGTH}|fit)"
_CUT: Final = rf"(?:{_SIDE} ?[x×] ?(?:{_SIDE}|WOF)|{_LENGTH} square)"


def _sentences(text: Text, _by: Reading) -> Text:
    one_line(text[:100])
    return text


def _gives(name: str, *numbers: int) -> Kind:
    words = tuple(map(str, numbers))
    allowed = f"{', '.join(words[:-1])} or {words[-1]}"

    def parse(text: Text, _by: Reading) -> WholeValue:
        line = one_line(text)
        if line not in words:
            raise ValueFault("wrong-number", f"{quoted(line)} is not {allowed}")
        return WholeValue(int(line), line, text.place)

    return Kind(name, f"how many are made at once: {allowed}", parse, "|".join(words), True)


_LENGTH_KIND: Final = Kind(
    "length",
    "a length (6 1/2)",
    lambda text, by: parse_length(text, by.cm, zero=False),
    _LENGTH,
    numeric=True,
)
_MORE_KIND: Final = Kind(
    "more",
    "how much more, 0 where there is none (4)",
    lambda text, by: parse_length(text, by.cm),
    _LENGTH,
    numeric=True,
)
_SIZE_KIND: Final = Kind(
    "size",
    "a size, across x down (36 x 42, or 6 1/2 square)",
    lambda text, by: parse_size(text, by.cm),
    rf"(?:about )?{_SIZE}",
)
_CM_KIND: Final = Kind(
    "size-cm", "a size in centimetres", lambda text, _: parse_size(text, cm=True), _SIZE
)
_POINT_KIND: Final = Kind(
    "point",
    "a corner of the shape, across x down",
    lambda text, by: parse_point(text, by.cm),
    _SIZE,
)
_SHIFT_KIND: Final = Kind(
    "shift",
    "a line, how far and which way (cut 2 by 1 1/2 left)",
    lambda text, by: parse_shift(text, by.cm),
    rf".+ by {_LENGTH} (?:left|right|up|down)",
)
_CUT_KIND: Final = Kind(
    "cut",
    "the size to cut, across x down (6 1/2 x 2 1/2, fit x 2 1/2, 2 1/2 x WOF)",
    lambda text, by: parse_cut(text, by.cm),
    _CUT,
)
_COUNT_KIND: Final = Kind(
    "count",
    "a count (12, or across * 2)",
    lambda text, _: parse_count(text),
    r"[a-z0-9 +*/()×÷-]+",
    numeric=True,
)
_YARDS_KIND: Final = Kind(
    "yards",
    "an amount in yards (1 3/8)",
    lambda text, _: parse_amount(text, decimals=False),
    rf"{_NUMBER} ?(?:yd|yds|yard|yards)?",
    numeric=True,
)
_METRES_KIND: Final = Kind(
    "metres",
    "an amount in metres (1.2)",
    lambda text, _: parse_amount(text, decimals=True),
    rf"{_NUMBER} ?(?:m|metre|metres)?",
    numeric=True,
)
_YARD_STEP_KIND: Final = Kind(
    "yard-step",
    "the step that yards are sold by (1/8)",
    lambda text, _: parse_amount(text, decimals=False, zero=False),
    rf"{_NUMBER} ?(?:yd|yds|yard|yards)?",
    numeric=True,
)
_METRE_STEP_KIND: Final = Kind(
    "metre-step",
    "the step that metres are sold by (0.1)",
    lambda text, _: parse_amount(text, decimals=True, zero=False),
    rf"{_NUMBER} ?(?:m|metre|metres)?",
    numeric=True,
)
_COLOUR_KIND: Final = Kind(
    "colour", 'a colour ("#a0522d")', lambda text, _: parse_colour(text), "#[0-9a-fA-F]{6}"
)
_AMOUNT_KIND: Final = Kind(
    "amount", "a number", lambda text, _: parse_amount(text), rf"{_NUMBER} ?[a-z%°]*", numeric=True
)
_PERCENT_KIND: Final = Kind(
    "percent",
    "so many in a hundred (5%)",
    lambda text, _: parse_percent(text),
    rf"{_NUMBER} ?(?:%|percent)?",
    numeric=True,
)
_CELLS_KIND: Final = Kind(
    "cells", "parts side by side (A star/left B*3)", lambda text, _: parse_cells(text)
)
_NAME_KIND: Final = Kind(
    "name", "a name (small letters, hyphens)", lambda text, _: parse_name(text), NAME
)
_LETTER_KIND: Final = Kind(
    "letter", "a piece's letter (A)", lambda text, _: parse_letter(text), LETTER
)
_PART_KIND: Final = Kind(
    "part",
    "a piece's letter or a unit's name",
    lambda text, _: parse_part(text),
    rf"{LETTER}|{NAME}",
)
_WHOLE_KIND: Final = Kind(
    "whole", "a whole number", lambda text, _: parse_whole(text), "[0-9]+", numeric=True
)
_FROM_ONE_KIND: Final = Kind(
    "from-one",
    "a whole number, 1 or more",
    lambda text, _: parse_whole(text, least=1),
    "0*[1-9][0-9]*",
    numeric=True,
)
_DAY_KIND: Final = Kind(
    "day", "a day (2026-03-01)", lambda text, _: parse_date(text), "[0-9]{4}-[0-9]{2}-[0-9]{2}"
)
_LINE_KIND: Final = Kind(
    "line", "words on one line", lambda text, _: Text(one_line(text), text.place)
)
_TEXT_KIND: Final = Kind("text", "sentences", _sentences)

Length = Annotated[LengthValue, _LENGTH_KIND]
More = Annotated[LengthValue, _MORE_KIND]
Size = Annotated[SizeValue, _SIZE_KIND]
CmSize = Annotated[SizeValue, _CM_KIND]
Point = Annotated[SizeValue, _POINT_KIND]
Shift = Annotated[ShiftValue, _SHIFT_KIND]
Cut = Annotated[CutValue, _CUT_KIND]
Count = Annotated[CountValue, _COUNT_KIND]
Yards = Annotated[AmountValue, _YARDS_KIND]
Metres = Annotated[AmountValue, _METRES_KIND]
YardStep = Annotated[AmountValue, _YARD_STEP_KIND]
MetreStep = Annotated[AmountValue, _METRE_STEP_KIND]
Amount = Annotated[AmountValue, _AMOUNT_KIND]
Percent = Annotated[AmountValue, _PERCENT_KIND]
Colour = Annotated[Text, _COLOUR_KIND]
Cells = Annotated[CellsValue, _CELLS_KIND]
Name = Annotated[NameValue, _NAME_KIND]
Letter = Annotated[LetterValue, _LETTER_KIND]
Part = Annotated[PartValue, _PART_KIND]
Whole = Annotated[WholeValue, _WHOLE_KIND]
FromOne = Annotated[WholeValue, _FROM_ONE_KIND]
Day = Annotated[DateValue, _DAY_KIND]
Line = Annotated[Text, _LINE_KIND]
Sentences = Annotated[Text, _TEXT_KIND]
YesNo = Annotated[Text, choice("yes", "no")]
SizeName = Annotated[NameValue, SizeNameForm()]
PairsGive = Annotated[WholeValue, _gives("pairs-give", 1, 2, 4, 8)]
GeeseGive = Annotated[WholeValue, _gives("geese-give", 1, 4)]
