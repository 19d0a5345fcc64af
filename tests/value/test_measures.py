"""Sizes go across before down; a cut may fit, or run the whole width of the cloth."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.notice import Place
from patternbook.value import Text, ValueFault, parse_cut, parse_point, parse_size

HALF = Fraction(1, 2)
ONE_NUMBER = "Write one number; how many is said by count or strips."
ONE_SYSTEM = "One pattern is written in one system; `written-in` says which."


@pytest.mark.parametrize(
    ("typed", "across", "down", "about"),
    [
        ("36 x 42", 36, 42, False),
        ("36 × 42", 36, 42, False),
        ("36x42", 36, 42, False),
        ("36 X 42", 36, 42, False),
        ("58½×71½", 58 + HALF, 71 + HALF, False),
        ("6 1/2 square", 6 + HALF, 6 + HALF, False),
        ('6 1/2" x 2 1/2"', 6 + HALF, 2 + HALF, False),
        ("about 38 1/8 x 50 7/8", Fraction(305, 8), Fraction(407, 8), True),
    ],
)
def test_sizes(typed: str, across: Fraction, down: Fraction, about: bool) -> None:
    size = parse_size(Text(typed))
    assert (size.across, size.down, size.about) == (across, down, about)


@pytest.mark.parametrize(
    ("typed", "across", "down"),
    [
        ("6 1/2 x 2 1/2", 6 + HALF, 2 + HALF),
        ("3 1/2 square", 3 + HALF, 3 + HALF),
        ("fit x 2 1/2", "fit", 2 + HALF),
        ("3 1/2 x fit", 3 + HALF, "fit"),
        ("2 1/2 x WOF", 2 + HALF, "WOF"),
        ("fit x WOF", "fit", "WOF"),
    ],
)
def test_cuts(typed: str, across: object, down: object) -> None:
    cut = parse_cut(Text(typed))
    assert (cut.across, cut.down) == (across, down)


@pytest.mark.parametrize(
    ("typed", "code", "hint"),
    [
        ("6 1/2", "one-number", "Write it as 6 1/2 x 2 1/2, or 6 1/2 square."),
        ("WOF x 2 1/2", "width-first", "Write 2 1/2 x WOF."),
        ("fit square", "fit-square", "Write fit x fit."),
        (
            "2-4 inch x 10",
            "hyphen-number",
            "Write one number; how many is said by count or strips.",
        ),
        ("2 x 3 x 4", "not-a-size", None),
        ("0 square", "zero-size", None),
        ("3 x 0", "zero-size", None),
        ("2000 square", "absurd-size", None),
        (
            "3 in x 5 cm",
            "other-mark",
            "One pattern is written in one system; `written-in` says which.",
        ),
        ("fitt x 3", "not-a-number", None),
    ],
)
def test_what_is_no_cut(typed: str, code: str, hint: str | None) -> None:
    with pytest.raises(ValueFault) as fault:
        parse_cut(Text(typed))
    assert (fault.value.code, fault.value.hint) == (code, hint)


def test_only_the_corner_of_a_shape_may_lie_at_nought() -> None:
    assert parse_point(Text("0 x 3")).across == 0
    with pytest.raises(ValueFault):
        parse_size(Text("0 x 3"))


def test_a_value_keeps_its_words_and_its_place() -> None:
    place = Place("pattern.yaml", 4, 12, 4, 19)
    cut = parse_cut(Text("2½ × 4", place))
    assert (cut.text, cut.place) == ("2 1/2 x 4", place)


@given(st.integers(1, 8000), st.integers(1, 8000))
def test_a_size_reads_back_as_it_was_written(across: int, down: int) -> None:
    sides = Fraction(across, 8), Fraction(down, 8)
    size = parse_size(Text(" x ".join(map(str, sides))))
    assert (size.across, size.down) == sides
