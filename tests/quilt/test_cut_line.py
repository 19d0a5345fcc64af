"""The cut line lies one allowance outside the seam line, round corners and along curves."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import Exact
from patternbook.methods.made import Outline, Sides
from patternbook.quilt import template as shapes
from patternbook.quilt.cut_line import box, cut_line, seam_line

SEAM = 0.25
PIE = shapes.quarter_circle(Exact(4))
GROUND = shapes.quarter_hollow(Sides(Exact(6), Exact(6)), Exact(4))
HEXAGON = shapes.hexagon(Exact(Fraction(3, 2)))
ALL = (PIE, GROUND, HEXAGON, shapes.half_hexagon(Exact(2)))


def beside(point: tuple[float, float], line: tuple[tuple[float, float], ...]) -> float:
    """How far a point is from a closed line."""
    best = math.inf
    for (ax, ay), (bx, by) in pairwise((*line, line[0])):
        length = math.dist((ax, ay), (bx, by))
        if not length:
            continue
        dx, dy = (bx - ax) / length, (by - ay) / length
        along = min(max((point[0] - ax) * dx + (point[1] - ay) * dy, 0.0), length)
        best = min(best, math.dist(point, (ax + dx * along, ay + dy * along)))
    return best


def test_the_pie_is_cut_a_quarter_inch_further_out() -> None:
    """Kind 23: sewn at radius 4 it is cut at 4¼, and its straight sides ¼ outside its corner."""
    cut = cut_line(PIE, SEAM)
    left, top, right, low = box(cut)
    assert (left, top) == (-SEAM, -SEAM)
    round_ = [point for point in cut if min(point) > -SEAM + 1e-6]
    assert all(math.hypot(*point) == pytest.approx(4.25) for point in round_)
    assert max(right, low) <= 4.25 + 1e-9


def test_the_ground_is_cut_a_quarter_inch_into_the_curve() -> None:
    """Kind 23: radius 3¾, box 6½."""
    cut = cut_line(GROUND, SEAM)
    left, top, right, low = box(cut)
    assert (right - left, low - top) == pytest.approx((6.5, 6.5))
    curve = [point for point in cut if math.hypot(*point) < 4]
    assert all(math.hypot(*point) == pytest.approx(3.75) for point in curve)
    assert len(curve) > 20


def test_a_hexagon_grows_evenly() -> None:
    left, top, right, low = box(cut_line(HEXAGON, SEAM))
    assert right - left == pytest.approx(1.5 * math.sqrt(3) + 0.5)
    assert low - top == pytest.approx(3 + 0.5 / math.cos(math.pi / 6))


@pytest.mark.parametrize("outline", ALL)
def test_every_point_of_it_is_one_allowance_from_the_seam_line_or_at_a_corner(
    outline: Outline,
) -> None:
    sewn = seam_line(outline)
    off = [beside(point, sewn) for point in cut_line(outline, SEAM)]
    assert min(off) >= SEAM - 0.002
    assert max(off) <= 2 * SEAM + 0.002  # a tip is cut off at twice the allowance


@given(st.integers(1, 40), st.integers(1, 40), st.integers(0, 40))
def test_so_it_is_for_any_triangle(across: int, down: int, tip: int) -> None:
    corners = [(Fraction(0), Fraction(down)), (Fraction(tip), Fraction(0))]
    outline = shapes.polygon([*corners, (Fraction(across), Fraction(down))])
    sewn = seam_line(outline)
    off = [beside(point, sewn) for point in cut_line(outline, SEAM)]
    assert min(off) >= SEAM - 1e-6
    assert max(off) <= math.sqrt(5) * SEAM + 1e-6


def test_a_drawn_curve_lies_within_a_sixty_fourth_of_the_true_one() -> None:
    for (ax, ay), (bx, by) in pairwise(seam_line(PIE)[1:]):
        assert 4 - math.hypot((ax + bx) / 2, (ay + by) / 2) < 1 / 64
