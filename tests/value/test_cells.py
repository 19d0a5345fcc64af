"""Cells: parts side by side, as they lie on the table."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.value import Cell, Text, ValueFault, parse_cells


def laid(typed: str, **numbers: int) -> str:
    """The cells one by one, as they would be typed."""
    cells = parse_cells(Text(typed)).laid(numbers)
    return " ".join("/".join([cell.part or ".", *cell.turns]) for cell in cells)


@pytest.mark.parametrize(
    ("typed", "one_by_one"),
    [
        ("A B A", "A B A"),
        ("A*5", "A A A A A"),
        ("A *2", "A A"),
        ("(A B)*3", "A B A B A B"),
        ("(A A B B)*2 C", "A A B B A A B B C"),
        ("S (stack S)*stacks", "S stack S stack S stack S"),
        ("H A*(across - 1) H", "H A A A H"),
        ("star/left star/half/mirror", "star/left star/half/mirror"),
        ("cut-corner/right*2", "cut-corner/right cut-corner/right"),
        ("K . K .", "K . K ."),
        ("((A B)*2 C)*2", "A B A B C A B A B C"),
        ("( A B ) * 2", "A B A B"),
        ("A2 AB", "A2 AB"),
        ("A*0 B", "B"),
        ("A×2", "A A"),
    ],
)
def test_cells_one_by_one(typed: str, one_by_one: str) -> None:
    assert laid(typed, stacks=3, across=4) == one_by_one


def test_it_tells_its_parts_and_the_numbers_it_needs() -> None:
    cells = parse_cells(Text("S (stack/half S)*stacks . A*(across - 1)"))
    assert cells.parts == ("S", "stack", "A")
    assert cells.names == {"stacks", "across"}
    with pytest.raises(KeyError):
        cells.laid({"stacks": 2})


@pytest.mark.parametrize(
    ("typed", "code", "hint"),
    [
        ("A, B", "not-cells", "Parts stand side by side with a space between, without commas."),
        ("ABC", "not-cells", "Put a space between the letters: A B C."),
        ("I A", "not-cells", "The letters I and O are left out: they look like 1 and 0."),
        ("A /left", "not-cells", "A turn follows its part at once: star/left."),
        ("A/sideways", "not-a-turn", "The turns are /right, /left, /half and /mirror."),
        ("(A B", "open-bracket", None),
        ("A B)", "open-bracket", None),
        ("A*(2", "open-bracket", None),
        ("()", "not-cells", None),
        ("A*", "not-cells", None),
        ("A**2", "not-cells", None),
        ("A_b", "not-cells", None),
        ("K.K.", "not-cells", None),
        ("", "empty-value", None),
        ("(" * 40 + "A" + ")" * 40, "too-deep", None),
    ],
)
def test_what_is_no_row(typed: str, code: str, hint: str | None) -> None:
    with pytest.raises(ValueFault) as fault:
        parse_cells(Text(typed))
    assert (fault.value.code, fault.value.hint) == (code, hint)


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("A*50001", "too-many-cells"),
        ("((A*100)*100)*100", "too-many-cells"),
        ("(((((A*999)*999)*999)*999)*999)*999", "too-many-cells"),
        ("A*(across / 2)", "not-whole"),
        ("A*(across - 4)", "not-whole"),
    ],
)
def test_what_cannot_be_laid(typed: str, code: str) -> None:
    with pytest.raises(ValueFault) as fault:
        parse_cells(Text(typed)).laid({"across": 3})
    assert fault.value.code == code


def test_fifty_thousand_patches_can_be_laid() -> None:
    assert parse_cells(Text("A*50000")).laid() == (Cell("A"),) * 50_000


PARTS = st.sampled_from(["A", "AB", "A2", "star", "cut-corner"])
TURNS = st.lists(st.sampled_from(["/left", "/right", "/half", "/mirror"]), max_size=2).map("".join)
CELLS = st.builds(lambda part, turns: part + turns, PARTS, TURNS) | st.just(".")


@given(st.lists(CELLS, min_size=1, max_size=12))
def test_a_row_reads_back_as_it_was_written(cells: list[str]) -> None:
    assert laid(" ".join(cells)) == " ".join(cells)


@given(st.lists(CELLS, min_size=1, max_size=5), st.integers(1, 5))
def test_a_group_is_its_cells_so_many_times(cells: list[str], times: int) -> None:
    row = " ".join(cells)
    assert laid(f"({row})*{times}") == " ".join([row] * times)


@given(st.text("AB./*()23 leftx", max_size=30))
def test_any_text_is_a_row_or_a_fault(typed: str) -> None:
    with suppress(ValueFault, KeyError):
        assert len(parse_cells(Text(typed)).laid()) <= 50_000
