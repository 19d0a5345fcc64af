"""Inches and yards in metric, against printed tables and the legal definition."""

from fractions import Fraction

import pint
import pytest

from patternbook.metric import (
    centimetres,
    inches,
    metres,
    shown_centimetres,
)

# The yard is 0.9144 m exactly (international agreement of 1959, as told by the encyclopaedia
# article "Yard", https://en.wikipedia.org/wiki/Yard?oldid=704108643, and by pint's own file).
YARD = Fraction(9144, 10000)


def test_the_yard_and_the_inch_are_exact() -> None:
    assert metres(Fraction(1)) == YARD
    assert centimetres(Fraction(1)) == Fraction(254, 100)
    assert inches(Fraction(254, 100)) == 1


@pytest.mark.parametrize(("unit", "other"), [("inch", "centimeter"), ("yard", "meter")])
def test_our_units_are_those_of_the_reference_library(unit: str, other: str) -> None:
    """Pint's own file of units, https://github.com/hgrecco/pint."""
    whole: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    ours = {"inch": centimetres, "yard": metres}[unit]
    assert ours(Fraction(1)) == whole.Quantity(Fraction(1), unit).to(other).magnitude


@pytest.mark.parametrize(
    ("inch", "cm"),
    [("1", "2.5"), ("2", "5.1"), ("5/2", "6.4"), ("3", "7.6"), ("4", "10.2"), ("5", "12.7"),
     ("6", "15.2"), ("10", "25.4"), ("12", "30.5"), ("9", "22.9"), ("18", "45.7"), ("36", "91.4")],
)  # fmt: skip
def test_centimetres_as_a_shop_prints_them(inch: str, cm: str) -> None:
    """A shop's printed conversion table (2022):
    https://www.echidnasewing.com.au/article/inspiring-and-educating/imperial-to-metric-conversion-guide/
    """
    assert shown_centimetres(Fraction(inch)) == cm


def test_a_float_is_turned_away_at_the_door() -> None:
    with pytest.raises(TypeError, match="not exact"):
        centimetres(2.5)  # type: ignore[arg-type]
