"""Rounding and printing of lengths."""

from __future__ import annotations

from fractions import Fraction

import pytest

from patternbook.exact import ROOT2
from patternbook.inch import (
    CENTIMETRES,
    INCHES,
    length,
    on_the_ruler,
    plain,
    printed,
    ruler_near,
    ruler_up,
    size,
    step_up,
)

F = Fraction


@pytest.mark.parametrize(
    ("number", "typed", "in_print"),
    [
        (F(5, 2), "2 1/2", "2½"),
        (F(3, 8), "3/8", "⅜"),
        (F(7), "7", "7"),
        (F(0), "0", "0"),
        (F(33, 16), "2 1/16", "2 1⁄16"),
        (F(-1, 2), "-1/2", "−½"),
    ],
)
def test_a_number_as_typed_and_as_printed(number: Fraction, typed: str, in_print: str) -> None:
    assert plain(number) == typed
    assert printed(number) == in_print


def test_a_length_carries_its_mark_and_a_size_only_one() -> None:
    assert length(F(13, 2), INCHES) == "6½″"
    assert size(F(13, 2), F(5, 2), INCHES) == "6½ × 2½″"
    assert size(F(33, 2), F(12), CENTIMETRES) == "16.5 × 12 cm"


def test_a_root_is_printed_as_a_decimal_and_cut_to_the_next_eighth() -> None:
    assert plain(ROOT2 * 9) == "12.73"
    assert ruler_up(ROOT2 * 9, INCHES) == F(51, 4)
    assert ruler_near(ROOT2 * 6, INCHES) == F(17, 2)


# Nearly all rotary rulers are marked in eighths; a sixteenth is bumped up (a chart for quilters,
# https://www.thesprucecrafts.com/conversion-chart-for-quilters-2821935).
def test_the_ruler_shows_eighths() -> None:
    assert on_the_ruler(F(27, 8), INCHES)
    assert not on_the_ruler(F(33, 16), INCHES)
    assert ruler_up(F(33, 16), INCHES) == F(17, 8)


# 148 in ÷ 36 = 4.1, so 4 1/4 yd to the next quarter (an aggregator's worked example,
# https://stockingisthenewplanking.com/how-do-you-calculate-quilt-binding/).
def test_yards_go_up_to_what_the_shop_cuts() -> None:
    assert step_up(F(148, 36), F(1, 4)) == F(17, 4)
    assert step_up(F(77, 72), F(1, 8)) == F(9, 8)
