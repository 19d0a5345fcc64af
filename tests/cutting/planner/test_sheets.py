"""The fewest pre-cuts: against published counts, counted again by hand, and, where all is small,
against every plan there is."""

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternbook.cutting.planner.records import Kind, Limits, SheetsTask
from patternbook.cutting.planner.sheets import solve_sheets
from tests.benchmarks.cut_packs import own_sheets, pack_lists, sheet_faults

# Squares from an 18 x 22 in fat quarter, cut size in eighths of an inch: how many. All fifteen
# rows of the chart "Squares from a fat quarter", quilterscache.com, MathChartsPage (2002).
SQUARES = {
    16: 99, 20: 56, 23: 42, 24: 42, 28: 30, 31: 20, 32: 20, 36: 16,
    39: 12, 40: 12, 44: 12, 47: 9, 48: 9, 52: 6, 55: 6,
}  # fmt: skip
QUARTER = (18 * 8, 22 * 8)
# Of the thirteen pack lists the number needed: first found by a trial of the same method, where
# the pieces were not stacked; all are proven here.
NEEDED = {
    "fq1x1": 12, "fq2x1": 9, "fq3x1": 13, "fq4x1": 12, "fq6x1": 9, "ten1x1": 34, "ten2x1": 26,
    "ten3x1": 21, "ten4x1": 25, "st1x1": 23, "st2x1": 33, "st3x1": 26,
}  # fmt: skip


@pytest.mark.parametrize(("side", "number"), SQUARES.items())
def test_squares_from_a_fat_quarter_as_published(side: int, number: int) -> None:
    one = solve_sheets(SheetsTask(*QUARTER, (Kind("square", side, side, number),)))
    more = solve_sheets(SheetsTask(*QUARTER, (Kind("square", side, side, number + 1),)))
    assert (one.number, one.bound) == (1, 1)
    assert (more.number, more.bound) == (2, 2)


def test_half_width_strips_from_fat_quarters_as_published() -> None:
    """Seven half-width 2½ strips to a fat quarter: 80 ÷ 7 = 11.4, so 12. quiltingboard.com,
    main-f1/fat-quarter-conversion-t222332."""
    strip = Kind("half strip", 22 * 8, 20, 80)
    answer = solve_sheets(SheetsTask(22 * 8, 18 * 8, (strip,)))
    assert (answer.number, answer.proven) == (12, True)


def test_what_is_left_of_one_kind_takes_the_other() -> None:
    """Of a 10 in square four 5 in squares, or eight 2½ x 5: 90 ÷ 4 = 22½ and 90 ÷ 8 = 11¼, in
    all 33¾: half a square of the one and a quarter of the other are cut from one."""
    asked = (Kind("five", 40, 40, 90), Kind("half", 20, 40, 90))
    answer = solve_sheets(SheetsTask(80, 80, asked))
    assert (answer.number, answer.bound) == (34, 34)
    assert sheet_faults(answer) == []


def test_like_pieces_are_stacked() -> None:
    """A 4½ in strip of 9 in holds two 4½, or four 2¼ x 4½ one over the other in twos: with one
    4½ there is room for two of the small ones, 4½ + 4½ = 9."""
    asked = (Kind("large", 36, 36, 1, turns=False), Kind("small", 36, 18, 2, turns=False))
    answer = solve_sheets(SheetsTask(72, 36, asked))
    assert answer.number == 1
    (sheet,) = answer.sheets
    (strip,) = sheet.strips
    assert {(one.kind, one.stack, one.columns) for one in strip.columns} == {
        ("large", 1, 1), ("small", 2, 1),
    }  # fmt: skip


@pytest.mark.parametrize(("turns", "number"), [(False, 4), (True, 2)])
def test_one_way_cloth_is_not_turned(turns: bool, number: int) -> None:
    """10 x 6 in pieces from 18 x 22: as they lie one across the 18 and three down the 22, which is
    3 a quarter; turned three across and two down, 6 a quarter. 12 ÷ 3 = 4, 12 ÷ 6 = 2."""
    kind = Kind("p", 80, 48, 12, turns=turns)
    answer = solve_sheets(SheetsTask(*QUARTER, (kind,)))
    assert (answer.number, answer.proven) == (number, True)


def test_cloth_turned_keeps_one_way_pieces_upright() -> None:
    """A piece 5 wide and 9 long from 10 x 9: two side by side, whichever way the strips run."""
    answer = solve_sheets(SheetsTask(10, 9, (Kind("p", 5, 9, 2, turns=False),)))
    assert answer.number == 1
    assert sheet_faults(answer) == []


def test_strips_of_their_own_width_lie_across_the_cloth() -> None:
    """Three strips of 2 fit in a depth of 7; the square of 3 no longer does: 3 x 2 + 3 > 7."""
    strip = Kind("strip", 20, 2, 3, turns=False, own_width=True)
    alone = solve_sheets(SheetsTask(20, 7, (strip,)))
    both = solve_sheets(SheetsTask(20, 7, (strip, Kind("square", 3, 3, 1))))
    assert (alone.number, both.number, both.proven) == (1, 2, True)
    assert not any(sheet.turned for sheet in alone.sheets)


def test_strips_of_a_roll_are_sub_cut_and_nothing_else() -> None:
    """Eight 2½ x 5 pieces from a strip of 40: 8 x 5 = 40. 17 take three strips."""
    answer = solve_sheets(SheetsTask(320, 20, (Kind("p", 40, 20, 17, turns=False),)))
    assert answer.number == 3
    assert all(len(sheet.strips) == 1 and not sheet.turned for sheet in answer.sheets)


def test_sheets_cut_alike_are_told_together() -> None:
    """99 squares of 2 in to a quarter: 297 are three quarters alike, 300 one more with three."""
    even = solve_sheets(SheetsTask(*QUARTER, (Kind("square", 16, 16, 297),)))
    more = solve_sheets(SheetsTask(*QUARTER, (Kind("square", 16, 16, 300),)))
    assert [sheet.times for sheet in even.sheets] == [3]
    assert [sheet.times for sheet in more.sheets] == [3, 1]
    assert [sum(strip.times for strip in sheet.strips) for sheet in more.sheets][1] == 1


def test_nothing_asked_for_takes_nothing() -> None:
    answer = solve_sheets(SheetsTask(80, 80, (Kind("none", 5, 5, 0),)))
    assert (answer.number, answer.bound, answer.sheets) == (0, 0, ())


@pytest.mark.parametrize(("name", "number"), NEEDED.items())
def test_pack_lists_are_proven(name: str, number: int) -> None:
    task = pack_lists()[name]
    answer = solve_sheets(task)
    assert sheet_faults(answer) == []
    assert (answer.number, answer.bound) == (number, number)
    assert answer.number <= own_sheets(task)


def test_little_work_gives_a_plan_all_the_same() -> None:
    task = pack_lists()["fq5x2"]
    answer = solve_sheets(task, Limits(nodes=1, dives=0, patterns=1, rounds=1, easing=0))
    assert sheet_faults(answer) == []
    assert answer.bound <= answer.number <= own_sheets(task)
    assert answer.limit_hit == (not answer.proven)


# ---- tiny cases, against every plan there is

SIDES = st.integers(1, 5)
KINDS = st.builds(
    lambda along, across, number, turns: Kind("", along, across, number, turns),
    SIDES, SIDES, st.integers(1, 3), st.booleans(),
)  # fmt: skip
TASKS = st.lists(KINDS, min_size=1, max_size=3).map(
    lambda kinds: SheetsTask(
        6, 5, tuple(kind._replace(name=f"k{at}") for at, kind in enumerate(kinds))
    )
)


def strips_by_hand(task: SheetsTask, turned: bool, height: int) -> set[tuple[int, ...]]:
    """Every count that one strip of that height can give."""
    long = task.down if turned else task.across
    cuts = set()
    for place, kind in enumerate(task.kinds):
        lying = (kind.across, kind.along) if turned else (kind.along, kind.across)
        for along, across in {lying, lying[::-1] if kind.turns else lying}:
            if across <= height:
                cuts.add((along, place, height // across))
    found = {((0,) * len(task.kinds), long)}
    waiting = set(found)
    while waiting:
        counts, left = waiting.pop()
        for along, place, stack in cuts:
            if along <= left:
                more = list(counts)
                more[place] = min(task.kinds[place].number, more[place] + stack)
                state = (tuple(more), left - along)
                if state not in found:
                    found.add(state)
                    waiting.add(state)
    return {counts for counts, _ in found}


def sheets_by_hand(task: SheetsTask) -> set[tuple[int, ...]]:
    """Every count that one piece of cloth can give."""
    asked = [kind.number for kind in task.kinds]
    every = set()
    for turned in (False, True):
        deep = task.across if turned else task.down
        sides = {side for kind in task.kinds for side in kind[1:3] if side <= deep}
        strips = {height: strips_by_hand(task, turned, height) for height in sides}
        found = {((0,) * len(asked), deep)}
        waiting = set(found)
        while waiting:
            counts, left = waiting.pop()
            for height in sides:
                for strip in strips[height] if height <= left else ():
                    more = tuple(map(min, map(sum, zip(counts, strip, strict=True)), asked))
                    if (more, left - height) not in found:
                        found.add((more, left - height))
                        waiting.add((more, left - height))
        every |= {counts for counts, _ in found}
    return every


def fewest_by_hand(task: SheetsTask) -> int:
    sheets = sheets_by_hand(task)

    @cache
    def fewest(left: tuple[int, ...]) -> int:
        if not any(left):
            return 0
        rests = {
            tuple(max(0, n - more) for n, more in zip(left, gives, strict=True)) for gives in sheets
        } - {left}
        return 1 + min(map(fewest, rests))

    return fewest(tuple(kind.number for kind in task.kinds))


@settings(max_examples=50)
@given(TASKS)
def test_no_plan_at_all_takes_fewer(task: SheetsTask) -> None:
    answer = solve_sheets(task)
    assert sheet_faults(answer) == []
    least = fewest_by_hand(task)
    assert answer.prices.bound <= answer.bound <= least <= answer.number
    if answer.proven:
        assert answer.number == least


# ---- laws

LISTS = st.lists(
    st.tuples(st.integers(8, 70), st.integers(8, 70), st.integers(1, 40)), min_size=1, max_size=4
)


def task_of(rows: list[tuple[int, int, int]], times: int = 1) -> SheetsTask:
    kinds = (Kind(f"k{at}", a, b, number * times) for at, (a, b, number) in enumerate(rows))
    return SheetsTask(80, 80, tuple(kinds))


@settings(max_examples=40)
@given(LISTS)
def test_every_plan_holds_and_the_kinds_order_is_of_no_account(
    rows: list[tuple[int, int, int]],
) -> None:
    task = task_of(rows)
    answer = solve_sheets(task)
    assert sheet_faults(answer) == []
    back = solve_sheets(task._replace(kinds=task.kinds[::-1]))
    assert (back.sheets, back.bound) == (answer.sheets, answer.bound)


@settings(max_examples=40)
@given(LISTS)
def test_twice_the_pieces_take_at_most_twice_the_cloth(rows: list[tuple[int, int, int]]) -> None:
    once, twice = solve_sheets(task_of(rows)), solve_sheets(task_of(rows, 2))
    assert twice.bound <= 2 * once.number
    assert once.bound <= twice.number


@pytest.mark.parametrize(("along", "across"), [(20, 20), (20, 36), (36, 20)])
def test_the_bound_is_the_area_s_where_nothing_is_left(along: int, across: int) -> None:
    """Cloth of 4 x 3 pieces: 24 of them are two, and not less."""
    answer = solve_sheets(SheetsTask(4 * along, 3 * across, (Kind("p", along, across, 24),)))
    assert (answer.number, answer.bound) == (2, 2)
