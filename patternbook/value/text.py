"""What was typed, and where: the plain kinds of value, each a word that knows its place."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import dataclass
from typing import Final, Self

from patternbook.notice import Place

NOWHERE: Final = Place("", 0, 0, 0, 0)
LETTER: Final = r"[A-HJ-NP-Z]{1,2}[0-9]?"
NAME: Final = r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*"
WORD: Final = r"[a-z][a-z0-9]*"
# No value is longer than this: a row of two thousand cells is longer than any quilt.
LONGEST: Final = 10_000
LARGEST: Final = 10**9


class ValueFault(ValueError):
    """A value that cannot be read as what it should be, in plain words."""

    def __init__(
        self,
        code: str,
        words: str,
        hint: str | None = None,
        rule: str | None = None,
        needed: str | None = None,
    ) -> None:
        super().__init__(words)
        self.code = code
        self.words = words
        self.hint = hint
        self.rule = rule
        self.needed = needed


class Text(str):
    """A scalar as it was written, and where."""

    __slots__ = ("place",)
    place: Place

    def __new__(cls, written: str, place: Place = NOWHERE) -> Self:
        text = super().__new__(cls, written)
        text.place = place
        return text

    @property
    def text(self) -> str:
        """The words alone."""
        return str(self)


class NameValue(Text):
    """The name of a unit, a cloth or a size: small letters and hyphens."""

    __slots__ = ()


class LetterValue(Text):
    """The letter of a piece: `A`, `AB`, `A2`."""

    __slots__ = ()


class PartValue(Text):
    """A piece's letter or a unit's name: whatever may be sewn."""

    __slots__ = ()

    @property
    def is_piece(self) -> bool:
        """Whether it is cut from cloth, rather than sewn."""
        return self[0].isupper()


class WholeValue(int):
    """A whole number as it was written, and where."""

    text: str
    place: Place

    def __new__(cls, number: int, text: str = "", place: Place = NOWHERE) -> Self:
        whole = super().__new__(cls, number)
        whole.text = text or str(number)
        whole.place = place
        return whole


@dataclass(frozen=True)
class DateValue:
    """A day, written year-month-day."""

    day: dt.date
    text: str
    place: Place = NOWHERE


def one_line(text: str) -> str:
    """The value on one line with single spaces; a fault where there is nothing, or far too much."""
    if len(text) > LONGEST:
        raise ValueFault(
            "too-long", f"this value has {len(text):,} characters; {LONGEST:,} is the most"
        )
    line = " ".join(text.split())
    if not line:
        raise ValueFault("empty-value", "nothing is written here")
    return line


def quoted(text: str) -> str:
    """The words in marks, cut off where they are long."""
    return f"`{text}`" if len(text) <= 40 else f"`{text[:37]}…`"


def parse_name(text: Text) -> NameValue:
    """The name of a unit, a cloth or a size."""
    line = one_line(text)
    if not re.fullmatch(NAME, line):
        raise ValueFault(
            "not-a-name",
            f"{quoted(line)} is not a name: small letters and figures, joined by hyphens",
            _hyphenated(line),
        )
    return NameValue(line, text.place)


def _hyphenated(line: str) -> str | None:
    try_this = re.sub(r"[^a-z0-9]+", "-", line.lower()).strip("-")
    return f"Try {try_this}." if re.fullmatch(NAME, try_this) else None


def parse_letter(text: Text) -> LetterValue:
    """The letter of a piece."""
    line = one_line(text)
    if re.fullmatch(LETTER, line):
        return LetterValue(line, text.place)
    raise ValueFault(
        "not-a-letter",
        f"{quoted(line)} is not a piece's letter: one or two capitals, a figure may follow "
        "(A, AB, A2)",
        _no_i_nor_o(line) or _small_word(line),
    )


def _small_word(line: str) -> str | None:
    return "Small words are names of units." if re.fullmatch(NAME, line) else None


def _no_i_nor_o(line: str) -> str | None:
    looks_alike = re.fullmatch(r"[A-Z]{1,2}[0-9]?", line)
    return "I and O are left out: they look like 1 and 0." if looks_alike else None


def parse_part(text: Text) -> PartValue:
    """A piece's letter or a unit's name."""
    line = one_line(text)
    if not re.fullmatch(f"{LETTER}|{NAME}", line):
        raise ValueFault(
            "not-a-part",
            f"{quoted(line)} is neither a piece's letter (A) nor a unit's name (star)",
            _no_i_nor_o(line),
        )
    return PartValue(line, text.place)


def parse_whole(text: Text, least: int = 0) -> WholeValue:
    """A whole number, not below `least`."""
    line = one_line(text)
    if re.fullmatch("[0-9]+", line) and (len(line) > 10 or int(line) > LARGEST):
        raise ValueFault("too-many", f"{quoted(line)} is more than can be counted")
    if not re.fullmatch("[0-9]+", line):
        raise ValueFault("not-whole", f"{quoted(line)} is not a whole number (such as 12)")
    if int(line) < least:
        raise ValueFault("too-few", f"{quoted(line)} is too few: {least} is the least")
    return WholeValue(int(line), line, text.place)


def parse_colour(text: Text) -> Text:
    """A colour as screens mix it: red, green and blue, two signs each."""
    line = one_line(text)
    if not re.fullmatch("#[0-9a-fA-F]{6}", line):
        raise ValueFault(
            "not-a-colour",
            f'{quoted(line)} is not a colour: # and six of 0 to 9 and a to f ("#a0522d")',
            "Leave it out, and `tone` alone decides how it is drawn.",
        )
    return Text(line, text.place)


def parse_date(text: Text) -> DateValue:
    """A day."""
    line = one_line(text)
    found = re.fullmatch(r"([0-9]{4})-([0-9]{2})-([0-9]{2})", line)
    try:
        if found:
            return DateValue(dt.date(*map(int, found.groups())), line, text.place)
    except ValueError:
        pass
    raise ValueFault("not-a-date", f"{quoted(line)} is not a day: year-month-day (2026-03-01)")
