"""Measures: a length, an amount of cloth, a size across and down, and the size a piece is cut."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal, NoReturn

from patternbook.notice import Place
from patternbook.value.number import CM_MARKS, INCH_MARKS, number, plain
from patternbook.value.text import NOWHERE, Text, ValueFault, quoted

Fit = Literal["fit"]
Strip = Literal["WOF"]
AMOUNT_MARKS: Final = frozenset(
    ("yd", "yds", "yard", "yards", "m", "metre", "metres", "%", "percent", "°", "degrees")
)
# Far beyond any quilt and any bolt, so what is above was mistyped: in inches, or centimetres.
LONGEST_LENGTH: Final = 10_000
MOST_SHRINKAGE: Final = 20  # cottons lose 3 to 10 (trade facts 12.2), flannel more
LARGEST_SIDE: Final = {False: 1_000, True: 2_500}


@dataclass(frozen=True)
class LengthValue:
    """A length, in the pattern's own measure."""

    number: Fraction
    text: str
    place: Place = NOWHERE


@dataclass(frozen=True)
class AmountValue:
    """So many yards, metres, degrees or percent."""

    number: Fraction
    text: str
    place: Place = NOWHERE


@dataclass(frozen=True)
class SizeValue:
    """Across by down; `about` where it was said to be only near."""

    across: Fraction
    down: Fraction
    about: bool
    text: str
    place: Place = NOWHERE


@dataclass(frozen=True)
class CutValue:
    """The size a piece is cut: `fit` is as long as its place, `WOF` the whole width of cloth."""

    across: Fraction | Fit
    down: Fraction | Fit | Strip
    text: str
    place: Place = NOWHERE


def parse_length(text: Text, cm: bool = False, *, zero: bool = True) -> LengthValue:
    """A length, not below 0."""
    line = plain(text)
    value = number(line, decimals=cm, marks=CM_MARKS if cm else INCH_MARKS)
    if not value and not zero:
        raise ValueFault("zero-size", f"{quoted(line)}: nothing can be 0 long or wide here")
    if value > LONGEST_LENGTH:
        raise ValueFault("absurd-size", f"{quoted(line)} is longer than any quilt has use for")
    return LengthValue(value, line, text.place)


def parse_amount(text: Text, decimals: bool | None = None, *, zero: bool = True) -> AmountValue:
    """An amount of cloth, an angle, or so many in a hundred."""
    line = plain(text)
    value = number(line, decimals=decimals, marks=AMOUNT_MARKS)
    if not value and not zero:
        raise ValueFault("zero-size", f"{quoted(line)}: nothing is sold in steps of 0")
    if value > LONGEST_LENGTH:
        raise ValueFault("absurd-size", f"{quoted(line)} is more than any quilt has use for")
    return AmountValue(value, line, text.place)


def parse_percent(text: Text) -> AmountValue:
    """So many in a hundred, of cloth that shrinks."""
    line = plain(text)
    value = number(line, decimals=None, marks=frozenset(("%", "percent")))
    if value > MOST_SHRINKAGE:
        most = f"no quilting cloth shrinks by more than {MOST_SHRINKAGE} in the hundred"
        raise ValueFault("absurd-size", f"{quoted(line)}: {most}")
    return AmountValue(value, line, text.place)


def parse_size(text: Text, cm: bool = False, *, zero: bool = False) -> SizeValue:
    """`36 x 42` or `6 1/2 square`, with `about` in front where it is near enough."""
    line = plain(text)
    about = line.startswith("about ")
    across, down = (_side(side, line, cm, zero) for side in _sides(line.removeprefix("about ")))
    return SizeValue(across, down, about, line, text.place)


def parse_point(text: Text, cm: bool = False) -> SizeValue:
    """A corner of a shape, across and down from its top left; it may lie at 0."""
    return parse_size(text, cm, zero=True)


def parse_cut(text: Text, cm: bool = False) -> CutValue:
    """`6 1/2 x 2 1/2`, `3 1/2 square`, `fit x 2 1/2` or `2 1/2 x WOF`."""
    line = plain(text)
    across, down = _sides(line)
    if across == "WOF":
        raise ValueFault(
            "width-first",
            f"{quoted(line)}: the strip's width comes first",
            f"Write {down} x WOF." if down != "WOF" else None,
        )
    if line == "fit square":
        raise ValueFault(
            "fit-square", "`fit square`: two sides that fit need not be alike", "Write fit x fit."
        )
    return CutValue(_fit(across, line, cm), _strip(down, line, cm), line, text.place)


def _fit(side: str, line: str, cm: bool) -> Fraction | Fit:
    return "fit" if side == "fit" else _side(side, line, cm)


def _strip(side: str, line: str, cm: bool) -> Fraction | Fit | Strip:
    return "WOF" if side == "WOF" else _fit(side, line, cm)


def _sides(line: str) -> tuple[str, str]:
    if line.endswith(" square"):
        side = line.removesuffix(" square")
        return side, side
    sides = [side.strip() for side in re.split(r"(?<![a-z])[xX](?![a-z])", line)]
    if len(sides) != 2 or not all(sides):
        _not_a_size(line, sides)
    return sides[0], sides[1]


def _not_a_size(line: str, sides: list[str]) -> NoReturn:
    if len(sides) == 1:
        raise ValueFault(
            "one-number",
            f"{quoted(line)} is not a size: it says one side, and a size has two",
            "Write it as 6 1/2 x 2 1/2, or 6 1/2 square.",
        )
    raise ValueFault("not-a-size", f"{quoted(line)} is not a size (such as 6 1/2 x 2 1/2)")


def _side(side: str, line: str, cm: bool, zero: bool = False) -> Fraction:
    value = number(side, decimals=cm, marks=CM_MARKS if cm else INCH_MARKS)
    if not value and not zero:
        raise ValueFault("zero-size", f"{quoted(line)}: a side of 0 cannot be cut or sewn")
    if value > LARGEST_SIDE[cm]:
        raise ValueFault("absurd-size", f"{quoted(line)} is larger than any quilt")
    return value
