"""Seams and the places where they meet, from geometry."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import ROOT2, Exact
from patternbook.quilt.joins import crossings, matches, seams, touching
from patternbook.quilt.place import Patch, patches
from patternbook.quilt.records import Turn
from tests.sewing.hand import Hand, bricks, grid

FEW = st.integers(1, 6)


def top(hand: Hand) -> tuple[Patch, ...]:
    return patches(hand.quilt(), "top")


@given(FEW, FEW)
def test_in_a_grid_every_inner_corner_must_match(across: int, down: int) -> None:
    assert matches(top(grid(across, down))) == (across - 1) * (down - 1)


@given(st.integers(2, 6), FEW)
def test_in_a_brick_wall_nothing_has_to_match(across: int, down: int) -> None:
    assert matches(top(bricks(across, down))) == 0


@given(FEW, FEW)
def test_every_neighbour_in_a_grid_shares_an_edge_and_corners_do_not_count(
    across: int, down: int
) -> None:
    pairs = touching(top(grid(across, down)))
    assert len(pairs) == (across - 1) * down + across * (down - 1)
    assert all(other - one in {1, across} for one, other in pairs)


def test_a_four_patch_has_two_long_seams_that_cross_in_its_middle() -> None:
    laid = top(grid(2, 2, size=2.5))
    across, down = seams(laid)
    assert across.lies == "across"
    assert [across.at, across.start, across.end] == [Exact(Fraction(5, 2)), Exact(0), Exact(5)]
    assert (across.before, across.after) == ((0, 1), (2, 3))
    assert down.lies == "down"
    assert (down.before, down.after) == ((0, 2), (1, 3))
    assert crossings(laid) == ((Exact(Fraction(5, 2)), Exact(Fraction(5, 2))),)


def test_bars_of_three_lengths_on_open_ground_meet_nowhere() -> None:
    hand = Hand(A=(8, 2), B=(6, 2), D=(8, 4), E=(6, 6), S=(4, 10))
    hand.columns("tall", "D A A A").columns("small", "B B E").rows("top", "S tall S small S")
    laid = top(hand)
    assert matches(laid) == 0
    # The seams beside the stacks run from edge to edge, and every other ends against them.
    assert [seam.end - seam.start for seam in seams(laid) if seam.lies == "down"] == [10] * 4


@given(FEW, FEW, st.integers(1, 9))
def test_diagonal_work_is_counted_like_any_other(across: int, down: int, wide: int) -> None:
    """A grid whose squares have a side with a root in it."""
    side = ROOT2 * wide
    laid = [
        Patch("A", side * x, side * y, side, side, Turn(), ("top",))
        for y in range(down)
        for x in range(across)
    ]
    assert matches(laid) == (across - 1) * (down - 1)
    assert len(seams(laid)) == across - 1 + down - 1
