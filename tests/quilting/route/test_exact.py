"""The dynamic programme against trying every order."""

import math
from itertools import pairwise, permutations, product

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from patternbook.quilting.route.exact import Problem, cheapest


def worked_out(given: Problem, ways: list[int]) -> float:
    steps = sum(given.between[one, other] for one, other in pairwise(ways))
    return float(given.into[ways[0]] + steps + given.out[ways[-1]])


def tried(given: Problem) -> float:
    """Every order of the fills, and every way through each of them."""
    mine = [np.flatnonzero(given.owner == fill).tolist() for fill in range(given.fills)]
    return min(
        worked_out(given, list(ways))
        for order in permutations(range(given.fills))
        for ways in product(*(mine[fill] for fill in order))
    )


def test_three_fills_on_a_line() -> None:
    """Ends at 0-1, 2-3 and 4-5: sewn one after the other the gaps cost 1 each."""
    owner = [0, 0, 1, 1, 2, 2]
    enter = [0.0, 1.0, 2.0, 3.0, 4.0, 5.0]
    leave = [1.0, 0.0, 3.0, 2.0, 5.0, 4.0]
    between = np.array([[abs(a - b) for b in enter] for a in leave])
    found, cost = cheapest(Problem(np.array(owner), between, np.zeros(6), np.zeros(6)))
    assert cost == 2.0
    assert found in ([0, 2, 4], [5, 3, 1])


def test_where_to_begin_counts() -> None:
    """The same, but it costs 10 to begin at the left."""
    owner = np.array([0, 0, 1, 1])
    between = np.array([[abs(a - b) for b in (0, 1, 2, 3)] for a in (1, 0, 3, 2)], dtype=float)
    into = np.array([10.0, 10.0, 0.0, 0.0])
    found, cost = cheapest(Problem(owner, between, into, np.zeros(4)))
    assert (found, cost) == ([3, 1], 1.0)


@st.composite
def problems(draw: st.DrawFn) -> Problem:
    ways = draw(st.lists(st.integers(1, 3), min_size=1, max_size=5))
    owner = [fill for fill, many in enumerate(ways) for _ in range(many)]
    size = len(owner)
    # Whole numbers: sums come out the same in whatever order they are added up.
    numbers = st.integers(0, 50).map(float)
    table = draw(st.lists(numbers, min_size=size * (size + 2), max_size=size * (size + 2)))
    costs = np.array(table).reshape(size + 2, size)
    return Problem(np.array(owner), costs[:size], costs[size], costs[size + 1])


@given(problems())
def test_is_what_trying_everything_finds(given: Problem) -> None:
    found, cost = cheapest(given)
    assert cost == tried(given) == worked_out(given, found)
    assert sorted(given.owner[found]) == list(range(given.fills))


def test_fills_that_cannot_be_reached_are_still_ordered() -> None:
    owner = np.arange(3)
    between = np.full((3, 3), 90.0)
    found, cost = cheapest(Problem(owner, between, np.zeros(3), np.zeros(3)))
    assert sorted(found) == [0, 1, 2]
    assert math.isclose(cost, 180.0)


def test_nothing_to_sew() -> None:
    empty = np.zeros(0)
    given = Problem(np.zeros(0, dtype=np.intp), np.zeros((0, 0)), empty, empty)
    assert cheapest(given) == ([], 0.0)
