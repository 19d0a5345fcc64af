"""Inches and yards in metric, against printed tables and the legal definition."""

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.metric import (
    centimetres,
    inches,
    metres,
    metres_to_buy,
    shown_centimetres,
    shown_metres,
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


@given(st.fractions(min_value=0, max_value=50, max_denominator=8))
def test_what_is_bought_in_metres_is_enough_and_no_step_too_much(yards: Fraction) -> None:
    for step in (Fraction(1, 10), Fraction(1, 20), Fraction(1, 4)):
        bought = metres_to_buy(yards, step)
        assert bought % step == 0
        assert yards * YARD <= bought < yards * YARD + step


@pytest.mark.parametrize(
    ("amount", "shown"), [("6/5", "1.2"), ("7/20", "0.35"), ("3", "3"), ("0", "0"), ("10", "10")]
)
def test_metres_as_they_are_shown(amount: str, shown: str) -> None:
    assert shown_metres(Fraction(amount)) == shown


def test_a_float_is_turned_away_at_the_door() -> None:
    with pytest.raises(TypeError, match="not exact"):
        centimetres(2.5)  # type: ignore[arg-type]
