"""What holds of every plan, on small tasks of chance."""

from dataclasses import replace
from itertools import pairwise
from typing import Any, get_args

from hypothesis import given, settings
from hypothesis import strategies as st

from patternbook.cutting.planner.records import Kind, Limits, Manner, Task
from patternbook.cutting.planner.solve import solve
from tests.benchmarks.cut_checker import faults
from tests.cutting.planner.small import shortest

LENGTH = Limits(goal="length")
# Each allows all that the one before it does.
MANNERS: tuple[Manner, ...] = get_args(Manner)


@st.composite
def tasks(draw: Any, most: int = 12, manners: tuple[Manner, ...] = MANNERS[:3]) -> Task:
    """Up to three kinds on a cloth 12 to 30 wide."""
    width = draw(st.integers(12, 30))
    sides = st.integers(2, 12)
    kinds = tuple(
        Kind(name, draw(sides), draw(sides), draw(st.integers(1, most)), draw(st.booleans()))
        for name in "ABC"[: draw(st.integers(1, 3))]
    )
    return Task(width, kinds, draw(st.sampled_from(manners)), draw(st.sampled_from((1, 5, 9))))


@given(tasks(most=4))
@settings(max_examples=40)
def test_a_plan_is_as_short_as_trying_everything_finds(task: Task) -> None:
    answer = solve(task, LENGTH)
    assert answer.length == answer.bound == shortest(task)


@given(tasks(most=30, manners=MANNERS), st.sampled_from(("purchase", "length")))
@settings(max_examples=40)
def test_every_piece_is_cut_and_every_price_holds(task: Task, goal: Any) -> None:
    answer = solve(task, Limits(goal=goal))
    assert faults(answer) == []
    assert answer.by_prices <= answer.bound <= answer.length


@given(tasks(most=30))
@settings(max_examples=15)
def test_a_thriftier_manner_takes_no_more(task: Task) -> None:
    answers = [solve(replace(task, manner=manner), LENGTH) for manner in MANNERS]
    for easier, thriftier in pairwise(answers):
        assert thriftier.bound <= easier.length
        assert thriftier.length <= easier.length


@given(tasks(most=30))
@settings(max_examples=20)
def test_the_order_of_the_kinds_is_nothing(task: Task) -> None:
    other = solve(replace(task, kinds=task.kinds[::-1]))
    answer = solve(task)
    assert answer.strips == other.strips
    assert answer.prices == other.prices
    assert answer.work == other.work


@given(tasks(most=20))
@settings(max_examples=20)
def test_twice_as_much_is_at_most_twice_the_cloth(task: Task) -> None:
    once = solve(task, LENGTH)
    double = tuple(kind._replace(number=2 * kind.number) for kind in task.kinds)
    twice = solve(replace(task, kinds=double), LENGTH)
    assert twice.bound <= 2 * once.length
    if twice.length == twice.bound:
        assert twice.length <= 2 * once.length


@given(tasks(most=20), st.integers(1, 12), st.integers(1, 4))
@settings(max_examples=20)
def test_lengthwise_pieces_come_first(task: Task, across: int, number: int) -> None:
    """A block takes no less than its longest piece, and no less than the strips alone do."""
    borders = (Kind("long", 40, across, number, turns=False),)
    answer = solve(replace(task, lengthwise=borders))
    assert faults(answer) == []
    assert answer.length >= max(40, solve(task, LENGTH).bound)
