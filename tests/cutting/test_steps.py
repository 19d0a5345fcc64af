"""The actions at the cutting table: folding, rulers, layers (common practice, no source)."""

from fractions import Fraction
from typing import Any

import pytest

from patternbook.cutting.cloth import Cloth
from patternbook.cutting.plan import plan
from patternbook.cutting.records import Cut, CutStep, Join, Strip
from patternbook.cutting.steps import cut_steps, folded
from patternbook.cutting.tools import TABLES
from patternbook.forms import by_name
from patternbook.proof.evidence import Evidence
from patternbook.proof.replay import replay
from patternbook.quilt.records import CutSize, Piece, Run
from patternbook.sewing.plan import plan as plan_sewing
from tests.cutting.small import fabric, inches, piece, planned, quilt

MATS = TABLES["in"].mats
LONG, SQUARE = TABLES["in"].long_ruler, TABLES["in"].square
ROLL = fabric(form="strip roll", size=CutSize(Fraction(5, 2), Fraction(40)), pack=40)


def steps(*pieces: Piece, **more: Any) -> tuple[CutStep, ...]:
    return planned(*pieces, **more).fabrics["cloth"].steps


def test_edge_strips_ends_and_sub_cuts_in_order() -> None:
    made = steps(piece("A", "2 1/2 square", 40), piece("B", "6 x 4", 12))
    assert [(step.order, step.kind, step.letters) for step in made] == [
        (1, "straighten", ()),
        (2, "strip", ("B",)),
        (3, "trim", ("B",)),
        (4, "subcut", ("B",)),
        (5, "strip", ("A",)),
        (6, "trim", ("A",)),
        (7, "subcut", ("A",)),
    ]


def test_strips_across_the_cloth_folded_once() -> None:
    strip = steps(piece("A", "2 1/2 square", 40))[1]
    assert (strip.times, strip.folds, strip.layers, strip.rulers) == (3, 1, 2, (LONG,))
    assert strip.mat == MATS[1]


def test_pre_cut_strips_are_stacked_in_four_layers_and_trimmed_first() -> None:
    trim, subcut = steps(piece("A", "8 1/2 x 2 1/2", 72), cloth=ROLL)
    assert (trim.kind, trim.times, trim.layers, trim.reason) == ("trim", 18, 4, "stack")
    assert (subcut.per_strip, subcut.total, subcut.layers) == (4, 72, 4)
    assert (subcut.rulers, subcut.mat) == ((SQUARE,), MATS[0])


def test_wide_strips_take_two_rulers_and_wider_ones_a_fold() -> None:
    wide, wider = (steps(piece("A", f"{side} square", 1))[1] for side in (16, 24))
    assert (wide.rulers, wide.measure, wide.folds) == ((LONG, SQUARE), Fraction(16), 1)
    assert (wider.measure, wider.on_fold, wider.folds) == (Fraction(12), True, 2)


def test_long_pieces_leave_the_strip_open() -> None:
    subcut = steps(piece("A", "30 x 3", 4))[-1]
    assert (subcut.length, subcut.measure, subcut.on_fold) == (Fraction(30), Fraction(15), True)


def test_lengths_of_cloth_are_folded_with_parallel_edges() -> None:
    subcut = steps(piece("W", "66 1/2 x 6 1/2", 4, along="length"))[-1]
    assert (subcut.reason, subcut.folds, subcut.measure) == ("long", 2, inches("6 1/2"))


def test_whole_strips_are_not_sub_cut() -> None:
    made = steps(piece("A", "2 1/2 x WOF", runs=(Run("rail", Fraction(39), 7, whole=True),)))
    assert [step.kind for step in made] == ["straighten", "strip", "trim"]


def test_joined_strips() -> None:
    made = steps(piece("A", "54 1/2 x 2 1/2", 4))
    assert [step.kind for step in made] == ["straighten", "strip", "trim", "join", "subcut"]


def test_squares_are_cut_on_the_diagonal_last() -> None:
    last = steps(piece("A", "9 3/4 square", 10, diagonal="twice"))[-1]
    assert (last.kind, last.times, last.per_strip, last.total) == ("diagonal", 3, 4, 12)


def test_pre_cut_squares_used_whole_need_no_cut() -> None:
    squares = fabric(form="squares", size=CutSize(Fraction(5), Fraction(5)), pack=42)
    assert steps(piece("A", "5 square", 42), cloth=squares) == ()


def test_pieces_trimmed_in_a_wider_strip() -> None:
    subcut = steps(piece("A", "2 square", 18), cloth=ROLL)[-1]
    assert (subcut.width, subcut.across) == (inches("2 1/2"), Fraction(2))


def of_strip(*cuts: Cut, length: int = 40, **more: Any) -> Strip:
    return Strip(inches("2 1/2"), Fraction(length), 1, cuts, **more)


def like(letter: str, along: str, number: int, **more: Any) -> Cut:
    return Cut(letter, inches(along), inches("2 1/2"), number, **more)


@pytest.mark.parametrize(
    ("strip", "may"),
    [
        (of_strip(like("A", "8 1/2", 4)), True),  # two from each end
        (of_strip(like("A", "13", 3)), False),  # the middle one lies over the fold
        (of_strip(like("T", "2 1/2", 15)), True),  # eight and seven, 20 in to the fold
        (of_strip(like("J", "16 1/2", 1)), False),  # two would be cut, of which one is wanted
        (of_strip(like("A", "8 1/2", 4), like("C", "4 1/2", 1)), False),
        (of_strip(like("A", "8", 2), like("C", "4", 4)), True),
        (of_strip(like("A", "8 1/2", 4), beside=True), False),
        (of_strip(like("A", "8 1/2", 4), join=Join("straight", Fraction(0), Fraction(80))), False),
    ],
)
def test_a_strip_stays_folded_while_no_piece_lies_over_the_fold(strip: Strip, may: bool) -> None:
    """Own arithmetic: half of each kind of piece on either side of the middle of 40 in."""
    assert folded(by_name["yardage"], strip) is may


def test_pieces_in_pre_cut_squares_are_not_cut_folded() -> None:
    assert not folded(by_name["squares"], of_strip(like("A", "5", 2), length=10))


def test_three_in_a_strip_are_cut_from_open_strips() -> None:
    """13 in three times is 39 of 40: folded, the ruler would cut through the middle one."""
    subcut = steps(piece("A", "13 x 3", 6))[-1]
    assert (subcut.per_strip, subcut.folds, subcut.layers) == (3, 0, 2)


def test_what_lies_above_others_is_cut_too() -> None:
    """Thrifty cutting: under D of 8½ is room for a J of 3½ in a strip 12 in wide."""
    above = Cut("J", inches("16 1/2"), inches("3 1/2"), 2)
    below = Cut("D", inches("18 1/2"), inches("8 1/2"), 2, above=(above,))
    strip = Strip(Fraction(12), Fraction(40), 1, (below,))
    made = cut_steps(quilt(), Cloth(fabric(), Fraction(40)), (strip,), ())
    assert [(step.letters, step.length, step.across) for step in made if step.kind == "subcut"] == [
        (("D",), inches("18 1/2"), inches("8 1/2")),
        (("J",), inches("16 1/2"), inches("3 1/2")),
    ]


@pytest.mark.parametrize("side", ["42 1/2", "48 1/2"])
def test_a_strip_too_wide_to_be_folded_so_often_is_measured_with_a_tape(side: str) -> None:
    """Cloth 60 wide lies folded twice (15 under the ruler of 24). 42½ would take two folds more
    to lie within 18½, the ruler of 6 beside the square of 12½; a blade goes through 8 layers, three
    folds (common practice, no source)."""
    made = quilt(piece("A", f"{side} square", 1), cloth=fabric(width=Fraction(60)))
    evidence = Evidence(made, (), plan(made)[0], plan_sewing(made)[0])
    found = evidence.cutting.fabrics["cloth"].steps
    strip = next(step for step in found if step.kind == "strip")
    assert (strip.reason, strip.folds, strip.layers, strip.measure) == (
        "taped", 2, 4, inches(side),
    )  # fmt: skip
    assert max(step.folds for step in found) <= 3
    assert [one.message for one in replay(evidence)] == []
