"""Patches that are no upright rectangles: their corners, their seam allowances, their letters."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.diagrams.shape import (
    around,
    box,
    centre,
    clipped,
    grown,
    holds,
    reaching,
    room,
    turned,
)
from patternbook.methods.made import Turn
from patternbook.quilt.points import outlined
from tests.diagrams.by_hand import patch

TRIANGLE = ((0, 0), (4, 0), (0, 4))
GOOSE = ((2, 0), (4, 2), (0, 2))
TURNS = st.builds(Turn, st.integers(0, 3), st.booleans(), st.booleans())


def area(points: tuple[tuple[float, float], ...]) -> float:
    """Positive where the corners run clockwise as seen, y downward."""
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairwise((*points, points[0]))) / 2


def near(*points: tuple[float, float]) -> list[object]:
    return [pytest.approx(point) for point in points]


def test_a_seam_from_corner_to_corner_runs_on_into_the_corners() -> None:
    """Half-square triangle 4 in finished, 4½ raw."""
    raw = reaching(TRIANGLE, 4, 4, 0.25)
    assert list(raw) == near((-0.25, -0.25), (4.25, -0.25), (-0.25, 4.25))


def test_the_tip_of_a_goose_stays_a_quarter_inch_below_the_raw_edge() -> None:
    """Common practice, no source: the ¼ in above the tip is what the next seam takes up."""
    raw = reaching(GOOSE, 4, 2, 0.25)
    assert list(raw) == near((2, 0), (4.25, 2.25), (-0.25, 2.25))


def test_a_flat_seam_runs_on_straight() -> None:
    """Half-rectangle 2 × 4: the seam still goes through its seam corner, and both halves fill
    the raw rectangle."""
    upper = reaching(((0, 0), (2, 0), (0, 4)), 2, 4, 0.25)
    lower = reaching(((2, 0), (2, 4), (0, 4)), 2, 4, 0.25)
    assert area(upper) + area(lower) == pytest.approx(2.5 * 4.5)
    assert any(one == pytest.approx((-0.125, 4.25)) for one in upper)


def test_a_triangle_by_itself_is_cut_larger_all_round() -> None:
    """Half-square triangle cut as a triangle: the square is the finished side and ⅞ in (a rule
    of the trade, exactly ½ + √½ · ½ in: the sharp corners stick out)."""
    raw = grown(TRIANGLE, lambda *_: 0.25)
    assert around(raw)[2] == pytest.approx(4 + 0.25 * (2 + math.sqrt(2)))


def test_the_pie_and_its_ground_share_their_curve() -> None:
    pie = patch("A", (0, 0), (4, 0), (0, 4), arcs=[(1, (0, 0), 4, False)])
    ground = patch("B", (4, 0), (6, 0), (6, 6), (0, 6), (0, 4), arcs=[(4, (0, 0), 4, True)])
    assert pie.outline
    assert ground.outline
    one, other = outlined(pie.outline), outlined(ground.outline)
    assert all(math.hypot(x, y) == pytest.approx(4) for x, y in one[1:])
    assert area(one) == pytest.approx(math.pi * 4, rel=0.01)
    assert area(one) + area(other) == pytest.approx(36)


def test_what_lies_beyond_a_box_is_cut_off() -> None:
    assert area(clipped(TRIANGLE, 0, 0, 2, 2)) == pytest.approx(4)
    assert area(clipped(TRIANGLE, 0, 0, 3, 3)) == pytest.approx(7)
    assert clipped(TRIANGLE, 5, 5, 6, 6) == ()


@given(TURNS)
def test_a_turned_shape_is_as_large_and_runs_clockwise(turn: Turn) -> None:
    lies = turned(((0, 0), (2, 0), (0, 1)), 2, 1, turn)
    assert area(lies) == pytest.approx(1)
    left, top, *_ = around(turned(box(0, 0, 2, 1), 2, 1, turn))
    assert (left, top) == pytest.approx((0, 0))


@given(st.integers(0, 3))
def test_a_quarter_turn_is_clockwise(quarters: int) -> None:
    """The top left corner goes to the top right, and so round."""
    corners = ((0, 0), (2, 0), (2, 2), (0, 2))
    assert turned(corners, 2, 2, Turn(quarters))[0] == pytest.approx(corners[quarters])


@given(st.floats(0.1, 3), st.floats(0.1, 3))
def test_words_lie_wholly_in_their_shape(wide: float, high: float) -> None:
    """In a right triangle of 4 there is room for a box where width and length make 4 or less."""
    place = room(TRIANGLE, wide, high)
    if place is None:
        assert wide + high > 4 / 1.5
        return
    x, y = place
    assert x - wide / 2 > -1e-6
    assert y - high / 2 > -1e-6
    assert x + wide / 2 + y + high / 2 < 4 + 1e-6


def test_words_keep_clear_of_what_is_laid_on() -> None:
    ground, pear = box(0, 0, 9, 9), box(3, 3, 3, 3)
    assert room(ground, 1, 1) == pytest.approx((4.5, 4.5))
    place = room(ground, 1, 1, [pear])
    assert place is not None
    assert not holds(box(2.5, 2.5, 4, 4), place)
    assert room(ground, 1, 1, [ground]) is None


def test_the_centre_of_a_triangle() -> None:
    assert centre(TRIANGLE) == pytest.approx((4 / 3, 4 / 3))
