"""Seams, neighbours and matches of tops with triangles, rotated squares, hexagons and curves."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import ROOT2, Exact
from patternbook.quilt.joins import crossings, matches, seams, touching
from patternbook.quilt.place import Patch
from tests.proof.shapes_laid import box, curved, cut_up, halves, hexagon, on_point, quarters, shape

FEW = st.integers(1, 4)
TWO = Exact(2)


def pinwheel() -> list[Patch]:
    """Four squares cut in halves, the seams all meeting in the middle."""
    return [
        *halves(box(0, 0, 2, 2), rising=False),
        *halves(box(2, 0, 2, 2), rising=True),
        *halves(box(0, 2, 2, 2), rising=True),
        *halves(box(2, 2, 2, 2), rising=False),
    ]


def test_a_windmill_has_one_place_to_match() -> None:
    """Eight corners meet in the middle, and are sewn to meet once."""
    assert crossings(pinwheel()) == ((Exact(2), Exact(2)),)
    assert matches(pinwheel()) == 1


def test_the_two_halves_of_a_square_touch() -> None:
    assert touching(halves(box(0, 0, 2, 2), rising=True)) == ((0, 1),)


def test_a_windmills_blades_touch_those_beside_them_alone() -> None:
    """Each of the eight has its twin, and one more neighbour at the seams of the squares."""
    pairs = touching(pinwheel())
    assert len(pairs) == 8
    assert {(0, 1), (2, 3), (4, 5), (6, 7)} <= set(pairs)


def test_the_seams_of_a_windmill_run_straight_through() -> None:
    across, down = seams(pinwheel())
    assert [across.lies, across.at, across.start, across.end] == ["across", TWO, Exact(0), TWO * 2]
    assert [down.lies, down.at, down.start, down.end] == ["down", TWO, Exact(0), TWO * 2]
    assert len(across.before) == len(across.after) == 2


def test_a_goose_ends_at_the_next_ones_base() -> None:
    """The tip of a goose lies on a long seam: nothing is to match there."""
    geese = [
        part
        for y in (0, 2)
        for part in (
            shape((2, y), (4, y + 2), (0, y + 2)),
            shape((0, y), (2, y), (0, y + 2)),
            shape((2, y), (4, y), (4, y + 2)),
        )
    ]
    assert matches(geese) == 0
    assert touching(geese) == ((0, 1), (0, 2), (0, 4), (0, 5), (3, 4), (3, 5))
    (between,) = seams(geese)
    assert (between.lies, between.at, between.before) == ("across", TWO, (0,))


def test_hexagons_touch_their_neighbours_and_nothing_matches() -> None:
    """Three meet at a corner: such seams are sewn from dot to dot."""
    far = Exact(0, 0, 1)
    laid = [hexagon(0, 0, 1), hexagon(far, 0, 1), hexagon(far / 2, Fraction(3, 2), 1)]
    assert touching(laid) == ((0, 1), (0, 2), (1, 2))
    assert matches(laid) == 0
    assert [seam.lies for seam in seams(laid)] == ["down"]


def test_a_curved_seam_is_shared() -> None:
    assert touching(curved(4, 3)) == ((0, 1),)
    assert seams(curved(4, 3)) == ()


def test_two_curves_of_different_radius_do_not_touch() -> None:
    assert touching([curved(4, 2)[0], curved(4, 3)[1]]) == ()


@given(FEW, FEW)
def test_on_point_every_inner_corner_of_a_block_must_match(across: int, down: int) -> None:
    """Four meet wherever two blocks of the main grid lie side by side; nothing runs straight
    across or down."""
    laid = on_point(across, down, 4)
    assert matches(laid) == (across - 1) * down + across * (down - 1)
    assert seams(laid) == ()


@given(FEW, FEW)
def test_on_point_every_edge_between_two_is_shared_by_two(across: int, down: int) -> None:
    laid = on_point(across, down, Fraction(7, 2))
    main, between = across * down, (across - 1) * (down - 1)
    # Each edge of a block of the main grid has a block between, or a triangle, on the other side.
    assert len(touching(laid)) == 4 * main
    assert len(laid) == main + between + 2 * (across + down - 2) + 4


@given(cut_up())
def test_a_seam_lies_between_what_touches(patches: list[Patch]) -> None:
    pairs = set(touching(patches))
    for seam in seams(patches):
        assert all(any(tuple(sorted((one, other))) in pairs for other in seam.after)
                   for one in seam.before)  # fmt: skip


@given(st.integers(1, 4), st.integers(1, 4))
def test_the_slow_way_tells_of_rectangles_what_the_quick_way_tells(across: int, down: int) -> None:
    """One square of a grid is given as an outline: nothing changes."""
    plain = [box(x * 3, y * 2, 3, 2) for y in range(down) for x in range(across)]
    one = plain[0]
    left, top, right, low = one.x, one.y, one.x + one.across, one.y + one.down
    outlined = [shape((left, top), (right, top), (right, low), (left, low)), *plain[1:]]
    assert seams(outlined) == seams(plain)
    assert touching(outlined) == touching(plain)
    assert crossings(outlined) == crossings(plain)


def test_what_lies_on_others_touches_nothing() -> None:
    leaf = shape((1, 1), (3, 1), (2, 3))._replace(laid_on=True)
    laid = [leaf, box(0, 0, 4, 4), box(4, 0, 4, 4)]
    assert touching(laid) == ((1, 2),)
    assert matches([*laid, *quarters(box(8, 0, 4, 4))]) == 1


def test_diagonal_lengths() -> None:
    side = ROOT2 * 2
    assert matches([part for x in (0, 1) for y in (0, 1) for part in quarters(
        box(side * x, side * y, side, side))]) == 1 + 4 + 4  # fmt: skip
