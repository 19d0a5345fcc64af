"""The same shape is cut off in the empty corners of the top, mirrored."""

import pytest
from shapely import Polygon

from patternbook.quilting.areas.corners import Corner, corners
from tests.quilting.divide.standing import box, divided, lines, lot, of_kind, on_ground, path, pile

FAR = "moved so far it would leave the open ground or come too near something else"


def mirrored(path: tuple[tuple[float, float], ...], across: float) -> set[tuple[float, float]]:
    return {(across - x, y) for x, y in path}


def test_a_square_in_a_corner() -> None:
    corner = Corner("square", 8.0, (60.0, 0.0), (-1, 1))
    assert corner.line == path((52, 0), (52, 8), (60, 8))
    assert corner.shape.equals(box(52, 0, 8, 8))


def test_a_triangle_in_a_corner() -> None:
    corner = Corner("triangle", 8.0, (0.0, 70.0), (1, -1))
    assert corner.line == path((8, 70), (0, 62))
    assert corner.shape.area == 32


@pytest.mark.parametrize("seed", range(6))
def test_all_four_corners_of_an_empty_top_are_alike(seed: int) -> None:
    top, grounds = on_ground(60, 72, pile("A", 20, 20, 10, 8))
    found = corners(grounds, top, lot(seed))
    # A sixth of 60 in.
    assert {(one.form, one.size) for one in found} == {(found[0].form, 10.0)}
    upper_left, upper_right, lower_left, lower_right = found
    assert mirrored(upper_left.line, 60) == set(upper_right.line)
    assert mirrored(lower_left.line, 60) == set(lower_right.line)


def test_only_the_two_lower_corners_where_the_upper_are_pieced() -> None:
    top, grounds = on_ground(60, 72, [("A", box(0, 0, 60, 4))])
    assert [one.ways for one in corners(grounds, top, lot(1))] == [(1, -1), (-1, -1)]


def test_they_are_smaller_where_there_is_less_room() -> None:
    # 11 in above the strip, of which 3 are kept clear: squares of 8 rather than 10, in halves.
    top, grounds = on_ground(60, 72, [("A", box(0, 11, 60, 2)), ("A", box(0, 61, 60, 11))])
    assert [one.size for one in corners(grounds, top, lot(1))] == [8.0, 8.0]


def test_none_where_one_of_the_two_is_not_empty() -> None:
    parts, _, _ = divided(on_ground(60, 40, [("A", box(0, 0, 5, 5)), ("A", box(30, 38, 30, 2))]))
    assert of_kind("corner", parts) == []


def test_the_words_of_a_corner() -> None:
    _, marked, _ = divided(on_ground(60, 72, pile("A", 26, 30, 4, 8)), seed=2)
    corner = next(line for line in marked if line.kind == "corner")
    how = {
        3: "and rule a line from each of the two marks, square to the edge, to where they meet",
        2: "and join the two marks",
    }[len(corner.path)]
    assert corner.words == (
        f"Corner 1: mark 10″ from the upper left corner along both edges, {how}."
    )


def test_a_corner_is_moved_by_making_it_larger() -> None:
    laid = on_ground(60, 72, pile("A", 26, 30, 4, 8))
    parts, _, told = divided(laid, move={"corner 2": 2.0})
    assert told == ()
    widths = [part.shape.bounds[2] - part.shape.bounds[0] for part in of_kind("corner", parts)]
    assert widths == [10, 12, 10, 10]


def test_a_corner_cannot_be_moved_into_the_piecing() -> None:
    laid = on_ground(60, 72, pile("A", 26, 30, 4, 8))
    parts, marked, told = divided(laid, move={"corner 1": 40.0, "corner 7": 1.0})
    assert told == (
        "corner 7 cannot be moved: this size has no such line (there are only 4 of the kind)",
        "corner 1 stays where it is: " + FAR,
    )
    assert (parts, marked) == divided(laid)[:2]
    assert len(lines("corner", marked)) == 4
    assert all(isinstance(part.shape, Polygon) for part in parts)
