"""Each sign of the key has its own marks."""

import math

import pytest

from patternbook.strokes import signs
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Arrow, Line, Patch


@pytest.fixture
def pen() -> Pen:
    return Pen(4, 4, 1)


def test_a_seam_is_dashed_between_two_dots(pen: Pen) -> None:
    signs.seam(pen, (1, 1), (3, 1))
    line, *dots = pen.strokes
    assert line == Line(((1, 1), (3, 1)), "seam")
    assert [isinstance(dot, Patch) and dot.outline is None for dot in dots] == [True, True]


def test_a_bias_edge_waves_about_its_line_and_keeps_its_ends(pen: Pen) -> None:
    signs.bias_edge(pen, (1, 1), (3, 1))
    (wave,) = pen.strokes
    assert isinstance(wave, Line)
    assert wave.points[0] == pytest.approx((1, 1))
    assert wave.points[-1] == pytest.approx((3, 1))
    heights = [y - 1 for _, y in wave.points]
    assert max(heights) == pytest.approx(-min(heights), rel=0.2)
    assert max(heights) > pen.pt(1)


@pytest.mark.parametrize("side", [1, -1])
def test_a_selvage_is_ticked_on_one_side(side: int, pen: Pen) -> None:
    signs.selvage(pen, (1, 1), (3, 1), side)
    ends = [stroke.points[1][1] for stroke in pen.strokes[1:] if isinstance(stroke, Line)]
    assert len(ends) == 36  # one each 4 points over 144 points
    assert all((y < 1) == (side == 1) for y in ends)


def test_pressed_open_points_to_both_sides_of_the_seam(pen: Pen) -> None:
    signs.press_open(pen, (2, 2), (0, 1))
    (arrow,) = pen.strokes
    assert isinstance(arrow, Arrow)
    assert arrow.heads == "both"
    (x1, y1), (x2, y2) = arrow.points
    assert (y1, y2) == (2, 2)
    assert x1 + x2 == pytest.approx(4)
    assert abs(x1 - x2) == pytest.approx(pen.pt(18))


def test_a_broken_line_keeps_its_ends(pen: Pen) -> None:
    signs.broken(pen, (0, 0), (0, 4))
    (line,) = pen.strokes
    assert isinstance(line, Line)
    assert (line.points[0], line.points[-1]) == ((0, 0), (0, 4))
    assert len(line.points) == 6


def test_scissors_point_along_their_angle(pen: Pen) -> None:
    signs.scissors(pen, 2, 2, 90)
    blades = [stroke for stroke in pen.strokes if isinstance(stroke, Line)]
    tips = [blade.points[1] for blade in blades]
    assert all(y < 2 for _, y in tips)  # up the sheet, as y goes down
    assert sum(x for x, _ in tips) / 2 == pytest.approx(2)


def test_a_twirl_goes_three_quarters_round(pen: Pen) -> None:
    signs.twirl(pen, 2, 2, 0.5)
    (arrow,) = pen.strokes
    assert isinstance(arrow, Arrow)
    assert all(math.dist(point, (2, 2)) == pytest.approx(0.5) for point in arrow.points)
    assert arrow.points[-1] == pytest.approx((2, 1.5))


def test_a_ticked_box_has_a_tick(pen: Pen) -> None:
    signs.box(pen, 1, 1)
    signs.box(pen, 2, 1, ticked=True)
    assert [type(stroke) for stroke in pen.strokes] == [Patch, Patch, Line]
