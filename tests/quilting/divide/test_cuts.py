"""Open ground is cut up along seams that are carried on, else evenly."""

import pytest
import shapely
from shapely import LineString, Polygon

from patternbook.quilting.areas.splitting import Rim, chords_of, clean, split
from tests.quilting.divide.standing import box, divided, lines, of_kind, on_ground, path, pile

FAR = "moved so far it would leave the open ground or come too near something else"


def areas(parts: list[Polygon] | tuple[Polygon, ...]) -> list[float]:
    return sorted(round(part.area, 6) for part in parts)


def test_a_ground_of_200_square_inches_is_left_whole() -> None:
    parts, marked, told = divided(on_ground(20, 10, []))
    assert (areas([part.shape for part in parts]), marked, told) == ([200], (), ())


def test_a_panel_is_quartered() -> None:
    """24 × 42 with a strip around: 1,008 square inches are four parts of 252."""
    around = [("A", box(0, 0, 28, 2)), ("A", box(0, 44, 28, 2))]
    around += [("A", box(0, 2, 2, 42)), ("A", box(26, 2, 2, 42))]
    parts, marked, _ = divided(on_ground(28, 46, around))
    assert areas([part.shape for part in of_kind("ground", parts)]) == [252] * 4
    assert {frozenset(path) for path in lines("cut", marked)} == {
        frozenset({(2.0, 23.0), (26.0, 23.0)}),
        frozenset({(14.0, 2.0), (14.0, 23.0)}),
        frozenset({(14.0, 23.0), (14.0, 44.0)}),
    }
    assert [line.words for line in marked if line.path[0][1] == line.path[1][1]] == [
        "Cut 1: rule a line across, 21″ below the seam above it, from 2″ to 26″ from the left edge."
    ]


def test_cuts_that_lie_on_seams_are_not_marked() -> None:
    seam = path((15, 0), (15, 19))
    parts, marked, _ = divided(on_ground(30, 19, [("A", box(0, 19, 30, 2))], seam))
    assert areas([part.shape for part in parts]) == [285, 285]
    assert lines("cut", marked) == []


def test_a_row_seam_is_carried_on_where_it_stops() -> None:
    """The seam at 12 stops half way: the rest of the cut is marked, on from its end."""
    laid = on_ground(24, 24, [("A", box(0, 24, 24, 2))], ((0.0, 12.0), (10.0, 12.0)))
    parts, marked, _ = divided(laid)
    assert areas([part.shape for part in parts]) == [288, 288]
    (line,) = marked
    assert line.path == path((10, 12), (24, 12))
    assert line.words == (
        "Cut 1: carry on the seam that ends 10″ from the left edge and 12″ from the top, 14″ right."
    )


def test_a_ring_is_opened_along_the_seams_of_what_stands_in_it() -> None:
    """A pile in the middle of 24 × 27: one line, the seam of a bar carried on to both edges."""
    laid = on_ground(24, 27, pile("A", 8, 9, 5, 8))
    parts, marked, _ = divided(laid)
    assert all(not part.shape.interiors for part in parts)
    assert areas([part.shape for part in parts]) == [
        280,
        288,
    ]  # 24 × 13 less two bars; 24 × 14 less three
    cut = lines("cut", marked)
    assert set(cut) == {path((8, 13), (0, 13)), path((16, 13), (24, 13))}


def test_round_holes_in_a_row_are_cut_through_in_one_line() -> None:
    discs = [("A", shapely.Point(8 + 12 * n, 9).buffer(4, quad_segs=32)) for n in range(3)]
    parts, marked, _ = divided(on_ground(40, 18, discs))
    assert all(not part.shape.interiors for part in parts)
    assert {path[0][1] for path in lines("cut", marked)} == {9.0}
    assert {line.words.split(":")[0] for line in marked} == {"Cut 1"}


def test_a_cut_is_moved_as_far_as_the_author_says() -> None:
    laid = on_ground(24, 24, [("A", box(0, 24, 24, 2))], ((0.0, 12.0), (10.0, 12.0)))
    parts, marked, told = divided(laid, move={"cut 1": 1.5})
    assert told == ()
    assert areas([part.shape for part in parts]) == [252, 324]
    assert lines("cut", marked) == [path((0, 13.5), (24, 13.5))]


@pytest.mark.parametrize("shift", [30.0, -12.0])
def test_a_cut_does_not_leave_the_ground(shift: float) -> None:
    laid = on_ground(24, 24, [("A", box(0, 24, 24, 2))], ((0.0, 12.0), (10.0, 12.0)))
    parts, marked, told = divided(laid, move={"cut 1": shift, "cut 2": 1.0, "P 1": 3.0})
    assert told == (
        "cut 1 stays where it is: " + FAR,
        "cut 2 cannot be moved: this size has no such line (there is one of the kind)",
    )
    assert (parts, marked) == divided(laid)[:2]


def test_a_chord_leaves_what_its_rim_says() -> None:
    shape = Polygon([(0, 0), (20, 0), (20, 8), (9, 8), (9, 15), (0, 15)])
    for line in (LineString([(4, -1), (4, 16)]), LineString([(-1, 5), (21, 5)])):
        (chord,) = chords_of(line, shape)
        walked = sorted(Rim(shape).sides(chord))
        cut = sorted((part.area, part.length) for part in split(shape, (chord,)))
        assert walked == [pytest.approx(side) for side in cut]


def test_a_slit_that_is_floats_own_is_closed() -> None:
    slit = Polygon([(0, 0), (10, 0), (10, 4.9999999), (3, 5), (10, 5), (10, 9), (0, 9)])
    (shape,) = clean(slit)
    assert len(shape.exterior.coords) < len(slit.exterior.coords)
    assert shape.area == pytest.approx(90, abs=1e-5)
