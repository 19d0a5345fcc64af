"""Pieces laid by hand, and small quilts with lengths of cloth, stacks and pre-cuts: what can be cut
and what cannot."""

from dataclasses import replace
from fractions import Fraction
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternbook.cutting.records import Cut, Strip, Style
from patternbook.proof.replay import replay
from patternbook.proof.replay.apart import knots
from patternbook.proof.replay.lay import Lies
from patternbook.quilt.records import CutSize, Quilt
from tests.cutting.small import fabric, piece, quilt
from tests.proof.spoiled import Case, codes, evidence_of

# Left, top, right, bottom of each piece; common practice, no source.
ROWS = [(0, 0, 6, 3), (6, 0, 9, 3), (9, 0, 10, 2)]
STACK = [(0, 0, 6, 3), (0, 3, 5, 6), (6, 0, 9, 6)]
UPON = [(0, 0, 6, 3), (5, 0, 9, 3)]
UNDER = [(0, 0, 6, 3), (0, 2, 6, 5)]
TWO_OVER_ONE = [(0, 0, 6, 3), (0, 3, 3, 6), (3, 3, 6, 6)]
# Four round a fifth, each past the end of the next: no cut goes right across.
PINWHEEL = [(0, 0, 4, 2), (4, 0, 6, 4), (2, 4, 6, 6), (0, 2, 2, 6), (2, 2, 4, 4)]


def pieces(boxes: list[tuple[int, int, int, int]]) -> list[Lies]:
    return [Lies("A", *box) for box in boxes]


@pytest.mark.parametrize("boxes", [ROWS, STACK])
def test_pieces_that_are_cut_apart(boxes: list[tuple[int, int, int, int]]) -> None:
    for order in permutations(pieces(boxes)):
        assert list(knots(order)) == []


@pytest.mark.parametrize(("boxes", "upon"), [
    (UPON, True), (UNDER, True), (TWO_OVER_ONE, False), (PINWHEEL, False),
])  # fmt: skip
def test_pieces_that_are_not(boxes: list[tuple[int, int, int, int]], *, upon: bool) -> None:
    for order in permutations(pieces(boxes)):
        (knot,) = knots(order)
        assert (knot.upon is not None) is upon


LONG = Fraction(81, 2)


def bordered() -> Quilt:
    """Two long borders beside blocks, in cloth of 42."""
    border = piece("B", "4 1/2 x 60 1/2", 2, along="length")
    blocks = piece("A", "6 1/2 square", 30)
    return quilt(border, blocks, piece("C", "3 1/2 x 5", 24), cloth=fabric(width=Fraction(42)))


def only(made: Quilt, style: Style) -> Case:
    evidence = evidence_of(made, style)
    (plan,) = evidence.cutting.fabrics.values()
    return Case("cloth", evidence, plan)


@pytest.mark.parametrize("style", ["plain", "shared", "thrifty"])
def test_lengths_and_what_lies_beside_them(style: Style) -> None:
    assert codes(only(bordered(), style).evidence) == set()


def test_a_strip_beside_lengths_lies_in_what_they_leave() -> None:
    """Of 42 the two borders take 9; strips beside them are 33 long, and together no wider than
    the borders are long."""
    case = only(bordered(), "shared")
    beside = [n for n, strip in enumerate(case.plan.strips) if strip.beside]
    assert beside
    assert case.plan.strips[beside[0]].length == 33

    def changed(**more: object) -> set[str]:
        strips = list(case.plan.strips)
        strips[beside[0]] = replace(strips[beside[0]], **more)  # type: ignore[arg-type]
        return codes(case.with_plan(replace(case.plan, strips=tuple(strips))))

    assert "cut-outside" in changed(length=Fraction(34))
    assert "cut-outside" in changed(times=20)
    assert "cut-outside" in changed(beside=False)


# Three of 6 long in a strip of 9 wide, and over them what the test says.
OVER = [
    # along, number, columns of the base; told
    ("6", 3, set()),
    ("4", 3, set()),
    ("7", 3, {"cut-overlap"}),  # the second lies on the first
    ("6", 4, {"cut-overlap"}),  # the fourth lies on the next cut
]


@pytest.mark.parametrize(("along", "number", "told"), OVER)
def test_what_lies_over_a_cut_keeps_to_its_columns(along: str, number: int, told: set[str]) -> None:
    over = Cut("B", Fraction(along), Fraction(3), number)
    base = Cut("A", Fraction(6), Fraction(6), 3, above=(over,))
    beside = Cut("C", Fraction(9), Fraction(9), 1)
    strip = Strip(Fraction(9), Fraction(40), 1, (base, beside))
    made = quilt(
        piece("A", "6 square", 3), piece("B", f"{along} x 3", number), piece("C", "9 square", 1)
    )
    case = only(made, "plain")
    plan = replace(case.plan, strips=(strip,), steps=(), length=Fraction(9), bound=Fraction(9))
    found = {one.code for one in replay(case.with_plan(plan))} - {"cut-steps"}
    assert found == told


def test_one_way_cloth_keeps_its_pieces_upright() -> None:
    made = quilt(piece("A", "3 x 5", 10), cloth=fabric(one_way=True))
    case = only(made, "plain")
    (strip,) = case.plan.strips
    (cut,) = strip.cuts
    assert (cut.along, cut.across) == (Fraction(3), Fraction(5))
    assert codes(case.evidence) == set()
    lying = replace(cut, along=cut.across, across=cut.along)
    plan = replace(case.plan, strips=(replace(strip, cuts=(lying,)),))
    assert "cut-turned" in codes(case.with_plan(plan))


def test_strips_lie_in_the_pieces_that_are_sold() -> None:
    size = CutSize(Fraction(10), Fraction(10))
    cloth = fabric(form="squares", size=size, pack=42)
    case = only(quilt(piece("A", "5 square", 8), cloth=cloth), "plain")
    assert codes(case.evidence) == set()
    (sheet,) = case.plan.sheets
    for larger in (replace(sheet, across=Fraction(12)), replace(sheet, down=Fraction(9))):
        told = codes(case.with_plan(replace(case.plan, sheets=(larger,))))
        assert "cut-outside" in told


SIDES = st.integers(2, 26).map(lambda halves: f"{halves // 2}{' 1/2' if halves % 2 else ''}")


@st.composite
def lists_of_pieces(draw: st.DrawFn) -> Quilt:
    """One to five kinds of pieces from one cloth, some of them along its length."""
    kinds = draw(st.lists(st.tuples(SIDES, SIDES, st.integers(1, 40)), min_size=1, max_size=5))
    letters = [
        piece(letter, f"{across} x {down}", number)
        for letter, (across, down, number) in zip("ABCDE", kinds, strict=False)
    ]
    if draw(st.booleans()):
        letters.append(piece("L", f"{draw(SIDES)} x 50", draw(st.integers(1, 3)), along="length"))
    cloth = fabric(one_way=draw(st.booleans()), width=Fraction(draw(st.sampled_from([40, 42]))))
    return quilt(*letters, cloth=cloth)


STYLES: tuple[Style, ...] = ("plain", "shared", "thrifty")


@given(lists_of_pieces())
@settings(max_examples=15)  # each is planned in every style, and from pre-cuts too
def test_planners_and_the_replay_agree(made: Quilt) -> None:
    for style in STYLES:
        assert codes(evidence_of(made, style)) == set()


def test_a_list_that_a_planner_fell_over() -> None:
    """Found by the property above: from fat quarters of 18 × 21 a sheet of nothing was tried."""
    made = quilt(
        piece("A", "4 x 6 1/2", 27), piece("B", "6 1/2 square", 1), piece("C", "6 1/2 square", 7)
    )
    assert codes(evidence_of(made, "shared")) == set()
