"""What single designs look like, told by numbers."""

import math

import numpy as np
import pytest
import shapely
from shapely import LineString, Point, Polygon, box

from patternbook.quilting.designs import by_name
from patternbook.quilting.designs.grid import slants
from patternbook.quilting.designs.packed import packed
from patternbook.quilting.designs.pebbles import all_round
from patternbook.quilting.records import Drawn, Path
from tests.quilting.designs.spaces import grid, length, once, space


def one(design: str, shape: Polygon, spacing: float, seed: int = 1) -> Path:
    found = by_name[design].draw(space(shape), spacing, seed)
    assert found is not None
    (path,) = found.paths
    return path


def test_frames_of_a_square_step_in_at_a_corner_and_come_back() -> None:
    """8 1/2 in at 1 1/2: two thirds of what is left over go to the seam. 4 1/4 − 2 × 1 1/2 =
    1 1/4, of which 0.735 lie outside of the first frame and 0.515 within the last."""
    found = by_name["frames going inward"].draw(space(box(0, 0, 8.5, 8.5)), 1.5, 1)
    assert found is not None
    (path,) = found.paths
    first = 1.25 / 1.7
    corners = [first + n * 1.5 for n in range(3)]
    assert found.closed
    assert path[0] == path[-1] == pytest.approx((corners[0], corners[0]))
    assert sorted({round(x, 6) for x, _ in path if x < 4.25}) == pytest.approx(corners)
    around = sum(4 * (8.5 - 2 * c) for c in corners)
    assert once([path]) == pytest.approx(around + 2 * math.hypot(1.5, 1.5))
    assert length([path]) == pytest.approx(around + 4 * math.hypot(1.5, 1.5))


def test_frames_of_a_shape_with_two_ends_go_into_both() -> None:
    shape = Polygon([(0, 0), (11, 0), (11, 5), (17, 5), (17, 13), (6, 13), (6, 8), (0, 8)])
    line = LineString(one("frames going inward", shape, 1))
    assert line.distance(Point(4, 4)) < 1
    assert line.distance(Point(12, 9)) < 1


def test_cross_hatch_fits_whole_diamonds_into_a_rectangle() -> None:
    """12 × 9 with diamonds of 3 × 3: each line goes on where another ends. 4 and 3 have no common
    part, so all of it is one round trip, and nothing is sewn in the seam."""
    path = one("cross-hatch", box(0, 0, 12, 9), 3 / math.sqrt(2))
    whole = 2 * 12 * 9 / 3 * math.sqrt(2)  # two lines of 3√2 in each of the 4 × 3 diamonds
    assert length([path]) == pytest.approx(whole)
    assert once([path]) == pytest.approx(whole)


def test_cross_hatch_of_a_square_on_its_point_runs_level_and_upright() -> None:
    path = one("cross-hatch", Polygon([(8, 0), (16, 8), (8, 16), (0, 8)]), 2)
    sides = np.abs(np.diff(np.array(path), axis=0))
    straight = sides.min(axis=1) < 1e-6
    assert np.hypot(*sides[straight].T).sum() > 0.9 * length([path])


def test_slanted_lines_run_through_the_corners_of_squares() -> None:
    """Squares of 3 have corners on lines 3 ÷ √2 = 2.12 in apart."""
    top = box(0, 0, 30, 42)
    room = space(top, "body", edge=top, corners=grid(10, 14, 3))
    both, single = by_name["diagonal lines"], by_name["slanted lines"]
    found = both.draw(room, 2, 1)
    assert found is not None
    assert len(found.paths) == 2
    assert found.spacing == 2.125
    lines = shapely.MultiLineString(found.paths)
    inner = [spot for spot in room.corners if top.buffer(-0.1).covers(Point(spot))]
    assert max(lines.distance(Point(spot)) for spot in inner) < 1e-6
    half = single.draw(room, 2, 1)
    assert half is not None
    assert length(half.paths) < 0.6 * length(found.paths)


@pytest.mark.parametrize(("wanted", "told"), [(2, 2.125), (4, 4.25), (6, 6.375), (1, 1.0)])
def test_slanted_lines_are_thinned_or_doubled_to_suit(wanted: float, told: float) -> None:
    """Every line through corners, every second, every third; or one between each two (1.06)."""
    top = box(0, 0, 30, 42)
    room = space(top, "body", edge=top, corners=grid(10, 14, 3))
    found = by_name["diagonal lines"].draw(room, wanted, 1)
    assert found is not None
    assert found.spacing == told


def test_no_slanted_lines_where_they_would_lie_in_seams_or_meet_no_corners() -> None:
    """Squares on their points have slanted seams; bars have no squares."""
    top = box(0, 0, 24, 24)
    standing = [(float(x), float(y)) for x in range(0, 25, 3) for y in range(0, 25, 3)]
    on_point = tuple(spot for spot in standing if (spot[0] + spot[1]) % 6 == 0)
    bars = tuple((x, y) for x in (0.0, 24.0) for y in range(0, 25, 2))
    for corners in (on_point, bars, ()):
        room = space(top, "body", edge=top, corners=corners)
        assert slants(room) == ()
        assert not by_name["diagonal lines"].suits(room)
        assert by_name["diagonal lines"].draw(room, 2, 1) is None


def test_a_meander_never_meets_itself() -> None:
    for seed in range(5):
        line = LineString(one("meander", box(0, 0, 15, 11), 1, seed))
        assert line.is_simple
        assert line.is_ring


@pytest.mark.parametrize("design", ["meander", "echoed swirls", "wavy lines"])
def test_soft_lines_have_no_cusps(design: str) -> None:
    """No two steps of the line turn by more than 60 degrees, away from where rows are joined."""
    shape = box(0, 0, 15, 11)
    spots = np.array(one(design, shape, 1))
    steps = np.diff(spots, axis=0)
    turns = np.abs(np.diff(np.unwrap(np.arctan2(steps[:, 1], steps[:, 0]))))
    sharp = spots[1:-1][turns > math.radians(60)]
    rim = shape.buffer(-0.26).boundary
    assert all(rim.distance(Point(spot)) < 0.1 for spot in sharp)
    assert design == "wavy lines" or len(sharp) == 0


def test_pebbles_touch_and_are_each_sewn_once() -> None:
    """The way round all of them is as long as all their rims together."""
    free = box(0, 0, 8, 8)
    pebbles = packed(free, 1.0, np.random.default_rng(3))
    for pebble in pebbles[1:]:
        other = pebbles[pebble.beside]
        apart = math.dist(pebble.middle, other.middle)
        assert apart == pytest.approx(pebble.radius + other.radius)
    rims = sum(math.tau * pebble.radius for pebble in pebbles)
    way = LineString(all_round(pebbles, free))
    assert way.length == pytest.approx(rims, rel=0.005)
    middles = [Point(p.middle).buffer(p.radius - 1e-6) for p in pebbles]
    assert sum(m.area for m in middles) == pytest.approx(shapely.union_all(middles).area)


def test_starbursts_leave_the_middle_of_each_star_open() -> None:
    """No spot is passed more than twice; a star sits on the corner of the channel."""
    centre = ((1.0, 14.0), (1.0, 1.0), (20.0, 1.0))
    shape = LineString(centre).buffer(1, cap_style="flat", join_style="mitre")
    found = by_name["starbursts"].draw(space(shape, "channel", centre=centre), 1, 1)
    assert found is not None
    spots, counts = np.unique(np.round(found.paths[0][:-1], 4), axis=0, return_counts=True)
    assert counts.max() <= 2
    corner = np.hypot(*(spots - np.array([1.0, 1.0])).T)
    assert corner.min() == pytest.approx(0.42 * 0.75, abs=1e-3)


def test_lines_of_a_bent_channel_turn_with_it() -> None:
    centre = ((1.5, 0.0), (1.5, 10.0), (14.0, 10.0))
    shape = LineString(centre).buffer(1.5, cap_style="flat", join_style="mitre")
    found = by_name["border lines"].draw(space(shape, "channel", centre=centre), 1, 1)
    assert found is not None
    assert [tuple(spot) for spot in np.round(found.paths[0], 3) if spot[1] > 5 > spot[0]]
    lines = LineString(found.paths[0])
    assert all(lines.distance(Point(spot)) < 1e-6 for spot in ((1, 5), (2, 5), (8, 9.5), (8, 10.5)))


def test_a_border_that_runs_round_is_sewn_round_and_round() -> None:
    shape = Polygon(box(0, 0, 30, 24).exterior, [box(4, 4, 26, 20).exterior])
    room = space(shape, "border")
    assert by_name["border lines"].suits(room)
    assert by_name["starbursts"].suits(room)
    found = by_name["border lines"].draw(room, 1, 1)
    assert found is not None
    assert found.closed
    assert once(found.paths) == pytest.approx(
        sum(2 * (30 + 24 - 4 * by) for by in (1, 2, 3)) + 2 * math.sqrt(2)
    )


def test_only_strips_get_what_is_made_for_strips() -> None:
    """Not an L without a middle line, not a block round a figure."""
    el = Polygon([(0, 0), (18, 0), (18, 7), (7, 7), (7, 14), (0, 14)])
    block = Polygon(box(0, 0, 12, 12).exterior, [Point(6, 6).buffer(3).exterior])
    for shape in (el, block, box(0, 0, 9, 9)):
        assert not by_name["border lines"].suits(space(shape, "border"))
    assert by_name["border lines"].suits(space(box(0, 0, 40, 6), "border"))


def test_echoes_lie_a_quarter_a_half_and_one_inch_from_the_shape() -> None:
    pear = Point(10, 10).buffer(4, quad_segs=64)
    shape = Polygon(box(0, 0, 20, 20).exterior, [pear.exterior])
    found: Drawn | None = by_name["echoes"].draw(space(shape), 1, 1)
    assert found is not None
    line = shapely.difference(LineString(found.paths[0]), shapely.union_all([box(0, 10, 20, 20)]))
    upward = line.intersection(LineString([(10, 6), (10, 0)]))
    away = sorted(round(6 - float(y), 1) for _, y in shapely.get_coordinates(upward))
    assert away[:5] == [0.3, 0.5, 1.0, 2.0, 3.0]


def test_a_figure_that_is_laid_on_is_echoed_half_an_inch_within() -> None:
    leaf = Point(5, 5).buffer(3, quad_segs=64)
    found = by_name["echoes"].draw(space(leaf, "figure"), 1, 1)
    assert found is not None
    assert leaf.exterior.distance(LineString(found.paths[0])) == pytest.approx(0.5, abs=0.01)
