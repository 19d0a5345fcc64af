"""Which lines are stitched first."""

from dataclasses import replace

import pytest
import shapely

from patternbook.quilting.anchor import anchor_lines
from patternbook.quilting.records import AnchorLine, Area, Divided, Marked, Top
from tests.quilting.anchor.walked import laid_demo, squares

NOTHING = Divided((), ())


def heights(lines: tuple[AnchorLine, ...]) -> list[float]:
    """How far down the lines across lie."""
    return [line.path[0][1] for line in lines if line.path[0][1] == line.path[1][1]]


def area(kind: str, x: float, y: float, across: float, down: float) -> Area:
    return Area("A", 1, kind, shapely.box(x, y, x + across, y + down), 0.0)  # type: ignore[arg-type]


def test_blocks_of_6_inches_keep_all_their_rows() -> None:
    assert heights(anchor_lines(squares(1, 5), NOTHING)) == [6, 12, 18, 24]


@pytest.mark.parametrize(
    ("side", "rows", "kept"),
    [
        (2.0, 24, [8, 16, 24, 32, 40]),  # 48 in of strips: a line every 8 in
        (3.0, 12, [9, 18, 27]),  # 36 in: every 9 in, the nearest to 8 that 3 goes into
        (2.5, 16, [7.5, 15, 22.5, 30]),  # 40 in: as evenly as 2½ in go, 10 in at the end
    ],
)
def test_close_rows_are_thinned_to_about_8_inches(
    side: float, rows: int, kept: list[float]
) -> None:
    assert heights(anchor_lines(squares(1, rows, side), NOTHING)) == kept


def test_beside_a_seam_that_is_pressed_open_a_quarter_of_an_inch() -> None:
    lines = anchor_lines(squares(2, 2, opened=True), NOTHING)
    assert [(line.kind, line.path) for line in lines] == [
        ("beside", ((0.0, 6.25), (12.0, 6.25))),
        ("beside", ((6.25, 0.0), (6.25, 12.0))),
    ]


def test_hexagons_have_no_long_seam() -> None:
    assert anchor_lines(laid_demo("train-window-hours", "lap"), NOTHING) == ()


def test_the_seams_of_a_border_are_first() -> None:
    lines = anchor_lines(laid_demo("tea-at-four", "lap"), NOTHING)
    assert [line.border for line in lines] == [True] * 4 + [False] * 9


def test_on_point_the_lines_run_both_ways_on_the_slant() -> None:
    lines = anchor_lines(laid_demo("wash-house-tiles", "crib"), NOTHING)
    slants = {round((b[1] - a[1]) / (b[0] - a[0])) for a, b in (line.path for line in lines)}
    assert slants == {-1, 1}


def test_an_area_is_outlined_where_its_rim_is_a_seam_and_no_seam_twice() -> None:
    # The middle square of nine: its seams are parts of the four long lines. In a row of strips
    # the lines kept are at 8 and 16 in; an area from 2 to 6 in brings its own two.
    assert len(anchor_lines(squares(3, 3), replace(NOTHING, areas=(area("square", 6, 6, 6, 6),))))
    strips = squares(1, 12, 2.0)
    found = replace(NOTHING, areas=(area("band", 0, 2, 2, 4),))
    assert sorted(heights(anchor_lines(strips, found))) == [2, 6, 8, 16]


def test_the_whole_body_is_not_outlined() -> None:
    strips = squares(1, 12, 2.0)
    found = replace(NOTHING, areas=(area("body", 0, 2, 2, 4),))
    assert heights(anchor_lines(strips, found)) == [8, 16]


def test_marked_lines_are_stitched_as_they_are_marked() -> None:
    line = Marked(((0.0, 3.0), (3.0, 3.0), (3.0, 0.0)), "channel", "")
    lines = anchor_lines(squares(1, 1), replace(NOTHING, marked=(line,)))
    assert lines == (AnchorLine(line.path, "marked"),)


def test_seams_inside_of_blocks_are_left_to_the_designs() -> None:
    laid: Top = squares(1, 5)
    deep = tuple(run._replace(depth=2) for run in laid.runs)
    assert anchor_lines(replace(laid, runs=deep), NOTHING) == ()
