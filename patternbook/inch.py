"""Rounding and printing of lengths, in the two systems that a pattern may be written in."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

from patternbook.exact import Exact, Rational

GLYPHS: Final = {
    Fraction(1, 8): "⅛",
    Fraction(1, 4): "¼",
    Fraction(3, 8): "⅜",
    Fraction(1, 2): "½",
    Fraction(5, 8): "⅝",
    Fraction(3, 4): "¾",
    Fraction(7, 8): "⅞",
    Fraction(1, 3): "⅓",
    Fraction(2, 3): "⅔",
}
PARTS: Final = {glyph: part for part, glyph in GLYPHS.items()}
GLYPH: Final = "[" + "".join(PARTS) + "]"  # any of them, as part of a pattern
# Curves, diagonals and shapes are read to this, and no finer: a ruler shows no less.
TOLERANCE: Final = Fraction(1, 64)


@dataclass(frozen=True)
class System:
    """The measures of one pattern; all its lengths are counted in `unit`.

    `step` is the finest mark that a cut may need, `triangle_step` what the allowance of a
    triangle is rounded up to, `bolt` how many units the shop sells as one
    (36 inches are a yard, 100 centimetres a metre). Seam and width are the trade's usual ones
    (sources: trade facts 2.1, 2.6, 3.2 and 3.6, named beside the tests).
    """

    unit: Literal["in", "cm"]
    mark: str
    step: Fraction
    triangle_step: Fraction
    seam: Fraction
    width: Fraction
    bolt: int
    bolt_unit: Literal["yd", "m"]


INCHES: Final = System(
    "in", "″", Fraction(1, 8), Fraction(1, 8), Fraction(1, 4), Fraction(40), 36, "yd"
)
CENTIMETRES: Final = System(
    "cm", " cm", Fraction(1, 4), Fraction(1, 10), Fraction(3, 4), Fraction(105), 100, "m"
)
INCHES_A_CENTIMETRE: Final = Fraction(50, 127)


def ruler_up(length: Exact | Rational, system: System) -> Fraction:
    """The length rounded up to the next mark of the ruler: a cut may be trimmed, never grown."""
    return Exact.of(length).up(system.step)


def triangle_allowance(seam: Fraction, diagonals: int, system: System) -> Fraction:
    """What a square loses that is cut on one diagonal or on both: two seams, and those that run
    to a point. Exactly s(2 + √2) and s(2 + 2√2), rounded up as the trade does."""
    return Exact(2 * seam, diagonals * seam).up(system.triangle_step)


def ruler_near(length: Exact | Rational, system: System) -> Fraction:
    """The nearest mark of the ruler, for "about" in a sentence."""
    return (Exact.of(length) + system.step / 2).down(system.step)


def on_the_ruler(length: Exact | Rational, system: System) -> bool:
    """Whether the ruler has a mark at this length."""
    exact = Exact.of(length)
    return exact.rational and exact.fraction % system.step == 0


def legible(length: Exact | Rational, system: System) -> bool:
    """Whether the length can be read off a tape: to half the ruler's finest mark, in centimetres
    to half a millimetre."""
    exact = Exact.of(length)
    finest = Fraction(1, 20) if system.unit == "cm" else system.step / 2
    if not exact.rational:
        return False
    return exact.fraction % finest == 0 or exact.fraction % 1 in GLYPHS


def step_up(amount: Fraction, step: Fraction) -> Fraction:
    """An amount of cloth rounded up to what the shop cuts."""
    return -(-amount // step) * step


def plain(number: Exact | Rational, decimals: bool = False) -> str:
    """A number as a person types it: `6 1/2`, or `16.5` in centimetres.

    A number that no fraction shows is given as a decimal of two places.
    """
    exact = Exact.of(number)
    if not exact.rational:
        return f"{float(exact):.2f}"
    value = exact.fraction
    if decimals or value.denominator > 64:
        return f"{float(value):.2f}".rstrip("0").rstrip(".") or "0"
    sign, value = ("-" if value < 0 else ""), abs(value)
    whole, rest = divmod(value, 1)
    return sign + (" ".join(str(part) for part in (whole, rest) if part) or "0")


def printed(number: Exact | Rational, decimals: bool = False) -> str:
    """A number as the booklet prints it: `6½`, with one character for the fraction."""
    exact = Exact.of(number)
    if decimals or not exact.rational:
        return plain(exact, decimals).replace("-", "−")
    sign, value = ("−" if exact.fraction < 0 else ""), abs(exact.fraction)
    whole, rest = divmod(value, 1)
    if not rest:
        return f"{sign}{whole}"
    glyph = GLYPHS.get(rest, f"{rest.numerator}⁄{rest.denominator}")
    lead = f"{whole} " if whole and rest not in GLYPHS else str(whole or "")
    return f"{sign}{lead}{glyph}"


def length(number: Exact | Rational, system: System) -> str:
    """A length with its mark: `6½″` or `16.5 cm`."""
    return printed(number, system.unit == "cm") + system.mark


def size(across: Exact | Rational, down: Exact | Rational, system: System) -> str:
    """Width before length, with one mark behind the last number: `6½ × 2½″`."""
    decimals = system.unit == "cm"
    return f"{printed(across, decimals)} × {printed(down, decimals)}{system.mark}"
