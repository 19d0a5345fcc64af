"""Numbers in a sentence: measurements, sizes and counts, with their marks and the words around."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from patternbook.inch import GLYPH, PARTS

FRACTION: Final = r"[0-9]+/[0-9]+"
NUMBER: Final = (
    rf"(?:[0-9]{{1,3}}(?:,[0-9]{{3}})+(?![0-9])|[0-9]+)(?:[ -]{FRACTION}|[ -]?{GLYPH}|\.[0-9]+)?"
    rf"(?:(?<=[0-9])/[0-9]+)?|{GLYPH}"
)
# "in" is a mark where no sentence could go on with it: "6 in wide", not "6 in each row".
MARK: Final = (
    r"inches|inch|in\.(?= ?[a-z,;])|″|\"|''|centimetres?|centimeters?|cm|mm|yards?|yds?"
    r"|metres?|meters?|m|feet|foot|ft"
    r"|in(?= *(?:$|[\n.,;:)(=/x+-]|(?:wide|long|squares?|strips?|by|of|blocks?|borders?|apart"
    r"|from|and|or|deep|high|tall|across|finished|unfinished|needed|raw|pieces?|rectangles?"
    r"|each way|usable|each side)\b))"
)
MARKED: Final = re.compile(rf"(?: ?-? ?)(?P<mark>{MARK})(?![A-Za-z])")
UNITS: Final = {"inches": "in", "inch": "in", "in": "in", "in.": "in", "″": "in", '"': "in"} | {
    "''": "in", "cm": "cm", "mm": "mm", "m": "m", "yd": "yd", "yds": "yd", "yard": "yd",
}  # fmt: skip
UNITS_MORE: Final = (("yard", "yd"), ("cent", "cm"), ("met", "m"), ("f", "ft"))
FOUND: Final = re.compile(rf"(?<![\w/.,#&⁄])(?<![0-9]-)(?:{NUMBER})(?![0-9A-Za-z/%°])")
LOOSE: Final = re.compile(rf"(?<=[0-9]-)(?:{NUMBER})(?![0-9A-Za-z/%°])|(?<=x)(?:{NUMBER})")
SQUARES: Final = re.compile(r"[ -]squares\b")
BY: Final = re.compile(r" ?(?:x|by) ?(?=[0-9" + "".join(PARTS) + r"])")
SQUARE: Final = re.compile(r" square\b")
FREE: Final = re.compile(
    r"\{\{.*?\}\}|\[\[.*?\]\]|[0-9]{4}-[0-9]{2}-[0-9]{2}"
    r"|\b[0-9]{1,2}[:.][0-9]{2} ?(?:am|pm|o'clock)"
    r"|\b[0-9]{1,2}:[0-9]{2}\b|https?://\S+|\S+@\S+|\bwww\.\S+",
    re.DOTALL,
)
FILLED: Final = "\N{REPLACEMENT CHARACTER}"
_ALIKE: Final = str.maketrans(
    {"×": "x", "⁄": "/", "”": '"', "\xa0": " ", "−": "-", "–": "-", "\n": " ", "÷": "/", "’": "'"}
)


@dataclass(frozen=True)
class Figure:
    """One number as it is written, from `start` to `end` in the text; `marks` are the units that
    stand behind it, `close` where the last of them ends. A size has `down` as well, a square twice
    the same number."""

    start: int
    end: int
    close: int
    value: Fraction
    text: str
    marks: tuple[str, ...] = ()
    down: Fraction | None = None
    square: bool = False

    @property
    def unit(self) -> str | None:
        """What it is counted in; None where nothing is said."""
        return self.marks[-1] if self.marks else None

    @property
    def whole(self) -> bool:
        """A plain whole number without a mark."""
        return self.text.isdigit() and not self.marks and self.down is None

    @property
    def values(self) -> tuple[Fraction, ...]:
        """The number, or both of a size."""
        return (self.value,) if self.down is None else (self.value, self.down)


def plain(text: str) -> str:
    """The text sign for sign, with the marks of the keyboard; what is filled in or said to be free
    is covered."""
    covered = FREE.sub(lambda free: FILLED * len(free[0]), text)
    return covered.translate(_ALIKE)


def read(number: str) -> Fraction:
    """The value of a number: `6 1/2`, `6½`, `6-1/2`, `1,024` or `16.5`."""
    text = number.replace(",", "")
    for glyph, part in PARTS.items():
        text = text.replace(glyph, f" {part.numerator}/{part.denominator}")
    return sum((Fraction(part) for part in re.split("[ -]+", text) if part), Fraction(0))


def _unit(mark: str) -> str:
    begins = (unit for begin, unit in UNITS_MORE if mark.startswith(begin))
    return UNITS.get(mark) or next(begins, mark)


def singles(text: str) -> list[Figure]:
    """Every number by itself, in order, with its marks."""
    found: list[Figure] = []
    spots = sorted((*FOUND.finditer(text), *LOOSE.finditer(text)), key=lambda spot: spot.start())
    for spot in spots:
        if found and spot.start() < found[-1].end:
            continue
        try:
            value = read(spot[0])
        except (ValueError, ZeroDivisionError):
            continue
        marks, close = [], spot.end()
        while mark := MARKED.match(text, close):
            marks.append(_unit(mark["mark"]))
            close = mark.end()
        found.append(Figure(spot.start(), spot.end(), close, value, spot[0], tuple(marks)))
    return found


def figures(text: str) -> list[Figure]:
    """Numbers, and sizes where two of them stand across by down, in order."""
    found: list[Figure] = []
    for one in singles(text):
        before = found[-1] if found else None
        by = BY.match(text, before.close) if before else None
        if before and by and by.end() == one.start and before.down is None:
            found[-1] = _size(before, one, text)
        elif square := SQUARE.match(text, one.close):
            found.append(replace(one, close=square.end(), down=one.value, square=True))
        else:
            found.append(one)
    return found


def _size(across: Figure, down: Figure, text: str) -> Figure:
    words = text[across.start : down.end]
    marks = down.marks or across.marks
    return Figure(across.start, down.end, down.close, across.value, words, marks, down.value)
