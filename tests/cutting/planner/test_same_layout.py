"""The same layout in every fat quarter: the most block sets that one holds."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternbook.cutting.planner.records import Kind, SheetsAnswer, SheetsTask
from patternbook.cutting.planner.same_layout import SameLayout, same_layout
from patternbook.cutting.planner.sheets import solve_sheets
from tests.benchmarks.cut_packs import sheet_faults
from tests.cutting.planner.test_sheets import QUARTER, SQUARES

SMALL_QUARTER = (140, 164)  # 17½ x 20½ in


def layout_faults(found: SameLayout) -> list[str]:
    """The layout as a plan of one piece of cloth for all sets, counted again."""
    kinds = tuple(kind._replace(number=kind.number * found.sets) for kind in found.task.kinds)
    task = found.task._replace(kinds=kinds)
    plan = SheetsAnswer(
        task, (found.sheet,) if found.sheet else (), 1, 0, solve_sheets(task).prices
    )
    return [fault for fault in sheet_faults(plan) if "order" not in fault and "prices" not in fault]


@pytest.mark.parametrize(("side", "number"), SQUARES.items())
def test_a_set_of_one_square_fits_as_often_as_published(side: int, number: int) -> None:
    """The chart that test_sheets names."""
    found = same_layout(SheetsTask(*QUARTER, (Kind("square", side, side, 1),)))
    assert (found.sets, found.most) == (number, number)


# Blocks in eighths: along, across, number of each in one set; the sets that a fat quarter of
# 17½ x 20½ in gives were first found, and proven, by a trial of the same method.
BLOCKS = {
    "squares and halves": (((36, 68, 2), (36, 36, 4)), 2),
    "triangles from squares, with corners": (((39, 39, 2), (20, 36, 4), (20, 20, 4)), 2),
    "large and small": (((52, 52, 1), (28, 52, 1), (28, 28, 2)), 3),
    "logs 2 in wide": (((16, 16, 1), (16, 28, 2), (16, 40, 2), (16, 52, 2), (16, 64, 1)), 4),
}


@pytest.mark.parametrize("name", BLOCKS)
def test_whole_sets_from_a_fat_quarter(name: str) -> None:
    rows, sets = BLOCKS[name]
    kinds = tuple(Kind(f"k{at}", *row) for at, row in enumerate(rows))
    found = same_layout(SheetsTask(*SMALL_QUARTER, kinds))
    assert (found.sets, found.proven) == (sets, True)
    assert layout_faults(found) == []


def test_a_set_with_a_piece_too_large_fits_not_even_once() -> None:
    found = same_layout(SheetsTask(80, 80, (Kind("p", 81, 10, 1),)))
    assert (found.sets, found.most, found.sheet) == (0, 0, None)


def test_the_whole_cloth_in_sets() -> None:
    """A quarter of 20 x 18 in sets of one 10 x 6 and one 10 x 3: 20 x 18 / (60 + 30) = 4."""
    found = same_layout(SheetsTask(20, 18, (Kind("a", 10, 6, 1), Kind("b", 10, 3, 1))))
    assert (found.sets, found.most) == (4, 4)
    assert layout_faults(found) == []


@settings(max_examples=25)
@given(
    st.lists(
        st.tuples(st.integers(10, 80), st.integers(10, 80), st.integers(1, 4)),
        min_size=1,
        max_size=3,
    )
)
def test_so_many_sets_are_one_piece_of_cloth_and_one_more_is_not(
    rows: list[tuple[int, int, int]],
) -> None:
    kinds = tuple(Kind(f"k{at}", *row) for at, row in enumerate(rows))
    found = same_layout(SheetsTask(*SMALL_QUARTER, kinds))
    assert found.sets <= found.most
    if found.sets:
        assert layout_faults(found) == []
    more = tuple(kind._replace(number=kind.number * (found.most + 1)) for kind in kinds)
    assert solve_sheets(SheetsTask(*SMALL_QUARTER, more)).number > 1
