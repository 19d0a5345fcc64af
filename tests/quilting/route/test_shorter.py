"""Orders made shorter by turning stretches round and moving fills."""

import math

from hypothesis import given
from hypothesis import strategies as st

from patternbook.quilting.route.shorter import Apart, shorter


def apart(spots: list[tuple[float, float]]) -> Apart:
    near = [
        {n: math.dist(spot, other) for n, other in enumerate(spots) if n != number}
        for number, spot in enumerate(spots)
    ]
    return Apart(near, spots, 1.0)


def test_a_stretch_is_turned_round() -> None:
    along = apart([(float(n), 0.0) for n in range(8)])
    assert shorter([0, 1, 5, 4, 3, 2, 6, 7], along) == [0, 1, 2, 3, 4, 5, 6, 7]


def test_one_out_of_place_is_moved() -> None:
    along = apart([(float(n), 0.0) for n in range(8)])
    assert shorter([0, 6, 1, 2, 3, 4, 5, 7], along) == [0, 1, 2, 3, 4, 5, 6, 7]


SPOTS = st.lists(
    st.tuples(st.integers(0, 20).map(float), st.integers(0, 20).map(float)),
    min_size=2,
    max_size=25,
    unique=True,
)


@given(SPOTS)
def test_never_longer_and_nothing_lost(spots: list[tuple[float, float]]) -> None:
    known = apart(spots)
    given_order = list(range(len(spots)))
    found = shorter(given_order, known)
    assert sorted(found) == given_order
    assert found[0] == 0
    assert known.total(found) <= known.total(given_order) + 1e-9
    assert shorter(found, known) == found


def test_neighbours_unknown_are_guessed_from_their_middles() -> None:
    known = Apart([{1: 5.0}, {0: 5.0}, {}], [(0, 0), (3, 4), (6, 8)], 1.3)
    assert known(0, 1) == 5.0
    assert known(0, 2) == 13.0
    assert known.total([0, 1, 2]) == 5.0 + 6.5
