"""Small tops whose walks can be worked out on paper."""

from dataclasses import replace

from patternbook.quilting.anchor import anchor_lines, anchor_stage
from patternbook.quilting.records import AnchorLine, Divided, Stage
from patternbook.quilting.top import RULES
from tests.quilting.anchor.walked import squares, wrong

NOTHING = Divided((), ())


def told(stage: Stage) -> list[str]:
    """The legs in words: how, and from corner to corner."""
    return [
        f"{leg.kind} {' '.join(f'{x:g},{y:g}' for x, y in (leg.path[0], leg.path[-1]))}"
        for walk in stage.walks
        for leg in walk.legs
    ]


def test_three_by_three_squares_of_6_inches_are_sewn_row_by_row_then_column_by_column() -> None:
    # Two rows and two columns of 18 in. Between the rows 6 in along the edge, round the corner
    # 6 + 6 in, between the columns 6 in.
    top = squares(3, 3)
    stage = anchor_stage(top, anchor_lines(top, NOTHING))
    assert told(stage) == [
        "ditch 0,6 18,6",
        "edge 18,6 18,12",
        "ditch 18,12 0,12",
        "edge 0,12 6,18",
        "ditch 6,18 6,0",
        "edge 6,0 12,0",
        "ditch 12,0 12,18",
    ]
    assert (stage.needed, stage.extra, stage.bound, stage.proven) == (72, 24, 24, True)


def test_rows_alone_are_one_serpentine() -> None:
    top = squares(1, 4)
    stage = anchor_stage(top, anchor_lines(top, NOTHING))
    assert told(stage) == [
        "ditch 0,6 6,6",
        "edge 6,6 6,12",
        "ditch 6,12 0,12",
        "edge 0,12 0,18",
        "ditch 0,18 6,18",
    ]
    assert (stage.needed, stage.extra) == (18, 12)


def test_one_line_needs_nothing_besides() -> None:
    top = squares(2, 1)
    stage = anchor_stage(top, anchor_lines(top, NOTHING))
    assert told(stage) == ["ditch 6,0 6,6"]
    assert stage.extra == 0


def test_without_lines_there_is_nothing_to_sew() -> None:
    stage = anchor_stage(squares(2, 2), ())
    assert (stage.walks, stage.extra, stage.proven) == ((), 0, True)


def test_a_line_that_ends_inside_is_left_by_a_seam_or_gone_back() -> None:
    # The marked line comes from the edge and ends 6 in inside, where a seam leads on to the edge:
    # a walk may stop there, so that nothing but those 6 in is needed besides.
    top = squares(3, 1, 6.0)
    line = AnchorLine(((0.0, 3.0), (6.0, 3.0)), "marked")
    stage = anchor_stage(top, [line])
    assert wrong(top, [line], stage) == []
    assert (stage.needed, stage.extra, len(stage.walks)) == (6, 3, 1)


def test_lines_so_far_apart_that_a_start_costs_less_are_sewn_in_two_walks() -> None:
    # 100 in along the edge against a start, which counts as 90.
    top = squares(1, 3, 100.0)
    stage = anchor_stage(top, anchor_lines(top, NOTHING))
    assert (len(stage.walks), stage.extra, stage.proven) == (2, 0, True)


def test_squares_that_nothing_joins_to_the_edge_are_come_to_by_a_seam() -> None:
    # A ring of seams round the middle square of nine: in by a seam, once round, and out.
    top = squares(3, 3)
    ring = AnchorLine(((6, 6), (12, 6), (12, 12), (6, 12), (6, 6)), "ditch")
    stage = anchor_stage(top, [ring])
    assert wrong(top, [ring], stage) == []
    assert (stage.needed, stage.extra, stage.proven) == (24, 12, True)


def test_lines_in_inches_and_in_centimetres_are_the_same_walk() -> None:
    inches = anchor_stage(top := squares(4, 4), anchor_lines(top, NOTHING))
    metric = replace(squares(4, 4, 6 * 2.54), rules=RULES["cm"])
    stage = anchor_stage(metric, anchor_lines(metric, NOTHING))
    assert len(told(stage)) == len(told(inches))
    assert abs(stage.extra - inches.extra * 2.54) < 1e-6
