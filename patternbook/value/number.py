"""Numbers as quilters write them: `2 1/2`, `2½`, `3/8`, and `6.5` where the pattern is in cm."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final

from patternbook.value.text import ValueFault, one_line, quoted

GLYPHS: Final = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
}
# The typographic fraction slash and the division slash are read as a slash.
_SLASHES: Final = {"⁄": "/", "∕": "/"}
_PLAIN: Final = str.maketrans(
    {glyph: f" {words}" for glyph, words in GLYPHS.items()} | _SLASHES | {"×": " x ", "−": "-"}
)
_NUMBER: Final = re.compile(
    r"(?P<number>(?P<whole>[0-9]{1,9}) (?P<top>[0-9]{1,4})/(?P<bottom>[0-9]{1,4})"
    r"|(?P<only_top>[0-9]{1,4})/(?P<only_bottom>[0-9]{1,4})"
    r"|(?P<decimal>[0-9]{1,9}\.[0-9]{1,6})"
    r"|(?P<plain>[0-9]{1,9}))"
    r"(?: ?(?P<unit>[a-z]+|\"|″|”|''|%|°))?"
)
INCH_MARKS: Final = frozenset(("in", "inch", "inches", '"', "″", "”", "''"))
CM_MARKS: Final = frozenset(("cm", "centimetre", "centimetres"))
_RANGE: Final = re.compile(r"[0-9/. ]+ ?[-–—] ?[0-9]")
_ANY_MARK: Final = re.compile(r"(?<![a-z])(?:inch(?:es)?|in|cm|yards?|yds?)(?![a-z])|[\"″”]")


def plain(text: str) -> str:
    """The value in plain characters: `2½ × 3` is `2 1/2 x 3`."""
    return one_line(text.translate(_PLAIN))


def number(written: str, *, decimals: bool | None, marks: frozenset[str]) -> Fraction:
    """The number, which may carry one of these marks.

    `decimals`: True where the pattern is in centimetres, False where in inches, None where
    either will do.
    """
    found = _NUMBER.fullmatch(written)
    if not found:
        raise _not_a_number(written)
    unit = found["unit"]
    if unit and unit not in marks:
        raise _wrong_mark(written, unit, marks)
    if found["decimal"]:
        return _decimal(found["decimal"], decimals)
    if found["plain"]:
        return Fraction(int(found["plain"]))
    top, bottom = found["top"] or found["only_top"], found["bottom"] or found["only_bottom"]
    return _fraction(found["whole"], int(top), int(bottom), decimals)


def _fraction(whole: str | None, top: int, bottom: int, decimals: bool | None) -> Fraction:
    shown = f"{top}/{bottom}"
    if not bottom:
        raise ValueFault("zero-fraction", f"`{shown}` divides by nothing")
    if whole and top >= bottom:
        raise ValueFault("odd-fraction", f"`{whole} {shown}`: a fraction behind a whole is below 1")
    value = int(whole or 0) + Fraction(top, bottom)
    if decimals:
        raise ValueFault(
            "fraction-cm",
            f"`{shown}`: this number is in centimetres, and they are written with a point",
            f"Write {float(value):.4g}.",
        )
    return value


def _decimal(digits: str, decimals: bool | None) -> Fraction:
    value = Fraction(digits)
    if decimals is not False:
        return value
    raise ValueFault(
        "decimal-inches",
        f"`{digits}`: decimals are for centimetres; inches and yards are written with a fraction",
        f"Write {_as_fraction(value)}." if 64 % value.denominator == 0 else None,
    )


def _as_fraction(value: Fraction) -> str:
    whole, rest = divmod(value, 1)
    return " ".join(str(part) for part in (whole, rest) if part) or "0"


def _wrong_mark(written: str, unit: str, marks: frozenset[str]) -> ValueFault:
    known = {"in": INCH_MARKS, "cm": CM_MARKS}
    meant = next((name for name, words in known.items() if unit in words), None)
    if meant and marks & (INCH_MARKS | CM_MARKS):
        other = "inches" if meant == "cm" else "centimetres"
        return ValueFault(
            "other-mark",
            f"{quoted(written)}: this number is read in {other}, and `{unit}` says otherwise",
            "One pattern is written in one system; `written-in` says which.",
            "R17",
        )
    return ValueFault(
        "unknown-mark",
        f"{quoted(written)}: `{unit}` is no mark for this number",
        rule="R23" if meant else None,
        needed=written.removesuffix(unit).strip() if meant else None,
    )


def _not_a_number(written: str) -> ValueFault:
    if written.startswith("-"):
        return ValueFault("negative", f"{quoted(written)} is below nothing")
    if re.search(r"[0-9]/[0-9]", written) and re.fullmatch(r"[0-9]+-[0-9]+/[0-9]+.*", written):
        return ValueFault(
            "hyphen-number",
            f"{quoted(written)}: a hyphen can mean `2 to 1/2`; a space stands before the fraction",
            f"Write {written.replace('-', ' ', 1)}.",
            "R23",
            written.replace("-", " ", 1),
        )
    if _RANGE.match(written):
        return ValueFault(
            "hyphen-number",
            f"{quoted(written)}: does the hyphen mean `from … to`, or so many of that width?",
            "Write one number; how many is said by count or strips.",
            "R23",
        )
    if len({_system(mark) for mark in _ANY_MARK.findall(written)}) > 1:
        return _two_marks(written)
    if re.fullmatch(r"[0-9]+,[0-9]+.*", written):
        return ValueFault(
            "decimal-comma",
            f"{quoted(written)}: a decimal is written with a point",
            f"Write {written.replace(',', '.', 1)}.",
        )
    return ValueFault("not-a-number", f"{quoted(written)} is not a number (such as 2 1/2 or 3/8)")


def _two_marks(written: str) -> ValueFault:
    bare = _NUMBER.match(written)
    return ValueFault(
        "two-marks",
        f"{quoted(written)} carries two different marks",
        "Leave one.",
        "R23",
        bare["number"] if bare else None,
    )


def _system(mark: str) -> str:
    return "cm" if mark in CM_MARKS else "in" if mark in INCH_MARKS else "yd"
