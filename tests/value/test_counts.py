"""Counts are small sums over whole numbers and a size's own numbers."""

from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.value import Text, ValueFault, parse_count

CRIB = {"across": 6, "down": 7, "stacks": 3}


@pytest.mark.parametrize(
    ("typed", "comes_to"),
    [
        ("12", 12),
        ("across", 6),
        ("across * down", 42),
        ("across*3*2", 36),
        ("across × 3", 18),
        ("stacks + 1", 4),
        ("across - 1", 5),
        ("2*(stacks + 1)", 8),
        ("2 + 3 * 4", 14),
        ("10 - 4 - 3", 3),
        ("24 / 4 / 2", 3),
        ("down / 2", Fraction(7, 2)),
        ("((across))", 6),
    ],
)
def test_sums(typed: str, comes_to: Fraction) -> None:
    assert parse_count(Text(typed)).at(CRIB) == comes_to


def test_it_tells_which_numbers_a_size_must_give() -> None:
    count = parse_count(Text("across * (down + across) - 2"))
    assert count.names == {"across", "down"}
    with pytest.raises(KeyError):
        count.at({"across": 3})


@pytest.mark.parametrize(
    ("typed", "code", "hint"),
    [
        ("2 x 3", "not-a-count", "Times is written *."),
        ("6.5", "not-a-count", "A count is a whole number."),
        ("6 1/2", "not-a-count", "A count is a whole number."),
        ("3 *", "not-a-count", None),
        ("(3", "not-a-count", None),
        ("3)", "not-a-count", None),
        ("3 across", "not-a-count", None),
        ("()", "not-a-count", None),
        ("__import__", "not-a-count", None),
        ("A", "not-a-count", None),
        ("-3", "negative", None),
        ("99999999999", "too-many", None),
        ("9" * 5000, "too-many", None),
        ("1+" * 300 + "1", "too-long", None),
        ("", "empty-value", None),
    ],
)
def test_what_is_no_count(typed: str, code: str, hint: str | None) -> None:
    with pytest.raises(ValueFault) as fault:
        parse_count(Text(typed))
    assert (fault.value.code, fault.value.hint) == (code, hint)


@pytest.mark.parametrize(
    ("typed", "code"),
    [("9" + "*9" * 80, "too-many"), ("across / (down - 7)", "divided-by-nothing")],
)
def test_a_sum_that_has_no_end_is_stopped(typed: str, code: str) -> None:
    with pytest.raises(ValueFault) as fault:
        parse_count(Text(typed)).at(CRIB)
    assert fault.value.code == code


# Sums as Python writes them, and what Python makes of them: exact, as ours must be.
WHOLE = st.integers(0, 50).map(lambda n: (str(n), Fraction(n)))
NAMES = st.sampled_from(sorted(CRIB)).map(lambda name: (name, Fraction(CRIB[name])))
Sum = tuple[str, Fraction]


def _both(left: Sum, sign: str, right: Sum) -> Sum:
    done = {"+": left[1] + right[1], "-": left[1] - right[1], "*": left[1] * right[1]}
    return f"({left[0]} {sign} {right[0]})", done[sign]


SUMS = st.recursive(
    WHOLE | NAMES,
    lambda inner: st.builds(_both, inner, st.sampled_from("+-*"), inner),
    max_leaves=5,
)


@given(SUMS)
def test_sums_come_to_what_they_come_to(made: Sum) -> None:
    typed, value = made
    assert parse_count(Text(typed)).at(CRIB) == value


@given(st.text("0123456789ab()+-*/ ", max_size=30))
def test_any_text_is_a_count_or_a_fault(typed: str) -> None:
    with suppress(ValueFault, KeyError):
        assert abs(parse_count(Text(typed)).at({"a": 2, "b": 3})) <= 10**9
