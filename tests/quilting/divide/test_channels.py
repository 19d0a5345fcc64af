"""Channels run on from the side seams of a strip, turn once and stop at something firm."""

import pytest
import shapely
from shapely import LineString, Point, Polygon

from patternbook.quilting.areas.channel import Channel
from patternbook.quilting.areas.channels import CLEAR, channels, wanted
from patternbook.quilting.areas.roots import Root, firm, roots
from patternbook.quilting.records import Path, Top
from patternbook.quilting.top import RULES
from tests.quilting.areas.laid import demo
from tests.quilting.divide.standing import box, divided, lines, lot, of_kind, on_ground, path, pile

# Five bars, 8 by 2, stand on a ground of 40 by 40: bar 3 lies from 19 to 21.
FIVE = pile("A", 6, 15, 5, 8)
OUT_OF_BAR_3 = Root((14.0, 20.0), (1.0, 0.0), 2.0, 8.0, 2, (0.0, 0.0))


def test_the_lines_of_a_channel_carry_on_the_two_seams_of_its_bar() -> None:
    down = Channel(OUT_OF_BAR_3, out=10.0, turn=1, far=20.0, echo=0.5)
    assert down.centre == path((14, 20), (24, 20), (24, 40))
    assert down.sides == (
        path((14, 21), (23, 21), (23, 40)),  # the near side turns at 9
        path((14, 19), (25, 19), (25, 40)),  # the far side turns at 11
    )
    assert down.echoes == (
        path((14, 21.5), (22.5, 21.5), (22.5, 40)),
        path((14, 18.5), (25.5, 18.5), (25.5, 40)),
    )
    # 3 wide with both echoes: 10 out and 20 down along the middle, less half of the corner
    # counted on each leg, and nothing more.
    assert down.shape.area == pytest.approx(3 * (10 + 20))


def test_a_strip_that_stands_by_itself_gets_its_echo_on_both_sides_of_it_as_well() -> None:
    # A sail, 2 by 4, on a hull: the echo runs beside the sail, 4 down to the hull.
    boat = [("B", box(14, 26, 2, 4)), ("H", box(10, 30, 10, 2))]
    top, (ground,) = on_ground(40, 40, boat)
    (root,) = (root for root in roots(ground, firm(ground, top), top) if root.cloth == 0)
    assert root == Root((15.0, 26.0), (0.0, -1.0), 2.0, 4.0, 0, (4.0, 4.0))
    up = Channel(root, out=10.0, turn=1, far=25.0, echo=0.5)
    assert up.shape.covers(box(13.5, 26, 0.5, 4))
    assert up.shape.intersection(box(14, 26, 2, 4)).area == 0


def test_a_channel_grows_out_of_a_bar_between_others_only() -> None:
    top, (ground,) = on_ground(40, 40, FIVE)
    found = roots(ground, firm(ground, top), top)
    # The upper and the lower bar have open ground beside them; no echo could start there.
    assert [(root.middle, root.way) for root in found] == [
        ((6, 18), (-1, 0)),
        ((14, 18), (1, 0)),
        ((6, 20), (-1, 0)),
        ((14, 20), (1, 0)),
        ((6, 22), (-1, 0)),
        ((14, 22), (1, 0)),
    ]


@pytest.mark.parametrize(
    ("inches", "number"), [(599, 0), (600, 1), (1199, 1), (1200, 2), (3600, 4), (9999, 6)]
)
def test_the_more_open_ground_the_more_channels(inches: float, number: int) -> None:
    assert wanted(inches, RULES["in"]) == number
    assert wanted(inches * 2.54**2, RULES["cm"]) == number


def test_a_small_ground_gets_no_channel() -> None:
    parts, _, _ = divided(on_ground(26, 26, FIVE))
    assert of_kind("channel", parts) == []


def test_none_is_drawn_where_none_has_room() -> None:
    # Two piles 6 apart, and 6 to the edges: a channel wants 2 + 1 + 2 × 2 = 7.
    top, grounds = on_ground(34, 40, [*pile("A", 6, 6, 14, 8), *pile("A", 20, 6, 14, 8)])
    assert channels(grounds, [], top, 3, lot(1)) == ()


def ends_on_something_firm(line: Path, top: Top) -> bool:
    seams = shapely.union_all([LineString(seam.path) for seam in top.seams])
    ends = Point(line[0]), Point(line[-1])
    firm_there = seams.union(top.edge.exterior)
    return seams.distance(ends[0]) < 1e-6 and firm_there.distance(ends[1]) < 1e-3


@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("size", ["crib", "throw", "twin", "queen"])
def test_the_channels_between_piles_of_books(size: str, seed: int) -> None:
    top = demo("late-returns")[size]
    grounds = ground_of(top)
    grown = channels(grounds, [], top, 6, lot(seed))
    assert grown
    free = shapely.union_all(grounds).buffer(1e-2)
    for one in grown:
        assert all(ends_on_something_firm(line, top) for line in one.sides)
        assert one.root.width == 2
        assert free.covers(one.wide(CLEAR))
        # The near side turns on a half inch.
        assert (one.out - one.half) * 2 == round((one.out - one.half) * 2)
        others = [other.shape for other in grown if other is not one]
        assert all(one.shape.distance(other) > CLEAR for other in others)


def ground_of(top: Top) -> list[Polygon]:
    whole = shapely.union_all([c.shape for c in top.cloths if c.fabric == "floor"], grid_size=1e-4)
    return [shapely.set_precision(one, 0) for one in shapely.get_parts(whole)]


def test_the_same_seed_draws_the_same_and_another_one_another() -> None:
    laid = on_ground(90, 90, [piece for x in (20, 50) for piece in pile("A", x, 20, 20, 8)])
    drawn = [lines("channel", divided(laid, seed)[1]) for seed in (4, 4, 5, 6)]
    assert drawn[0] == drawn[1]
    assert len({tuple(one) for one in drawn}) > 1
