"""Inches and yards told in centimetres and metres, for readers who buy and measure in those."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from pint import UnitRegistry

DEFINED: Final = (
    "meter = [length]",
    "centimeter = 1/100 meter",
    "inch = 254/100 centimeter",
    "yard = 36 inch",
)


@cache
def _units() -> UnitRegistry[Fraction]:
    """The units, in fractions; loaded when first asked for, since a check needs none."""
    from pint import UnitRegistry

    # Pint's own list of every unit takes a quarter of a second to read; a test holds these to it.
    registry: UnitRegistry[Fraction] = UnitRegistry(None, non_int_type=Fraction)
    for line in DEFINED:
        registry.define(line)
    return registry


def _converted(amount: Fraction, old: str, new: str) -> Fraction:
    if not isinstance(amount, Fraction | int):
        raise TypeError(f"{amount!r} is not exact")
    return _units().Quantity(Fraction(amount), old).to(new).magnitude


def centimetres(inches: Fraction) -> Fraction:
    """The exact length in centimetres."""
    return _converted(inches, "inch", "centimeter")


def inches(centimetres: Fraction) -> Fraction:
    """The exact length in inches."""
    return _converted(centimetres, "centimeter", "inch")


def shown_centimetres(length: Fraction) -> str:
    """Inches as centimetres with one decimal, the nearest, a half upward: 2½ in are 6.4."""
    tenths = (abs(centimetres(length)) * 20 + 1) // 2
    sign = "−" if length < 0 and tenths else ""
    return f"{sign}{tenths // 10}.{tenths % 10}"


def metres(yards: Fraction) -> Fraction:
    """The exact length in metres."""
    return _converted(yards, "yard", "meter")
