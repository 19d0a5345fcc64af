"""Straight and wavy lines: which lines, in which order."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon, box

from patternbook.quilting.designs import by_name
from patternbook.quilting.designs.lines import levels
from patternbook.quilting.records import Drawn
from tests.quilting.designs.spaces import grid, space, widest_gap

STRAIGHT = by_name["straight lines"]


def drawn(shape: Polygon, spacing: float) -> Drawn:
    found = STRAIGHT.draw(space(shape), spacing, 1)
    assert found is not None
    return found


def test_ten_inches_at_two_take_four_lines() -> None:
    """10 ÷ 2 leaves 4 lines, at 2, 4, 6 and 8; they stop a quarter inch before the seams, and are
    sewn to and fro."""
    assert drawn(box(0, 0, 10, 10), 2) == Drawn(
        paths=(
            (
                (0.25, 2.0), (9.75, 2.0),
                (9.75, 4.0), (0.25, 4.0),
                (0.25, 6.0), (9.75, 6.0),
                (9.75, 8.0), (0.25, 8.0),
            ),
        ),
        spacing=2.0,
    )  # fmt: skip


def test_what_is_left_over_is_shared_by_both_sides() -> None:
    """11 in at 2: five lines take 8, and 1 1/2 are left on each side."""
    path = drawn(box(0, 0, 30, 11), 2).paths[0]
    assert sorted({y for _, y in path}) == [1.5, 3.5, 5.5, 7.5, 9.5]


def test_a_spacing_is_told_in_eighths() -> None:
    assert drawn(box(0, 0, 10, 10), 1.3).spacing == 1.25
    assert drawn(box(0, 0, 10, 10), 0.01).spacing == 0.25


def test_lines_keep_half_an_inch_from_the_finished_edge() -> None:
    room = space(box(0, 0, 10, 10), edge=box(0, 0, 40, 40))
    found = STRAIGHT.draw(room, 1.0, 1)
    assert found is not None
    assert np.min(found.paths[0]) == 0.5
    assert np.max(found.paths[0]) == 9.75


@given(st.floats(2, 120), st.integers(2, 32), st.floats(0, 0.5))
def test_no_side_is_left_wider_than_the_spacing(width: float, eighths: int, clear: float) -> None:
    spacing = eighths / 8
    at = levels(3.0, 3.0 + width, spacing, clear)
    assert np.diff(at) == pytest.approx(spacing)
    first, last = at[0] - 3.0, 3.0 + width - at[-1]
    assert first == pytest.approx(last)
    assert first <= max(spacing, clear + spacing / 2) + 1e-6


def test_over_a_busy_top_lines_are_sewn_from_the_middle_out() -> None:
    """20 in at 4 have lines at 4, 8, 12 and 16 down the top, from edge to edge: first from 12 to
    the right, then from 8 to the left; the second half begins where the first has ended."""
    found = STRAIGHT.draw(space(box(0, 0, 20, 30), "body", edge=box(0, 0, 20, 30)), 4, 1)
    assert found == Drawn(
        paths=(
            ((12.0, 0.0), (12.0, 30.0), (16.0, 30.0), (16.0, 0.0)),
            ((8.0, 0.0), (8.0, 30.0), (4.0, 30.0), (4.0, 0.0)),
        ),
        spacing=4.0,
        touches=True,
    )


def test_lines_over_a_busy_top_keep_off_its_long_seams() -> None:
    """Squares of 4 have seams at 4, 8, 12 and 16, where lines 2 apart would lie: they are moved
    by half of that."""
    top = box(0, 0, 20, 28)
    found = STRAIGHT.draw(space(top, "body", edge=top, corners=grid(5, 7, 4)), 2, 1)
    assert found is not None
    across = {x for path in found.paths for x, _ in path}
    assert min(abs(x - seam) for x in across for seam in (4, 8, 12, 16)) >= 0.5
    assert widest_gap(top, found.paths, 0.1) <= 2.0


def test_lines_cross_the_long_seams_of_bars() -> None:
    """Bars that lie across the top are held by lines down the top, and the other way round."""
    lying = space(box(0, 0, 40, 40), "body", corners=grid(1, 16, 2.5)[:34])
    lying = lying._replace(corners=tuple((x * 16, y) for x, y in lying.corners))
    upright = lying._replace(corners=tuple((y, x) for x, y in lying.corners))
    for room, along in ((lying, 1), (upright, 0)):
        found = STRAIGHT.draw(room, 2, 1)
        assert found is not None
        first, second = found.paths[0][:2]
        assert abs(first[along] - second[along]) == pytest.approx(40)


def test_a_wave_bends_no_tighter_than_a_walking_foot_goes() -> None:
    """Three inches is the least radius (common practice, no source)."""
    found = by_name["wavy lines"].draw(space(box(0, 0, 40, 12)), 1.5, 1)
    assert found is not None
    line = np.array(found.paths[0])
    wave = line[(line[:, 0] > 5) & (line[:, 0] < 35)][:30]
    one, two, three = wave[:-2], wave[1:-1], wave[2:]
    sides = [np.hypot(*(a - b).T) for a, b in ((one, two), (two, three), (one, three))]
    turn = (two - one)[:, 0] * (three - two)[:, 1] - (two - one)[:, 1] * (three - two)[:, 0]
    radius = sides[0] * sides[1] * sides[2] / np.maximum(2 * np.abs(turn), 1e-9)
    assert radius.min() >= 2.9


def test_another_seed_begins_the_wave_elsewhere() -> None:
    room = space(box(0, 0, 20, 12))
    one, other = (by_name["wavy lines"].draw(room, 1.5, seed) for seed in (1, 2))
    assert one != other


def test_lines_of_a_hole_are_all_reached() -> None:
    """Both sides of the hole, above it and below it: one path."""
    shape = Polygon(box(0, 0, 20, 20).exterior, [box(6, 6, 14, 14).exterior])
    found = drawn(shape, 2)
    assert len(found.paths) == 1
    line = shapely.LineString(found.paths[0])
    for x, y in ((3, 10), (17, 10), (10, 3), (10, 17)):
        assert line.distance(shapely.Point(x, y)) <= math.sqrt(2)
