"""Names, letters, whole numbers, days; and values that differ from size to size."""

import datetime as dt

import pytest

from patternbook.notice import Place
from patternbook.value import (
    PerSize,
    Text,
    ValueFault,
    every,
    parse_date,
    parse_letter,
    parse_name,
    parse_part,
    parse_whole,
)


def test_a_word_is_itself_and_knows_its_place() -> None:
    place = Place("pattern.yaml", 3, 5, 3, 9)
    name = parse_name(Text("star", place))
    assert name == "star"
    assert hash(name) == hash("star")
    assert name.place == place


@pytest.mark.parametrize("typed", ["A", "AB", "A2", "AB9"])
def test_letters(typed: str) -> None:
    assert parse_letter(Text(typed)) == typed
    assert parse_part(Text(typed)).is_piece


@pytest.mark.parametrize("typed", ["star", "cut-corner", "star2", "a"])
def test_names(typed: str) -> None:
    assert parse_name(Text(typed)) == typed
    assert not parse_part(Text(typed)).is_piece


@pytest.mark.parametrize(
    ("typed", "hint"),
    [
        ("I", "I and O are left out: they look like 1 and 0."),
        ("AO", "I and O are left out: they look like 1 and 0."),
        ("star", "Small words are names of units."),
        ("ABC", None),
        ("A22", None),
    ],
)
def test_what_is_no_letter(typed: str, hint: str | None) -> None:
    with pytest.raises(ValueFault) as fault:
        parse_letter(Text(typed))
    assert (fault.value.code, fault.value.hint) == ("not-a-letter", hint)


@pytest.mark.parametrize(
    ("typed", "hint"),
    [("My Quilt", "Try my-quilt."), ("cut_corner", "Try cut-corner."), ("2star", None)],
)
def test_what_is_no_name(typed: str, hint: str | None) -> None:
    with pytest.raises(ValueFault) as fault:
        parse_name(Text(typed))
    assert fault.value.hint == hint


def test_whole_numbers_and_days() -> None:
    assert parse_whole(Text("12")) == 12
    assert parse_date(Text("2026-03-01")).day == dt.date(2026, 3, 1)
    for typed in ("1.5", "-1", "two", "9" * 30, "١٢"):
        with pytest.raises(ValueFault):
            parse_whole(Text(typed))
    for typed in ("2026-13-01", "2026-3-1", "1 March"):
        with pytest.raises(ValueFault):
            parse_date(Text(typed))


def test_a_value_for_all_sizes_or_one_beside_each() -> None:
    assert every(6).at("crib") == 6
    assert every(6).stated() == ((None, 6),)
    each = PerSize(by_size={"crib": 6, "throw": 9}, others=12)
    assert [each.at(size) for size in ("crib", "throw", "twin")] == [6, 9, 12]
    assert each.stated() == (("crib", 6), ("throw", 9), ("others", 12))
    assert PerSize(by_size={"crib": 6}).at("throw") is None
