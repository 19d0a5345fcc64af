"""Exact lengths over 1, √2, √3 and √6, against mpmath-free arithmetic and the trade's tables."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import ROOT2, ROOT3, Exact

FRACTIONS = st.fractions(min_value=-100, max_value=100, max_denominator=64)
EXACTS = st.builds(Exact, FRACTIONS, FRACTIONS, FRACTIONS, FRACTIONS)
EIGHTH = Fraction(1, 8)

# Square for a side triangle of a block on point, cut twice: finished × √2 + 1 1/4, up to the
# next eighth. A hand-out's table, http://lukas.is-a-geek.org/tani/chart.htm; its 16-inch value
# (23 7/8) rests on 1.414: with the true root it is 23.8774, so 24.
SIDE_TRIANGLES = {
    5: "8 3/8", 6: "9 3/4", 7: "11 1/4", 8: "12 5/8", 9: "14", 10: "15 1/2",
    11: "16 7/8", 12: "18 1/4", 13: "19 3/4", 14: "21 1/8", 15: "22 1/2", 16: "24",
}  # fmt: skip


@pytest.mark.parametrize(("finished", "square"), SIDE_TRIANGLES.items())
def test_a_side_triangle_is_rounded_up_once(finished: int, square: str) -> None:
    needed = ROOT2 * finished + Fraction(5, 4)
    assert needed.up(EIGHTH) == sum(map(Fraction, square.split()))


def test_roots_multiply_back_to_whole_numbers() -> None:
    assert ROOT2 * ROOT2 == 2
    assert ROOT3 * ROOT3 == 3
    assert Exact(0, 0, 0, 1) == ROOT2 * ROOT3


@given(EXACTS, EXACTS)
def test_sum_and_product_agree_with_decimals(one: Exact, other: Exact) -> None:
    assert float(one + other) == pytest.approx(float(one) + float(other))
    assert float(one * other) == pytest.approx(float(one) * float(other), abs=1e-6)


@given(EXACTS)
def test_a_value_times_its_inverse_is_one(value: Exact) -> None:
    if value.sign():
        assert value * value.inverse() == 1


@given(EXACTS, st.sampled_from([Fraction(1, 8), Fraction(1, 4), Fraction(1), Fraction(1, 64)]))
def test_rounding_never_steps_over_the_value(value: Exact, step: Fraction) -> None:
    down, up = value.down(step), value.up(step)
    assert down <= value <= up
    assert up - down in (0, step)


@given(EXACTS, EXACTS)
def test_order_is_that_of_the_number_line(one: Exact, other: Exact) -> None:
    assert (one < other) + (one == other) + (one > other) == 1


def test_two_near_values_are_told_apart() -> None:
    close = Exact(Fraction(66922, 47321)) - ROOT2
    assert close.sign() != 0
    assert close == close + 0


def test_a_root_is_no_fraction() -> None:
    with pytest.raises(ValueError, match="not a fraction"):
        _ = ROOT2.fraction
