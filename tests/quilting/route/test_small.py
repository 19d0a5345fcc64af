"""Small tops with the answer by hand."""

from dataclasses import replace

import pytest
import shapely
from shapely import Polygon

from patternbook.quilting import before
from patternbook.quilting.records import AnchorLine, Filled, Leg, Stage, Top, Walk
from patternbook.quilting.route import fill_stages
from tests.quilting.route.walking import board, filled, ring, square, winding, wrong

LEFT = (0.5, 0.5, 5.5, 5.5)  # in the first square, half an inch free all round
RIGHT = (6.5, 0.5, 11.5, 5.5)


def told(stage: Stage) -> list[tuple[str, str]]:
    return [(leg.kind, leg.area) for walk in stage.walks for leg in walk.legs]


def test_two_squares_side_by_side() -> None:
    """Six lines each, so that a winding ends below where it began, half an inch from the edge of
    the quilt: from the edge in, 1/2; out again, along the edge to the next and in, 1/2 + 6 + 1/2
    (by the corner of the seam it is as far); and out to the edge, 1/2."""
    top = board(2, 1)
    fills = [
        filled(1, square(0, 0), winding(LEFT, 6)),
        filled(2, square(1, 0), winding(RIGHT, 6)),
    ]
    (stage,) = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, [stage])
    assert stage.needed == pytest.approx(2 * (6 * 5 + 5))
    assert stage.extra == pytest.approx(0.5 + (0.5 + 6 + 0.5) + 0.5)
    assert [key for _, key in told(stage) if key] == ["P 1", "P 2"]
    assert stage.walks[0].path[0] in ((0.5, 0.0), (0.0, 0.5))


def test_circles_meet_across_the_seam() -> None:
    """In the middle of the quilt, each half an inch from the seam between them: the needle goes
    straight over, half an inch to the seam and half an inch on."""
    top = board(6, 5)
    fills = [
        filled(1, square(2, 2), ring((15, 15), 2.5), foot="free motion"),
        filled(2, square(3, 2), ring((21, 15), 2.5), foot="free motion"),
    ]
    (stage,) = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, [stage])
    assert (stage.name, stage.foot) == ("free motion", "free motion")
    assert stage.extra == pytest.approx(1.0)
    steps = [leg.path for leg in stage.walks[0].legs if leg.kind == "step"]
    assert steps == [((17.5, 15.0), (18.0, 15.0)), ((18.0, 15.0), (18.5, 15.0))]
    assert [key for _, key in told(stage)] == ["P 1", "", "", "P 2"]


def test_no_step_over_a_corner_of_another_area() -> None:
    """Ends 0.7 in apart, but the straight line between them would cross two other squares."""
    top = board(2, 2)
    fills = [
        filled(1, square(0, 0), ((0.5, 3), (5.9, 5.5))),
        filled(2, square(1, 1), ((6.5, 6.1), (11.5, 9))),
    ]
    (stage,) = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, [stage])
    steps = [leg.path for leg in stage.walks[0].legs if leg.kind == "step"]
    assert ((5.9, 5.5), (6.5, 6.1)) not in steps


def test_a_walk_begins_anew_where_the_way_is_too_long() -> None:
    """Two squares at the ends of a top 30 feet long: 348 in of travel is more than a start."""
    edge = shapely.box(0, 0, 360, 6)
    top = replace(board(2, 1), edge=edge, inside=edge, seams=())
    fills = [
        filled(1, square(0, 0), winding(LEFT, 6)),
        filled(2, square(59, 0), winding((354.5, 0.5, 359.5, 5.5), 6)),
    ]
    (stage,) = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, [stage])
    assert len(stage.walks) == 2
    assert stage.extra == pytest.approx(4 * 0.5)


def four(size: float, lines: int) -> list[Filled]:
    """Four squares, each sewn in another way; one is a border."""
    low, high, far, end = 0.5, size - 0.5, size + 0.5, 2 * size - 0.5
    return [
        filled(9, square(1, 1, size), winding((far, far, end, end), lines), kind="border"),
        filled(1, square(0, 0, size), ring((size / 2, size / 2), size / 3), foot="free motion"),
        filled(2, square(1, 0, size), winding((far, low, end, high), lines), foot="ruler"),
        filled(3, square(0, 1, size), winding((low, far, high, end), lines)),
    ]


def test_the_stages_and_their_order() -> None:
    """Walking foot, ruler, free motion, and the border last of all with whatever foot."""
    top, fills = board(2, 2, 40), four(40, 16)
    stages = fill_stages(top, (), None, fills)
    assert [(stage.name, stage.foot) for stage in stages] == [
        ("lines", "walking foot"),
        ("lines", "ruler"),
        ("free motion", "free motion"),
        ("border", "walking foot"),
    ]
    assert not wrong(top, (), None, fills, stages)


def test_on_a_small_top_the_border_is_sewn_with_the_others_of_its_foot() -> None:
    """One bobbin is enough, and that makes three starts; four stages would be four."""
    top, fills = board(2, 2), four(6, 6)
    stages = fill_stages(top, (), None, fills)
    assert [(stage.name, stage.foot) for stage in stages] == [
        ("lines", "walking foot"),
        ("lines", "ruler"),
        ("free motion", "free motion"),
    ]
    assert not wrong(top, (), None, fills, stages)


def test_starts_are_dearer_where_there_are_too_many() -> None:
    """Five squares in a row, 95 in apart: more than a start is worth, but a bobbin is enough for
    all of them, and five starts are two too many."""
    edge = shapely.box(0, 0, 500, 6)
    top = replace(board(2, 1), edge=edge, inside=edge, seams=())
    fills = [
        filled(n, square(n * 17, 0), winding((n * 102 + 0.5, 0.5, n * 102 + 5.5, 5.5), 6))
        for n in range(5)
    ]
    (stage,) = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, [stage])
    assert len(stage.walks) == 1
    (stage,) = fill_stages(top, (), None, fills[:3])
    assert len(stage.walks) == 3


def outward() -> list[Leg]:
    """A body 20 x 10 in two paths from its middle, turning at the finished edge."""
    top = replace(board(1, 1), edge=shapely.box(0, 0, 20, 10), inside=shapely.box(0, 0, 20, 10))
    right = ((10, 0), (10, 10), (14, 10), (14, 0), (18, 0), (18, 10))
    left = ((6, 0), (6, 10), (2, 10), (2, 0))
    fill = filled(1, top.edge, right, kind="body", more=(left,), touches=True)
    stages = fill_stages(top, (), None, [fill])
    assert not wrong(top, (), None, [fill], stages)
    (stage,) = stages
    (walk,) = stage.walks
    return list(walk.legs)


def test_a_body_is_sewn_from_the_middle_out() -> None:
    """Down from (10, 0), and the turns lie on the edge. From the end of the first half, (18, 10),
    to where the second begins, (6, 0): 2 + 10 + 14 round the right hand side, or 12 + 10 by a line
    that is sewn and the edge is no shorter than that: by the edge only."""
    legs = outward()
    fills = [leg.path for leg in legs if leg.kind == "fill"]
    assert ((10, 0), (10, 10)) in fills or ((6, 0), (6, 10)) in fills
    turns = {leg.path for leg in legs if leg.kind == "edge" and leg.area}
    assert turns == {((10, 10), (14, 10)), ((14, 0), (18, 0)), ((6, 10), (2, 10))}
    travelled = [leg for leg in legs if not leg.area]
    assert travelled
    assert {leg.kind for leg in travelled} == {"edge"}


def test_edge_that_was_turned_on_is_told_as_stitched_again() -> None:
    travelled = [leg for leg in outward() if not leg.area]
    again = [leg.path for leg in travelled if leg.again]
    new = [leg.path for leg in travelled if not leg.again]
    assert new
    for path in again:
        spots = set(path)
        assert spots & {(10, 10), (14, 10), (14, 0), (18, 0), (6, 10), (2, 10)}


def test_edge_that_a_fill_turns_on_twice_is_told_as_again() -> None:
    """The second path turns where the first has turned."""
    top = replace(board(1, 1), edge=shapely.box(0, 0, 20, 10), inside=shapely.box(0, 0, 20, 10))
    first = ((4, 0), (4, 10), (8, 10), (8, 0))
    second = ((3, 0), (3, 10), (9, 10), (9, 0))
    fill = filled(1, top.edge, first, kind="body", more=(second,), touches=True)
    stages = fill_stages(top, (), None, [fill])
    assert not wrong(top, (), None, [fill], stages)
    edges = [leg for leg in stages[0].walks[0].legs if leg.kind == "edge" and leg.area]
    wide = shapely.LineString([(3, 10), (9, 10)])
    assert [(shapely.LineString(leg.path).equals(wide), leg.again) for leg in edges] in (
        [(False, False), (True, False)],
        [(True, False), (False, True)],
    )


def opened(top: Top) -> Top:
    return replace(top, seams=tuple(seam._replace(opened=True) for seam in top.seams))


def test_a_seam_pressed_open_is_travelled_only_where_nothing_else_leads() -> None:
    """Down the left hand side the way goes along the edge, though a seam is as near; the square in
    the middle can be reached by a seam only."""
    top = opened(board(3, 3))
    boxes = [(0.5, 0.5, 5, 5.5), (0.5, 6.5, 5, 11.5), (0.5, 12.5, 5, 17.5)]
    left = [filled(n, square(0, n - 1), winding(box, 6)) for n, box in enumerate(boxes, start=1)]
    (stage,) = fill_stages(top, (), None, left)
    assert not wrong(top, (), None, left, [stage])
    assert not travelled(stage, "ditch")
    middle = filled(5, square(1, 1), winding((6.5, 6.5, 11.5, 11.5), 6))
    (stage,) = fill_stages(top, (), None, [*left, middle])
    assert not wrong(top, (), None, [*left, middle], [stage])
    assert len(stage.walks) == 1
    assert travelled(stage, "ditch") > 6


def travelled(stage: Stage, kind: str) -> float:
    legs = (leg for walk in stage.walks for leg in walk.legs)
    return sum(shapely.LineString(leg.path).length for leg in legs if leg.kind == kind)


def test_a_step_on_earlier_steps_is_told_as_again() -> None:
    """Over the seam an inch; then half an inch of that to the seam, and as much on from it."""
    across = Leg("step", ((5.5, 3), (6, 3), (6.5, 3)))
    half = Leg("step", ((6.5, 3), (6, 3)))
    other = Leg("step", ((6, 3), (6, 3.5)))
    stage = Stage("lines", "walking foot", (Walk((across, half, other)),), 0.0, 2.0)
    (found,) = before.told([stage], 1.0)
    assert [leg.again for leg in found.walks[0].legs] == [False, True, False]


def laid_on() -> tuple[Polygon, Polygon]:
    """A square ground with a round hole, and what lies there."""
    figure = shapely.Point(5, 5).buffer(2.5)
    return Polygon(shapely.box(0, 0, 10, 10).exterior, [figure.exterior]), figure


def test_a_shape_on_a_ground_is_sewn_from_the_fill_around_it() -> None:
    """No seam leads to the ring of 2 in within the ring of 3: a step of an inch over, round, and
    back, and on with the outer one."""
    top = board(1, 1, 10)
    ground, figure = laid_on()
    fills = [
        filled(1, ground, ring((5, 5), 3), kind="ground"),
        filled(2, figure, ring((5, 5), 2), kind="figure"),
    ]
    (stage,) = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, [stage])
    assert len(stage.walks) == 1
    visit = [("step", ""), ("fill", "P 2"), ("step", "")]
    order = told(stage)
    at = order.index(("fill", "P 2"))
    assert order[at - 1 : at + 2] == visit
    over, back = stage.walks[0].legs[at - 1], stage.walks[0].legs[at + 1]
    assert over.path == back.path[::-1]
    assert (over.again, back.again) == (False, True)
    assert shapely.LineString(over.path).length == pytest.approx(1.0, abs=0.02)


def test_a_shape_sewn_with_another_foot_begins_a_walk_of_its_own() -> None:
    top = board(1, 1, 10)
    ground, figure = laid_on()
    fills = [
        filled(1, ground, ring((5, 5), 3), kind="ground"),
        filled(2, figure, ring((5, 5), 2), kind="figure", foot="free motion"),
    ]
    stages = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, stages)
    assert [stage.name for stage in stages] == ["lines", "free motion"]
    assert [leg.kind for leg in stages[1].walks[0].legs] == ["fill"]


def test_a_line_that_was_marked_and_stitched_may_be_travelled() -> None:
    """No seam at all: a marked line down the middle leads from one half to the other."""
    edge = shapely.box(0, 0, 40, 40)
    top = replace(board(1, 1), edge=edge, inside=edge, seams=())
    line = AnchorLine(((20.0, 0.0), (20.0, 40.0)), "marked")
    anchor = Stage("anchor", "walking foot", (Walk((Leg("marked", line.path),)),), 40.0, 0.0)
    fills = [
        filled(1, shapely.box(0, 0, 20, 40), winding((2, 4, 19.5, 12), 9)),
        filled(2, shapely.box(20, 0, 40, 40), winding((20.5, 28, 38, 36), 9)),
    ]
    (stage,) = fill_stages(top, [line], anchor, fills)
    assert not wrong(top, [line], anchor, fills, [stage])
    (marked,) = [leg for leg in stage.walks[0].legs if leg.kind == "marked"]
    assert marked.again
    assert shapely.LineString(marked.path).length == pytest.approx(16.0)


def test_nothing_to_fill() -> None:
    assert fill_stages(board(2, 2), (), None, []) == ()


def test_a_seam_met_by_no_fill_is_no_hindrance() -> None:
    """A top without seams, one fill: in from the edge and out again."""
    top = replace(board(1, 1), seams=())
    fill = filled(1, square(0, 0), winding(LEFT, 6))
    (stage,) = fill_stages(top, (), None, [fill])
    assert not wrong(top, (), None, [fill], [stage])
    assert stage.extra == pytest.approx(1.0)


def test_same_fills_same_stages() -> None:
    top = board(5, 5)
    fills = [
        filled(n, square(n % 5, n // 5), ring((n % 5 * 6 + 3, n // 5 * 6 + 3), 2.5))
        for n in range(0, 25, 2)
    ]
    assert fill_stages(top, (), None, fills) == fill_stages(top, (), None, list(fills))
