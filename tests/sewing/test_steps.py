"""The steps of small quilts, each number beside what it comes from."""

from collections import Counter
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import Exact
from patternbook.quilt.build import quilts
from patternbook.quilt.joins import crossings, matches
from patternbook.quilt.place import patches
from patternbook.quilt.records import CutSize, LayoutMade, Quilt, Settings, Sides
from patternbook.sewing.plan import plan
from patternbook.sewing.records import (
    BorderStep,
    LinesStep,
    LineStep,
    PieceStep,
    SegmentStep,
    SewingPlan,
    Step,
    StripStep,
)
from patternbook.source.load import load
from tests.sewing.hand import Hand, bricks, grid

KINDS = Path(__file__).parent.parent / "data" / "kinds"
FEW = st.integers(1, 5)


def inches(across: str, down: str) -> Sides:
    return Sides(*(Exact(sum(map(Fraction, side.split()))) for side in (across, down)))


def planned(quilt: Quilt) -> SewingPlan:
    made, notices = plan(quilt)
    # like blocks side by side cannot nest, which is told and changes no step
    assert {notice.code for notice in notices} <= {"press-blocks"}
    return made


def order(made: SewingPlan) -> list[str]:
    return [f"{step.number} {step.unit} {step.kind}" for step in made.steps]


def nine_patch() -> Hand:
    """Two sets; 2 × 3 blocks of nine squares, 3 finished each."""
    hand = Hand(A=(3, None), B=(3, None))
    hand.strips("outer", "A B A", 3, per_set=11, sets=2, press="toward A")
    hand.strips("inner", "B A B", 3, per_set=11, press="toward A")
    hand.rows("nine", "outer", "inner", "outer")
    return hand.rows("top", "nine nine", "nine nine", "nine nine")


def test_a_nine_patch_from_strips_to_top() -> None:
    made = planned(nine_patch().quilt())
    assert order(made) == [
        "1 outer strips",
        "2 outer segments",
        "3 inner strips",
        "4 inner segments",
        "5 nine lines",
        "6 top line",
        "7 top lines",
    ]
    assert [step.make for step in made.steps] == [2, 12, 1, 6, 6, 3, 1]
    assert [step.number for step in made.steps if step.last] == [2, 4, 5, 7]
    assert dict(made.sewn) == {"A": 2 * 2 + 1, "B": 2 + 2 * 1}
    assert dict(made.joined) == {"outer": 12, "inner": 6, "nine": 6}
    assert dict(made.made) == {"outer": 22, "inner": 11, "nine": 6, "top": 1}


def test_a_set_is_sewn_and_cut() -> None:
    """Three strips cut 3½ make a set 9½ wide: 3 × 3½ - 2 × ½ (seam test of the trade,
    quiltcentric.com: three strips, n × w - (n - 1) × ½)."""
    sew, cut = planned(nine_patch().quilt()).of("outer")
    assert isinstance(sew, StripStep)
    assert isinstance(cut, SegmentStep)
    assert sew.measure == inches("9 1/2", "40")
    assert (sew.parts[0].part, sew.parts[0].one, sew.parts[0].all) == ("A", 2, 4)
    assert (sew.seams, sew.seam_length) == (2, Exact(2 * 2 * 40))
    assert sew.press == ("left", "right")
    assert (cut.segment, cut.per_set, cut.cut, cut.make, cut.spare) == (
        Fraction(7, 2),
        11,
        22,
        12,
        10,
    )
    assert cut.measure == inches("9 1/2", "3 1/2")


def test_a_block_measures_what_its_rows_give_and_has_places_to_match() -> None:
    (block,) = planned(nine_patch().quilt()).of("nine")
    assert isinstance(block, LinesStep)
    assert block.measure == inches("9 1/2", "9 1/2")
    assert (block.matches, block.same_way) == (4, 0)
    assert [(laid.part, laid.times) for laid in block.sequence] == [
        ("outer", 1),
        ("inner", 1),
        ("outer", 1),
    ]


def test_rows_alike_are_one_step_and_say_how_each_is_pressed() -> None:
    row = planned(grid(3, 5).quilt()).steps[0]
    assert isinstance(row, LineStep)
    assert (row.one, row.make, row.numbers) == (5, 5, (1, 2, 3, 4, 5))
    assert [(like.numbers, like.seams[0]) for like in row.pressed] == [
        ((1, 3, 5), "right"),
        ((2, 4), "left"),
    ]
    assert [(taken.one, taken.all) for taken in row.parts] == [(3, 15)]
    assert row.measure == inches("6 1/2", "2 1/2")
    assert row.seam_length == Exact(Fraction(5, 2)) * 2 * 5


def test_columns_of_bars_in_which_nothing_has_to_meet() -> None:
    hand = Hand(A=(8, 2), D=(8, 4), E=(8, 6), S=(4, 20))
    hand.columns("pile", "D A A A A A E").rows("top", "S pile S pile/half S")
    made = planned(hand.quilt())
    pile, top = made.steps
    assert isinstance(pile, LineStep)
    assert (pile.role, pile.make, pile.last) == ("column", 2, True)
    assert [(laid.part, laid.times) for laid in pile.sequence] == [("D", 1), ("A", 5), ("E", 1)]
    assert [round_.all for round_ in pile.rounds] == [4, 2, 2, 2, 2]
    assert top.measure == inches("28 1/2", "20 1/2")
    assert (made.totals.matches, made.totals.seams, made.totals.pieces) == (0, 16, 17)


def test_a_stack_of_single_bars_is_one_step() -> None:
    hand = Hand(A=(36, 2), B=(36, 2)).rows("top", "A", "B", "A")
    (step,) = planned(hand.quilt()).steps
    assert isinstance(step, LinesStep)
    assert [(taken.part, taken.all) for taken in step.parts] == [("A", 2), ("B", 1)]
    assert (step.count, step.last) == (3, True)


def test_sash_rows_are_counted_by_themselves_and_a_long_sash_is_not_a_row_of_work() -> None:
    hand = Hand(B=(6, 6), S=(2, 6), C=(14, 2))
    hand.rows("top", "B S B", "sash: C", "B S B", sashing=("S", None))
    line, lines = planned(hand.quilt()).steps
    assert isinstance(line, LineStep)
    assert isinstance(lines, LinesStep)
    assert (line.role, line.numbers, line.lines) == ("row", (1, 2), (0, 2))
    assert (lines.count, lines.blocks, lines.matches) == (3, 2, 0)
    assert [(taken.part, taken.all) for taken in lines.parts] == [("C", 1)]


def test_borders_go_on_in_pairs_each_with_its_measure() -> None:
    """The sides are as long as the quilt is; the ends as wide as it is with its sides on."""
    made = planned(grid(10, 12, size=3).fabric("edge", "A").border_of((3, None)).quilt())
    sides, ends = made.steps[-2:]
    assert isinstance(sides, BorderStep)
    assert isinstance(ends, BorderStep)
    assert [sides.pair, ends.pair, sides.first, ends.first] == ["sides", "ends", True, False]
    assert (sides.length, ends.length) == (Exact(Fraction(73, 2)), Exact(Fraction(73, 2)))
    assert sides.measure == inches("36 1/2", "36 1/2")
    assert ends.measure == inches("36 1/2", "42 1/2")
    assert (sides.seams, sides.seam_length, sides.matches) == (2, Exact(73), 0)
    assert sides.press == ("left", "right")
    assert not sides.joined
    assert made.sewn["F"] == 4


def test_a_border_longer_than_the_cloth_is_told_to_be_joined() -> None:
    made = planned(grid(14, 14, size=3).border_of((3, None)).quilt())
    assert [step.joined for step in made.steps if isinstance(step, BorderStep)] == [True, True]


def test_cornerstones_are_sewn_to_the_ends_and_nest_with_the_sides() -> None:
    hand = Hand(A=(6, 6), F=(2, None), K=(2, 2)).rows("top", "A")
    sides, ends = planned(hand.border("top", "F", "K").quilt()).steps
    assert isinstance(ends, BorderStep)
    assert [(taken.part, taken.all) for taken in sides.parts] == [("A", 1), ("F", 2)]
    assert [(taken.part, taken.all) for taken in ends.parts] == [("K", 4), ("F", 2)]
    # Four short seams for the stones, 2½ each, and two along the whole width of 10½.
    assert (ends.seams, ends.seam_length) == (6, Exact(4 * Fraction(5, 2) + 2 * Fraction(21, 2)))
    assert (ends.stones, ends.matches, ends.same_way) == ("K", 4, 0)


def test_drift_of_a_row() -> None:
    """An eighth of an inch in every seam is ½ inch in four seams
    (quilted-connections.com/blogs/news/what-is-a-scant-1-4-seam): drift counts both sides."""
    quilt = grid(5, 1).quilt(settings=Settings(drift=Fraction(1, 16)))
    (row,) = planned(quilt).steps
    assert isinstance(row, LineStep)
    assert row.drift == Fraction(1, 2)


def test_notes_stand_at_the_last_step_of_their_unit() -> None:
    hand = grid(2, 2, note="Look from the door.")
    assert [step.note for step in planned(hand.quilt()).steps] == [None, "Look from the door."]


def test_a_fragment_makes_what_the_author_says() -> None:
    hand = Hand(A=(2, 2)).rows("four", "A A", "A A", make=6)
    made = planned(hand.quilt(top=None))
    assert made.steps[-1].make == 6
    assert made.sewn == {"A": 24}
    assert made.finishing == ()


def laid(blocks: list[str]) -> Hand:
    """Blocks of several kinds, all 6 square, in rows of three."""
    hand = Hand(A=(3, 3), B=(2, 6), C=(6, 6), D=(3, None))
    hand.rows("four", "A A", "A A").rows("rail", "B B B")
    hand.strips("pair", "D D", 3, sets=9).columns("twin", "pair pair/half")
    rows = [" ".join(blocks[at : at + 3]) for at in range(0, len(blocks), 3)]
    return hand.rows("top", *rows)


BLOCKS = st.tuples(
    st.sampled_from(["four", "rail", "twin", "C"]),
    st.sampled_from(["", "/right", "/half", "/left", "/mirror", "/mirror/left"]),
).map("".join)


@given(st.lists(BLOCKS, min_size=3, max_size=12).filter(lambda blocks: len(blocks) % 3 == 0))
def test_joining_and_geometry_find_the_same_places_to_match(blocks: list[str]) -> None:
    made, _ = plan(laid(blocks).quilt())
    assert made.totals.matches == matches(patches(laid(blocks).quilt(), "top"))


@given(st.lists(BLOCKS, min_size=3, max_size=12).filter(lambda blocks: len(blocks) % 3 == 0))
def test_what_the_steps_sew_is_what_lies_in_the_top(blocks: list[str]) -> None:
    quilt = laid(blocks).quilt()
    made, _ = plan(quilt)
    lies = Counter(patch.letter for patch in patches(quilt, "top"))
    assert {letter: made.sewn[letter] for letter in "ABC"} == {x: lies[x] for x in "ABC"}
    assert made.joined["pair"] * 2 == lies["D"]


@given(FEW, FEW)
def test_the_seams_of_a_grid_are_one_fewer_than_its_squares(across: int, down: int) -> None:
    totals = planned(grid(across, down).quilt()).totals
    assert totals.seams == across * down - 1
    assert totals.thread == totals.seam_length * Fraction(23, 8)


def test_bricks_have_nothing_to_match() -> None:
    assert planned(bricks(6, 14).quilt()).totals.matches == 0


def test_every_step_says_what_it_leaves() -> None:
    """The lines of a layout, joined, are as long as their parts less the seams between."""

    def holds(step: Step, quilt: Quilt) -> bool:
        unit = quilt.units[step.unit]
        return not step.last or step.measure == unit.measure

    quilt = nine_patch().quilt()
    assert isinstance(quilt.units["top"].made, LayoutMade)
    assert all(holds(step, quilt) for step in planned(quilt).steps)


def inner_matches(quilt: Quilt) -> int:
    """The places of the top where seams must meet. On its outer edge the points of two triangles
    may come together; nothing has to be matched for that."""
    assert quilt.finished is not None
    across, down = quilt.finished
    met = crossings(patches(quilt, quilt.top or ""))
    return sum(x not in (0, across) and y not in (0, down) for x, y in met)


def spare(quilt: Quilt, made: SewingPlan) -> int:
    """Places matched in units that are made and not sewn on."""
    steps = [step for step in made.steps if isinstance(step, PieceStep)]
    return sum(step.spare * matches(patches(quilt, step.unit)) for step in steps)


@pytest.mark.parametrize("file", sorted(KINDS.glob("*.yaml")), ids=lambda file: file.stem)
def test_all_kinds_agree_with_geometry(file: Path) -> None:
    """As far as a kind can be worked out by now."""
    source, _ = load(file, file.name)
    assert source is not None
    for quilt in quilts(source.written).sizes.values():
        made, notices = plan(quilt)
        assert not [notice for notice in notices if notice.severity == "error"]
        if quilt.top:
            assert made.totals.matches - spare(quilt, made) == inner_matches(quilt)
            assert made.totals.pieces == len(patches(quilt, quilt.top))
            assert all(made.made[unit] >= of.make for unit, of in quilt.units.items())


def test_a_strip_roll_is_as_long_as_its_strips() -> None:
    hand = grid(10, 10, size=2).fabric(
        "roll", "A", form="strip roll", size=CutSize(Fraction(5, 2), Fraction(20))
    )
    made = planned(hand.border_of((2, None), fabric="roll").quilt())
    assert all(step.joined for step in made.steps if isinstance(step, BorderStep))
