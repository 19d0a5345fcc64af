"""Numbers and names in the trade's form. Forms: booklet anatomy, "Numbers" (a stylebook and a
magazine's usage, named there); where only common practice says so, the test says it."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.booklet import wording
from patternbook.exact import ROOT2, Exact
from patternbook.inch import CENTIMETRES, INCHES
from patternbook.quilt.records import CutSize, Sides

SP = "\N{NO-BREAK SPACE}"


@pytest.mark.parametrize(
    ("number", "printed"),
    [
        (Fraction(13, 2), "6½″"),
        (Fraction(3, 8), "⅜″"),
        (Fraction(40), "40″"),
        (Fraction(33, 16), f"2{SP}1⁄16″"),
        (Fraction(49, 3), "16⅓″"),
        (Exact(0, 9), f"about{SP}12¾″"),  # 12.728: the nearest eighth
    ],
)
def test_a_length_is_one_word_with_its_mark(number: Fraction | Exact, printed: str) -> None:
    assert wording.length(number, INCHES) == printed


def test_width_comes_first_and_one_mark_stands_behind_the_last_number() -> None:
    assert wording.size(Fraction(13, 2), Fraction(5, 2), INCHES) == f"6½{SP}×{SP}2½″"
    assert wording.size(Fraction(33, 2), Fraction(13, 2), CENTIMETRES) == f"16.5{SP}×{SP}6.5{SP}cm"
    assert wording.size(9 * ROOT2, Exact(9), INCHES) == f"about{SP}12¾{SP}×{SP}9″"


def test_a_strip_is_as_long_as_the_fabric_is_wide() -> None:
    assert wording.cut_size(CutSize(Fraction(5, 2), None), INCHES) == f"2½″{SP}× width of fabric"


def test_finished_or_with_seam_allowances_is_always_said() -> None:
    told = wording.both_sizes(
        Sides(Exact(6), Exact(6)), Sides(Exact(Fraction(13, 2)), Exact(Fraction(13, 2))), INCHES
    )
    assert told == (f"6½{SP}×{SP}6½″ with seam allowances, 6{SP}×{SP}6″ finished in the quilt")


@pytest.mark.parametrize(
    ("number", "word", "said"),
    [(1, "strip", "1 strip"), (6, "strip", "6 strips"), (2, "patch", "2 patches"),
     (0, "square", "0 squares"), (3, "half", "3 halves"), (2, "sash", "2 sashes"),
     (2, "tray", "2 trays"), (2, "lily", "2 lilies")],
)  # fmt: skip
def test_plurals(number: int, word: str, said: str) -> None:
    assert wording.counted(number, word) == said.replace(" ", SP)


def test_small_counts_are_words() -> None:
    """Common practice, no source for the bound of twelve."""
    assert [wording.spelled(number) for number in (1, 6, 12, 13, 40)] == [
        "one", "six", "twelve", "13", "40",
    ]  # fmt: skip


def test_lists_and_sizes() -> None:
    assert wording.listed(["A"]) == "A"
    assert wording.listed(["A", "B", "C"]) == "A, B and C"
    assert wording.by_size({"crib": "6", "throw": "9"}) == f"crib{SP}6, throw{SP}9"
    assert wording.by_size({"crib": "6", "throw": "6"}) == "6"
    assert wording.lengths([Fraction(5, 2), Fraction(3)], INCHES) == "2½ and 3″"
    assert wording.between(4, 6, INCHES) == f"4 to{SP}6″"


def test_amounts_of_cloth() -> None:
    assert wording.amount(Fraction(5, 4), "yd") == f"1¼{SP}yd"
    assert wording.amount(Fraction(6, 5), "m") == f"1.2{SP}m"


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("one roll of 2 1/2 inch strips", "one roll of 2½ inch strips"),
        ("cut 6 1/2 x 2 1/2", f"cut 6½{SP}× 2½"),
        ("3/8 yd", "⅜ yd"),
        ("on 24/11/2026", "on 24/11/2026"),
        ("5/16 is no mark of hers", "5/16 is no mark of hers"),
        ("and/or", "and/or"),
    ],
)
def test_sizes_that_an_author_typed_are_printed_like_ours(typed: str, printed: str) -> None:
    assert wording.typeset(typed) == printed


@given(st.fractions(min_value=0, max_value=200, max_denominator=8))
def test_no_length_can_be_parted_at_the_end_of_a_line(number: Fraction) -> None:
    assert " " not in wording.size(number, number, INCHES)
    assert " " not in wording.size(number, number, CENTIMETRES)
