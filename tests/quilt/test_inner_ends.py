"""Where the seams inside a unit end at its edges, and which way each is pressed there."""

from fractions import Fraction

from patternbook.exact import Exact
from patternbook.methods.made import Outline, PiecedMade, SewnSeam, Spot
from patternbook.quilt.edges import Block, joined
from patternbook.quilt.inner_ends import block_of
from patternbook.quilt.records import Placed, Sides, Turn, Unit


def spot(x: int, y: int) -> Spot:
    return Spot(Exact(x), Exact(y))


def triangle(letter: str, *corners: tuple[int, int]) -> Placed:
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    wide, high = Exact(max(xs) - min(xs)), Exact(max(ys) - min(ys))
    outline = Outline(tuple(spot(x, y) for x, y in corners))
    return Placed(letter, Turn(), Exact(min(xs)), Exact(min(ys)), wide, high, outline)


def block(toward: tuple[int | None, ...]) -> Block:
    """A goose 4 × 2 with its tip up: wing, goose, wing; two seams run to the tip."""
    placed = (
        triangle("W", (0, 0), (2, 0), (0, 2)),
        triangle("G", (2, 0), (4, 2), (0, 2)),
        triangle("W", (2, 0), (4, 0), (4, 2)),
    )
    seams = (
        SewnSeam(spot(2, 0), spot(0, 2), (0, 1), 0),
        SewnSeam(spot(2, 0), spot(4, 2), (1, 2), 2),
    )
    made = PiecedMade("goose", 1, 1, (), (), None, seams, 2, Exact(6))
    size, raw = Sides(Exact(4), Exact(2)), Sides(Exact(Fraction(9, 2)), Exact(Fraction(5, 2)))
    unit = Unit("goose", "flying geese", size, raw, 1, placed, {}, made)
    return block_of(unit, made, toward, lambda length: length.numerator)


def test_a_gooses_seams_meet_at_its_tip_and_end_in_its_corners() -> None:
    """What ends in a corner of the unit has nothing of its own to match."""
    made = block((0, 2))
    assert [list(ends) for ends in (made.top, made.right, made.bottom, made.left)] == [
        [2],
        [],
        [],
        [],
    ]


def test_pressed_apart_nothing_at_the_tip_can_clash() -> None:
    assert block((0, 2)).top[2].way == "open"
    assert block((None, None)).top[2].way == "open"


def test_a_seam_is_pressed_along_the_edge_to_its_parts_side() -> None:
    assert block((0, 1)).top[2].way == "left"  # to the left wing, and to the goose from the right
    assert block((1, 2)).top[2].way == "right"


def test_tip_on_tip_is_one_place_to_match() -> None:
    """One goose on its head over another: their tips touch in the middle of the seam."""
    upright = block((0, 1))
    over = Block(upright.across, upright.down, {}, {}, upright.top, {})
    assert len(joined([over, upright], ("down",), "down", stated=False).meets) == 1
