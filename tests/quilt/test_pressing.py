"""Pressing: opposite ways so that seams nest.

Source of the rule: "Quilt tips: perfect pressing",
http://fabriceditionsblog.com/2015/03/25/quilt-tips-perfect-pressing (to the darker side; opposite
ways so that seams nest). Sashing toward itself: common practice, no source.
"""

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.notice import Notice
from patternbook.quilt.edges import turned
from patternbook.quilt.meeting import Meetings
from patternbook.quilt.nesting import clashes
from patternbook.quilt.pressing import pressed
from patternbook.quilt.records import Quilt, Turn
from tests.sewing.hand import Hand, grid

FEW = st.integers(1, 6)
ARROWS = {"left": "<", "right": ">", "up": "^", "down": "v", "open": "|"}


def arrows(quilt: Quilt, unit: str = "top") -> list[str]:
    """The seams of each line as arrows: `<>` is one to the left, one to the right."""
    plans, _ = pressed(quilt)
    return ["".join(ARROWS[way] for way in line.seams) for line in plans[unit].lines]


def between(quilt: Quilt, unit: str = "top") -> str:
    plans, _ = pressed(quilt)
    return "".join(ARROWS[way] for way in plans[unit].between)


def told(quilt: Quilt) -> list[Notice]:
    plans, notices = pressed(quilt)
    return [*notices, *clashes(quilt, plans, Meetings(quilt, plans))]


def squares(*rows: str, press: str | Sequence[str] = ()) -> Quilt:
    letters = dict.fromkeys("ABCD", (2.0, 2.0))
    return Hand(**letters).rows("top", *rows, press=press).quilt()


@pytest.mark.parametrize(
    ("word", "row"),
    [
        ("left", "<<<<"),
        ("right", ">>>>"),
        ("open", "||||"),
        ("out", "<<>>"),
        ("in", ">><<"),
        ("all one way", ">>>>"),
        ("toward A", "<><>"),
        ("toward B", "><><"),
    ],
)
def test_each_word_in_one_row(word: str, row: str) -> None:
    assert arrows(squares("A B A B A", press=word)) == [row]


def test_toward_a_part_holds_for_the_seams_it_has_no_share_in() -> None:
    """Three rails pressed toward A: the seam of B and C goes the way to A too."""
    assert arrows(squares("A B C", press="toward A")) == ["<<"]
    assert arrows(squares("C B A B D", press="toward A")) == [">><<"]


def test_a_list_has_one_word_a_row_and_is_repeated_to_fill() -> None:
    assert arrows(squares("A B A", "B A B", "A B A", press=["out", "in"])) == ["<>", "><", "<>"]


def test_rows_alternate_where_nothing_is_said() -> None:
    made = squares("A A A", "A A A", "A A A")
    assert arrows(made) == [">>", "<<", ">>"]
    assert between(made) == "vv"
    assert told(made) == []


def test_columns_are_pressed_down_and_up() -> None:
    made = Hand(A=(2, 2)).columns("top", "A A A", "A A A").quilt()
    assert arrows(made) == ["vv", "^^"]
    assert between(made) == ">"


def test_a_stack_takes_the_word_for_the_seams_between_its_rows() -> None:
    assert between(squares("A", "B", "A", press="toward A")) == "^v"


def test_a_strip_set_is_pressed_toward_its_darker_strips() -> None:
    hand = Hand(A=(2, None), B=(2, None))
    hand.fabric("dark", "A", tone="dark").fabric("light", "B", tone="light")
    made = hand.strips("pair", "A B A", 2).rows("top", "pair").quilt()
    assert arrows(made, "pair") == ["<>"]


def sashed(press: str | Sequence[str] = ()) -> Quilt:
    """Two blocks wide and two high, with a sash between and a cornerstone where sashes cross."""
    hand = Hand(B=(6, 6), S=(2, 6), K=(2, 2))
    rows = ("B S B", "sash: S/right K S/right", "B S B")
    return hand.rows("top", *rows, sashing=("S", "K"), press=press).quilt()


def test_sashing_draws_the_seams_toward_itself_and_so_they_nest() -> None:
    assert arrows(sashed()) == ["><", "<>", "><"]
    assert between(sashed()) == "v^"
    assert told(sashed()) == []


def test_sash_rows_suit_the_words_for_the_rows_of_blocks() -> None:
    made = sashed(press="out")
    assert arrows(made) == ["<>", "><", "<>"]
    assert told(made) == []


def test_three_rows_pressed_toward_the_middle_cannot_nest() -> None:
    """The fault of a printed nine-patch: press row 1, row 2 and row 3 towards the centre square;
    mended by rows 1 and 3 outward, row 2 inward."""
    rows = ("A B A", "B A B", "A B A")
    (notice,) = told(squares(*rows, press=["in", "in", "in"]))
    assert (notice.code, notice.severity, notice.rule) == ("press-clash", "error", "R16")
    assert "row 1, pressed in, and row 2, pressed in" in notice.message
    assert "2 of the 2 places" in notice.message
    assert notice.hint == "Try `press: [out, in, out]`."
    assert told(squares(*rows, press=["out", "in", "out"])) == []


def test_slices_of_two_sets_that_cannot_nest_are_a_warning() -> None:
    hand = Hand(A=(2, None), B=(2, None))
    hand.strips("outer", "A B A", 2, press="right").strips("inner", "B A B", 2, press="right")
    (notice,) = told(hand.rows("top", "outer", "inner").quilt())
    assert (notice.code, notice.severity) == ("press-clash", "warning")
    assert "row 1, pressed right, and row 2, pressed right" in notice.message


def test_a_slice_turned_about_nests_with_the_one_above() -> None:
    hand = Hand(A=(2, None), B=(2, None)).strips("pair", "A B", 2, press="toward A")
    assert told(hand.rows("top", "pair", "pair/half").quilt()) == []


@given(FEW, FEW)
def test_alternating_rows_nest_in_every_grid(across: int, down: int) -> None:
    made = grid(across, down, press="rows alternate").quilt()
    plans, _ = pressed(made)
    meets = Meetings(made, plans).lines("top").meets
    assert len(meets) == (across - 1) * (down - 1)
    assert not any(meet.same_way for meet in meets)


@given(st.integers(2, 6), st.integers(2, 6), st.sampled_from(["left", "out", "all one way"]))
def test_one_word_for_every_row_of_a_grid_clashes(across: int, down: int, word: str) -> None:
    (notice,) = told(grid(across, down, press=word).quilt())
    assert notice.code == "press-clash"
    assert notice.severity == "error"


@given(st.integers(0, 3), st.booleans())
def test_four_quarter_turns_or_two_mirrorings_leave_a_block_as_it_was(
    quarters: int, mirrored: bool
) -> None:
    made = Hand(A=(2, 4), B=(4, 4)).rows("top", "A B", press="left").quilt()
    plans, _ = pressed(made)
    block = Meetings(made, plans).lines("top").block
    there = turned(block, Turn(quarters, mirrored))
    back = Turn(quarters, True) if mirrored else Turn(-quarters % 4)
    assert turned(there, back) == block


@pytest.mark.parametrize(
    ("press", "code", "said"),
    [
        ("toward D", "press-part", "toward D, which is not sewn into it"),
        ("up", "press-word", "its lines stand upright"),
        (["in", "out", "in"], "press-rows", "3 words of pressing for 2 lines"),
    ],
)
def test_words_that_do_not_fit(press: str | Sequence[str], code: str, said: str) -> None:
    first, *_ = told(squares("A B", "B A", press=press))
    assert (first.code, first.severity, first.rule) == (code, "error", "R16")
    assert said in first.message
    assert first.sizes == ("crib",)
    assert first.marks


def test_left_and_right_do_not_fit_columns() -> None:
    made = Hand(A=(2, 2)).columns("top", "A A A", press="left").quilt()
    (notice,) = told(made)
    assert notice.code == "press-word"
    assert "lie across" in notice.message
