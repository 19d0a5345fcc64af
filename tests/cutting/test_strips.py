"""Strips and sub-cuts: how many strips each letter takes, whole, shared or joined."""

from fractions import Fraction
from typing import Literal

import pytest

from patternbook.cutting.plan import plan
from patternbook.quilt.records import Run
from tests.cutting.small import codes, fabric, inches, piece, planned, quilt, strip, told

# Published cutting lists: pieces of one size, usable width -> strips, cloth they take.
PUBLISHED = [
    # "How to figure yardage for a quilt", featheredstar.wordpress.com/category/faqs
    ("2 1/2 square", 80, 40, {}, 5, "12 1/2"),
    # "Calculating yardage", patchworktimes.com/2011/11/12/calculating-yardage: both directions
    ("2 1/2 x 4 1/2", 48, 40, {}, 6, "15"),
    ("2 1/2 x 4 1/2", 48, 40, {"strip_width": "4 1/2"}, 3, "13 1/2"),
    ("4 1/2 square", 12, 40, {}, 2, "9"),
    # quiltingboard.com/6228687-post7.html
    ("9 1/2 square", 63, 42, {}, 16, "152"),
    # modernquiltingbyb.com/2015/02/single-block-quilt-tutorial-series.html, and at 40
    ("2 1/2 x 4 1/2", 140, 42, {}, 16, "40"),
    ("2 1/2 x 4 1/2", 140, 40, {}, 18, "45"),
    # quilting.about.com/od/stepbystepquilting/ss/calculate_yards_2.htm: 60 triangles
    ("3 7/8 square", 60, 40, {"diagonal": "once"}, 3, "11 5/8"),
    # issuu.com/eeschenck/docs/q-046_fishful_thinking
    ("5 1/2 square", 64, 40, {}, 10, "55"),
    ("8 1/2 square", 64, 40, {}, 16, "136"),
    # sweetpotatoquiltsblog.com/?p=2293
    ("3 1/2 square", 48, 42, {}, 4, "14"),
    ("2 1/2 x 4 1/2", 18, 42, {}, 2, "5"),
    # "Math fail", kristaquilts.blogspot.com/2015/12/math-fail.html: 120 four-patches
    ("2 square", 240, 40, {}, 12, "24"),
    # "Lesson 11 - Math for quilt sashings and borders", slideblast.com
    ("3 1/2 x 12 1/2", 31, 42, {}, 11, "38 1/2"),
]


@pytest.mark.parametrize(("size", "count", "width", "more", "strips", "cloth"), PUBLISHED)
def test_published_cutting_lists(
    size: str, count: int, width: int, more: dict[str, str], strips: int, cloth: str
) -> None:
    made = planned(piece("A", size, count, **more), cloth=fabric(width=Fraction(width)))
    assert made.letters["A"].strips == strips
    assert made.fabrics["cloth"].length == inches(cloth)


def test_mixed_lengths_from_the_same_strips() -> None:
    """hazelsdiary.wordpress.com, "cutting the prints": 7 strips, and 27 of which 26 are needed."""
    few = planned(
        piece("A", "2 1/2 x 6 1/2", 18),
        piece("B", "2 1/2 x 4 1/2", 6, host="A"),
        piece("C", "2 1/2 square", 44, host="A"),
    )
    many = planned(
        piece("A", "2 1/2 x 6 1/2", 26),
        piece("B", "2 1/2 x 4 1/2", 168, host="A"),
        piece("C", "2 1/2 square", 16, host="A"),
    )
    assert few.letters["A"].own == 7
    assert many.letters["A"].own == 26
    assert many.letters["B"].own == 0
    assert many.yields == {"A": 26, "B": 168, "C": 16}


@pytest.mark.parametrize(("join", "strips"), [("straight", 42), ("diagonal", 44)])
def test_joined_bars(join: Literal["diagonal", "straight"], strips: int) -> None:
    """Thirty bars of 54½: 1,635 in; a straight join takes ½, a diagonal one the 2½ of the strip
    (own arithmetic; for the diagonal loss see quiltingboard.com/resources/article-117.html)."""
    made = planned(piece("A", "54 1/2 x 2 1/2", 30, join=join))
    (cut,) = made.fabrics["cloth"].strips
    assert cut.times == strips
    assert cut.left >= 0
    assert made.yields["A"] == 30


def test_along_the_length_side_by_side() -> None:
    """Four bands 12½ × 54½: three lie side by side, so two lengths of cloth and no seams."""
    made = planned(piece("W", "54 1/2 x 12 1/2", 4, along="length"))
    lengths = made.fabrics["cloth"].strips
    assert [(one.width, one.along) for one in lengths] == [(inches("54 1/2"), "length")] * 2
    assert [one.pieces("W") for one in lengths] == [3, 1]
    assert made.fabrics["cloth"].buy.amount == inches("3 1/8")


def test_border_strips_along_the_length_share_one_length() -> None:
    made = planned(strip("F", "6 1/2", ("66 1/2", 2), ("57 1/2", 2), along="length"))
    (length,) = made.fabrics["cloth"].strips
    assert (length.width, length.times, length.pieces("F")) == (inches("66 1/2"), 1, 4)


# Log cabins of three rounds, logs cut 2 (own arithmetic: first fit, largest first).
LIGHT = ("3 1/2", "5", "6 1/2", "8", "9 1/2", "11")
DARK = ("5", "6 1/2", "8", "9 1/2", "11", "12 1/2")


@pytest.mark.parametrize(
    ("logs", "blocks", "strips"), [(LIGHT, 12, 14), (DARK, 12, 17), (LIGHT, 30, 34), (DARK, 30, 41)]
)
def test_logs_are_packed_largest_first(logs: tuple[str, ...], blocks: int, strips: int) -> None:
    made = planned(strip("A", "2", *[(log, blocks) for log in logs], use="cabin"))
    assert made.letters["A"].own == strips
    assert made.yields["A"] == 6 * blocks


def test_only_the_use_with_long_lengths_is_joined() -> None:
    """Logs stay in one piece although the border of the same letter is joined."""
    logs = Run("cabin", Fraction(11), 8, whole=False)
    border = Run("border 1", Fraction(50), 4, whole=False)
    made = planned(piece("A", "2 x WOF", runs=(logs, border), join="straight"))
    joined = [one for one in made.fabrics["cloth"].strips if one.join]
    assert [(one.times, one.cuts[0].use) for one in joined] == [(6, "border 1")]
    plain = [one for one in made.fabrics["cloth"].strips if not one.join]
    assert sum(one.pieces("A") for one in plain) + joined[0].pieces("A") - 4 == 8


def test_strip_sets_take_whole_strips() -> None:
    made = planned(piece("A", "3 1/2 x WOF", runs=(Run("outer", Fraction(40), 8, whole=True),)))
    (cut,) = made.fabrics["cloth"].strips
    assert (cut.times, cut.cuts[0].whole) == (8, True)


def test_triangles_come_from_squares() -> None:
    made = planned(piece("A", "9 3/4 square", 10, diagonal="twice"))
    assert (made.letters["A"].cuts, made.letters["A"].yields) == (3, 12)


def test_mirrored_triangles_of_oblongs_are_cut_apart() -> None:
    made = planned(piece("A", "3 x 5 1/2", 10, diagonal="once", mirrored=5))
    assert made.letters["A"].cuts == 6


def test_spare_pieces_are_cut() -> None:
    made = planned(piece("A", "2 1/2 square", 14, spare=4))
    assert (made.letters["A"].needed, made.letters["A"].strips) == (18, 2)


def test_lanes_in_a_wider_strip() -> None:
    made = planned(piece("A", "2 1/2 square", 33, strip_width="5"))
    (full, rest) = made.fabrics["cloth"].strips
    assert (full.pieces("A"), rest.pieces("A")) == (32, 1)


def test_a_one_way_print_stands_upright() -> None:
    made = planned(piece("A", "2 1/2 x 6 1/2", 16), cloth=fabric(one_way=True))
    assert (made.letters["A"].strip_width, made.letters["A"].own) == (inches("6 1/2"), 1)


def test_fewer_to_a_strip_is_her_plan() -> None:
    made = planned(piece("A", "2 1/2 square", 32, stated_per_strip=15))
    assert made.letters["A"].strips == 3


def test_least_width_at_which_the_plan_holds() -> None:
    made = planned(piece("A", "4 1/2 square", 16))
    assert made.fabrics["cloth"].least_width == 36
    joined = planned(strip("F", "3 1/2", ("60 1/2", 4), join="straight"))
    plan_of = joined.fabrics["cloth"]
    assert plan_of.least_width == (Fraction(242) + 6 * Fraction(1, 2)) / 7


def test_exact_fit_and_exact_count_are_told() -> None:
    """36 ÷ 5 has room, 40 ÷ 5 has none (8 × 5 = 40); 112 squares are 14 strips of 8 exactly."""
    assert codes(told(piece("A", "5 square", 60))) == ["exact-fit"]
    assert codes(told(piece("A", "5 square", 112))) == ["exact-fit", "exact-count"]
    assert codes(told(piece("A", "6 1/2 square", 60))) == ["exact-count"]
    assert codes(told(piece("A", "6 1/2 square", 58))) == []


def test_pieces_without_a_fabric_are_planned_too() -> None:
    made, _ = plan(quilt(piece("A", "2 1/2 square", 20, fabric=None)))
    assert made.fabrics[""].strips[0].times == 1
    assert made.fabrics[""].strips[1].pieces("A") == 4


def test_pieces_of_no_size_are_left_out() -> None:
    made = planned(piece("A", "0 x 3", 4), piece("B", "2 1/2 square", 4))
    assert list(made.letters) == ["B"]
