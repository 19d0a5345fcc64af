"""Hatch lines stay in their patch and are as long as its area says."""

import math

import pytest

from patternbook.strokes.hatching import hatching
from patternbook.strokes.stroke import Hatch, Point

SQUARE: tuple[Point, ...] = ((0, 0), (4, 0), (4, 4), (0, 4))
TRIANGLE: tuple[Point, ...] = ((0, 0), (4, 0), (0, 4))
ELBOW: tuple[Point, ...] = ((0, 0), (4, 0), (4, 1), (1, 1), (1, 4), (0, 4))


@pytest.mark.parametrize(("shape", "area"), [(SQUARE, 16), (TRIANGLE, 8), (ELBOW, 7)])
@pytest.mark.parametrize("angle", [0, 30, 45, 90, 135])
def test_lines_times_their_gap_make_the_area(
    shape: tuple[Point, ...], area: float, angle: float
) -> None:
    lines = list(hatching(shape, Hatch((angle,), gap=1), 0.01))
    assert sum(math.dist(*line) for line in lines) * 0.01 == pytest.approx(area, rel=0.01)


def test_lines_lie_level_at_half_gaps_from_the_origin() -> None:
    lines = list(hatching(SQUARE, Hatch((0,), gap=2), 1))
    assert [(round(a[0], 9), a[1], round(b[0], 9), b[1]) for a, b in lines] == [
        (0, 1, 4, 1),
        (0, 3, 4, 3),
    ]


def test_a_rising_hatch_rises_to_the_right_as_seen() -> None:
    for (x1, y1), (x2, y2) in hatching(SQUARE, Hatch((45,), gap=0.7), 1):
        assert x2 > x1
        assert y2 < y1  # y goes down


def test_neighbours_share_their_lines() -> None:
    left = [(0.0, 0.0), (2.0, 0.0), (2.0, 4.0), (0.0, 4.0)]
    right = [(x + 2, y) for x, y in left]
    halves = [line for half in (left, right) for line in hatching(half, Hatch((0,), gap=1), 1)]
    assert {a[1] for a, _ in halves} == {0.5, 1.5, 2.5, 3.5}
    assert len(halves) == 8


def test_a_patch_smaller_than_the_gap_may_have_none() -> None:
    assert list(hatching(((0, 0), (0.1, 0), (0.1, 0.1)), Hatch((0,), gap=4), 1)) == []
