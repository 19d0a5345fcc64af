"""Numbers as they are typed: every way of writing one length reads as the same length."""

from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.inch import plain, printed
from patternbook.value import Text, ValueFault, parse_amount, parse_length

EIGHTHS = st.integers(0, 800).map(lambda eighths: Fraction(eighths, 8))
QUARTERS = st.integers(0, 4000).map(lambda quarters: Fraction(quarters, 4))


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("2 1/2", "5/2"),
        ("2½", "5/2"),
        ("2 ½", "5/2"),
        ("2 1⁄2", "5/2"),
        ("2\N{NO-BREAK SPACE}1/2", "5/2"),
        ("  2   1/2 ", "5/2"),
        ('2 1/2"', "5/2"),
        ("2 1/2″", "5/2"),
        ("2 1/2 in", "5/2"),
        ("2 1/2 inches", "5/2"),
        ("½", "1/2"),
        ("3/8", "3/8"),
        ("12", "12"),
        ("0", "0"),
        ("9/2", "9/2"),
        ("1/3", "1/3"),
    ],
)
def test_ways_to_write_a_length(typed: str, read: str) -> None:
    assert parse_length(Text(typed)).number == Fraction(read)


@pytest.mark.parametrize(
    ("typed", "code", "said", "hint"),
    [
        ("6.5", "decimal-inches", "decimals are for centimetres", "Write 6 1/2."),
        ("6.51", "decimal-inches", "decimals are for centimetres", None),
        ("2-1/2", "hyphen-number", "a space stands before the fraction", "Write 2 1/2."),
        ("2-4 inch", "hyphen-number", "does the hyphen mean", "Write one number"),
        ("2–4", "hyphen-number", "does the hyphen mean", "Write one number"),
        ("6,5", "decimal-comma", "written with a point", "Write 6.5."),
        ("2 in cm", "two-marks", "two different marks", "Leave one."),
        ("6 cm", "other-mark", "read in inches", "`written-in` says which"),
        ("6 ft", "unknown-mark", "`ft` is no mark", None),
        ("1/0", "zero-fraction", "divides by nothing", None),
        ("2 5/4", "odd-fraction", "a fraction behind a whole is below 1", None),
        ("-3", "negative", "below nothing", None),
        ("two", "not-a-number", "is not a number", None),
        ("", "empty-value", "nothing is written", None),
        ("99999", "absurd-size", "longer than any quilt", None),
        ("1" * 20_000, "too-long", "20,000 characters", None),
    ],
)
def test_what_is_no_length_is_told_in_plain_words(
    typed: str, code: str, said: str, hint: str | None
) -> None:
    with pytest.raises(ValueFault) as fault:
        parse_length(Text(typed))
    assert fault.value.code == code
    assert said in fault.value.words
    assert (fault.value.hint is None) == (hint is None)
    assert hint is None or hint in str(fault.value.hint)


@pytest.mark.parametrize("typed", ["2-4 inch", "2-1/2", "2 in cm"])
def test_a_number_that_reads_two_ways_breaks_the_notation_rule(typed: str) -> None:
    """Errata case A-69: "2-4 inch strips" was read as two strips of 4, and as strips of 2 to 4."""
    with pytest.raises(ValueFault) as fault:
        parse_length(Text(typed))
    assert fault.value.rule == "R23"


def test_centimetres_take_decimals_and_no_fractions() -> None:
    assert parse_length(Text("16.5"), cm=True).number == Fraction(33, 2)
    assert parse_length(Text("16.5 cm"), cm=True).number == Fraction(33, 2)
    with pytest.raises(ValueFault) as fraction:
        parse_length(Text("16 1/2"), cm=True)
    assert fraction.value.code == "fraction-cm"
    with pytest.raises(ValueFault) as inches:
        parse_length(Text("16 in"), cm=True)
    assert inches.value.code == "other-mark"


def test_yards_take_fractions_and_metres_decimals() -> None:
    assert parse_amount(Text("1 3/8 yd"), decimals=False).number == Fraction(11, 8)
    assert parse_amount(Text("0.80"), decimals=True).number == Fraction(4, 5)
    with pytest.raises(ValueFault) as decimal:
        parse_amount(Text("1.4"), decimals=False)
    assert decimal.value.code == "decimal-inches"


@given(EIGHTHS)
def test_what_the_booklet_prints_reads_back_as_the_same_inches(length: Fraction) -> None:
    assert parse_length(Text(printed(length))).number == length
    assert parse_length(Text(plain(length))).number == length


@given(QUARTERS)
def test_what_the_booklet_prints_reads_back_as_the_same_centimetres(length: Fraction) -> None:
    assert parse_length(Text(plain(length, decimals=True)), cm=True).number == length


@given(st.text(max_size=40))
def test_any_text_is_a_length_or_a_fault(typed: str) -> None:
    with suppress(ValueFault):
        assert parse_length(Text(typed)).number >= 0
