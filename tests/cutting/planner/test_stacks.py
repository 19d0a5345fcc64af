"""Thrifty cutting: pieces of different kinds one above the other in a sub-cut."""

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternbook.cutting.planner.records import Answer, Column, Kind, Limits, Task
from patternbook.cutting.planner.solve import solve
from tests.benchmarks.cut_checker import faults
from tests.benchmarks.cut_lists import cut_lists
from tests.benchmarks.cut_runs import asked

SHORTEST = Limits(goal="length")


def planned(width: int, *kinds: Kind, manner: str = "thrifty", highest: int = 24) -> Answer:
    task = Task(width, kinds, "shared" if manner == "shared" else "thrifty", highest=highest)
    return solve(task, SHORTEST)


# A strip 40 long and 8 wide: C twice (2 x 10 = 20), beside it A with B above it twice: 20 long,
# 5 + 3 = 8. The area is (2 x 10 x 8 + 2 x 10 x 5 + 2 x 10 x 3) / 40 = 8.
A = Kind("A", 10, 5, 2, turns=False)
B = Kind("B", 10, 3, 2, turns=False)
C = Kind("C", 10, 8, 2, turns=False)


def test_one_kind_lies_above_another() -> None:
    answer = planned(40, A, B, C)
    assert faults(answer) == []
    assert (answer.length, answer.bound) == (8, 8)
    (strip,) = answer.strips
    base = next(one for one in strip.columns if one.above)
    assert {base.kind, base.above[0].kind} == {"A", "B"}
    assert (base.columns, base.pieces, base.above[0].pieces) == (2, 2, 2)


def test_shared_cutting_needs_a_strip_more_for_it() -> None:
    """C and A fill the strip of 8; B has one of its own: 8 + 3 = 11."""
    assert planned(40, A, B, C, manner="shared").length == 11


def test_the_longest_is_the_base_and_the_others_are_trimmed() -> None:
    """9 + 9 + 2 = 20: above two pieces 9 long lie two of 8, 4 + 3 = 7 high."""
    answer = planned(18, Kind("long", 9, 4, 2, False), Kind("less", 8, 3, 2, False))
    assert (answer.length, answer.bound) == (7, 7)
    if len(answer.strips) == 1:
        assert answer.strips[0].columns == (
            Column("long", 9, 4, 1, 2, 2, (Column("less", 8, 3, 1, 2, 2),)),
        )


def test_no_strip_is_wider_than_the_highest() -> None:
    """Of pieces together none is wider than 7; but a strip may be as wide as a piece, C's 8, and
    then hold anything."""
    answer = planned(40, A, B, C, highest=7)
    assert faults(answer) == []
    assert {strip.height for strip in answer.strips} <= {3, 5, 6, 8}
    assert answer.length == 8


def test_strips_of_their_own_width_are_not_stacked() -> None:
    """Two strips of 2 by 40 and pieces: 2 x 2 + 8."""
    strip = Kind("binding", 40, 2, 2, turns=False, own_width=True)
    answer = planned(40, A, B, C, strip)
    assert faults(answer) == []
    assert (answer.length, answer.bound) == (12, 12)
    own = [one for one in answer.strips if one.height == 2]
    assert [(one.times, one.columns[0].kind) for one in own] == [(2, "binding")]


def test_short_pieces_of_their_own_width_share_a_strip_but_not_a_sub_cut() -> None:
    """A strip 4 wide of 20: 12 for the piece of its own width, and 8 for a stack of 2 + 2."""
    own = Kind("own", 12, 4, 1, turns=False, own_width=True)
    answer = planned(20, own, Kind("p", 8, 2, 1, False), Kind("q", 7, 2, 1, False))
    assert faults(answer) == []
    assert (answer.length, answer.bound) == (4, 4)


def test_beside_lengthwise_pieces_too() -> None:
    """A border 5 wide and 8 long leaves 40 beside it, 8 long: all lies there."""
    task = Task(45, (A, B, C), "thrifty", lengthwise=(Kind("border", 8, 5, 1),), highest=24)
    answer = solve(task, SHORTEST)
    assert faults(answer) == []
    assert (answer.length, answer.bound) == (8, 8)
    assert all(strip.beside for strip in answer.strips)


@pytest.mark.parametrize(
    "name", ["f08plus-throw", "f12lofborder-throw", "f14direct-crib", "f23chain-throw"]
)
def test_never_more_than_shared_cutting(name: str) -> None:
    shared = solve(asked(cut_lists()[name], "shared"))
    thrifty = solve(asked(cut_lists()[name], "thrifty"))
    assert faults(thrifty) == []
    assert thrifty.bought <= shared.bought
    assert thrifty.proven


def test_little_work_gives_the_plan_of_shared_cutting() -> None:
    task = asked(cut_lists()["f20runner-king"], "thrifty")
    answer = solve(task, Limits(nodes=1, dives=0, patterns=1, rounds=30, easing=0))
    assert faults(answer) == []
    assert answer.limit_hit
    assert answer.bound <= answer.length


# ---- tiny cases, against every plan there is

KINDS = st.builds(
    lambda along, across, number, turns: Kind("", along, across, number, turns),
    st.integers(1, 5), st.integers(1, 4), st.integers(1, 3), st.booleans(),
)  # fmt: skip
TASKS = st.lists(KINDS, min_size=1, max_size=3).map(
    lambda kinds: Task(
        6,
        tuple(kind._replace(name=f"k{at}") for at, kind in enumerate(kinds)),
        "thrifty",
        highest=5,
    )
)
Counts = tuple[int, ...]


def grown(start: Counts, room: int, steps: set[tuple[int, Counts]], caps: Counts) -> set[Counts]:
    """Every count that steps (what each takes of the room, and gives) come to."""
    found, waiting = {(start, room)}, [(start, room)]
    while waiting:
        counts, left = waiting.pop()
        for takes, gives in steps:
            more = tuple(map(min, map(sum, zip(counts, gives, strict=True)), caps))
            state = (more, left - takes)
            if takes <= left and state not in found:
                found.add(state)
                waiting.append(state)
    return {counts for counts, _ in found}


def strips_by_hand(task: Task) -> set[tuple[int, Counts]]:
    """Every strip: how wide it is, and what it gives."""
    caps = tuple(kind.number for kind in task.kinds)
    none = (0,) * len(caps)
    lays = {
        (along, across, place)
        for place, kind in enumerate(task.kinds)
        for along, across in {kind[1:3], kind[1:3][:: -1 if kind.turns else 1]}
    }
    found = set()
    for height in range(1, 6):
        cuts = set()
        for base, _, _ in lays:
            ones = {
                (across, tuple(int(at == place) for at in range(len(caps))))
                for along, across, place in lays
                if along <= base
            }
            cuts |= {(base, gives) for gives in grown(none, height, ones, caps)}
        found |= {(height, gives) for gives in grown(none, task.width, cuts, caps)}
    return found


def least_by_hand(task: Task) -> int:
    strips = strips_by_hand(task)

    @cache
    def least(left: Counts) -> int:
        if not any(left):
            return 0
        rests = (
            (height, tuple(max(0, n - gives) for n, gives in zip(left, counts, strict=True)))
            for height, counts in strips
        )
        best: dict[Counts, int] = {}
        for height, rest in rests:
            if rest != left:
                best[rest] = min(height, best.get(rest, height))
        return min(height + least(rest) for rest, height in best.items())

    return least(tuple(kind.number for kind in task.kinds))


@settings(max_examples=40)
@given(TASKS)
def test_no_plan_at_all_is_shorter(task: Task) -> None:
    answer = solve(task, SHORTEST)
    assert faults(answer) == []
    least = least_by_hand(task)
    assert answer.by_prices <= answer.bound <= least <= answer.length
    if answer.bound == answer.length:
        assert answer.length == least


# ---- laws

LISTS = st.lists(
    st.tuples(st.integers(8, 60), st.integers(8, 60), st.integers(1, 30), st.booleans()),
    min_size=1,
    max_size=4,
)


@settings(max_examples=15)
@given(LISTS)
def test_every_plan_holds_and_the_kinds_order_is_of_no_account(
    rows: list[tuple[int, int, int, bool]],
) -> None:
    kinds = tuple(Kind(f"k{at}", *row) for at, row in enumerate(rows))
    limits = Limits(nodes=50, dives=2, patterns=200)
    answer = solve(Task(320, kinds, "thrifty", step=36, highest=192), limits)
    shared = solve(Task(320, kinds, "shared", step=36), limits)
    assert faults(answer) == []
    assert answer.bought <= shared.bought
    back = solve(Task(320, kinds[::-1], "thrifty", step=36, highest=192), limits)
    assert (back.strips, back.bound) == (answer.strips, answer.bound)
