"""Many kits in one plan: each bag gets what one kit needs, and all take no more cloth than each by
itself (hypothesis, and sums by hand). Recounted here from the strips alone."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.cutting.kits import kits
from patternbook.cutting.kits_bag import Bagged, bag
from patternbook.cutting.kits_plan import KitsPlan, plan_kits
from patternbook.cutting.plan import plan
from patternbook.cutting.records import BINDING, Cut, CuttingPlan, FabricPlan, Strip
from patternbook.proof.kits import kits as recount
from patternbook.quilt.records import Backing, Batting, Binding, Piece, Quilt, Settings
from tests.booklet.small import demo
from tests.cutting.small import codes, fabric, inches, piece, quilt, strip
from tests.cutting.small import cut as cut_size

eighths = st.integers(8, 200).map(lambda number: Fraction(number, 8))
counts = st.integers(1, 120)
numbers = st.integers(1, 60)
diagonals = st.sampled_from([None, "once", "twice"])


def planned(made: Quilt, number: int) -> KitsPlan:
    return plan_kits(made, number, plan(made)[0])


def packed(number: int, *pieces: Piece, **more: Any) -> KitsPlan:
    return planned(quilt(*pieces, **more), number)


def cloth(made: CuttingPlan) -> FabricPlan:
    return made.fabrics["cloth"]


def cut(made: CuttingPlan, letter: str) -> int:
    return sum(one.pieces(letter) for one in cloth(made).strips)


def strips(made: CuttingPlan, letter: str) -> int:
    return sum(one.times for one in cloth(made).strips if letter in one.letters)


# ---- laws


@given(eighths, eighths, counts, diagonals, numbers)
def test_every_bag_gets_its_pieces(
    across: Fraction, down: Fraction, count: int, diagonal: Any, number: int
) -> None:
    size = f"{across} x {down}" if diagonal is None else f"{across} square"
    made = packed(number, piece("A", size, count, diagonal=diagonal))
    each = {None: 1, "once": 2, "twice": 4}[diagonal]
    assert cut(made.all, "A") == -(-count * number // each)
    assert strips(made.all, "A") <= number * strips(made.one, "A")


@given(st.lists(st.tuples(eighths, counts), min_size=1, max_size=5), numbers)
def test_together_never_more_than_each_by_itself(
    sizes: list[tuple[Fraction, int]], number: int
) -> None:
    """Letters that share strips: first fit alone would now and then take more."""
    first, *others = (
        piece(letter, f"{along} x 2 1/2", count, strip_width="2 1/2")
        for letter, (along, count) in zip("ABCDE", sizes, strict=False)
    )
    made = packed(number, first, *(replace(one, host="A", strip_width=None) for one in others))
    single, many = cloth(made.one), cloth(made.all)
    assert many.length <= number * single.length
    assert (many.buy.amount or 0) <= number * (single.buy.amount or 0)
    for letter, (_, count) in zip("ABCDE", sizes, strict=False):
        assert cut(made.all, letter) == number * count
    for one in many.strips:
        assert sum(one_cut.taken for one_cut in one.cuts) <= one.length


@given(st.integers(20, 160), st.integers(1, 8), st.integers(1, 30), numbers)
def test_border_strips_are_whole_and_each_kits_own(
    length: int, pieces: int, squares: int, number: int
) -> None:
    """Joined or not, with squares cut from what they leave or from strips of their own."""
    border = strip("B", "3 1/2", (str(length), pieces))
    alone = packed(number, border)
    assert strips(alone.all, "B") == number * strips(alone.one, "B")
    assert cloth(alone.all).length == number * cloth(alone.one).length
    shared = packed(number, border, piece("C", "3 1/2 square", squares, host="B"))
    assert cut(shared.all, "C") == number * squares
    assert cloth(shared.all).length <= number * cloth(shared.one).length


@given(numbers)
def test_one_kit_is_the_patterns_own_plan_and_no_number_changes_it(number: int) -> None:
    made = quilt(piece("A", "4 1/2 square", 30), binding=Binding("cloth", inches("2 1/2")),
                 finished="40 x 50")  # fmt: skip
    one = plan(made)[0]
    assert plan_kits(made, 1, one).all is one
    assert plan_kits(made, number, one).one == one


# ---- by hand


@pytest.mark.parametrize(("number", "wanted"), [(1, 18), (2, 35), (3, 53), (10, 175)])
def test_strips_for_all_pieces_by_the_handbooks_sum(number: int, wanted: int) -> None:
    """Strips are pieces ÷ pieces to a strip, rounded up once: 140 squares of 4 1/2 from cloth 40
    wide take 18 (http://www.modernquiltingbyb.com/2015/02/single-block-quilt-tutorial-series.html
    with 40 for its 42), and so 1400 take 175 and not 180."""
    made = packed(number, piece("A", "4 1/2 square", 140))
    assert strips(made.all, "A") == wanted
    assert strips(made.one, "A") == 18


def test_where_first_fit_takes_more_each_kit_is_cut_by_itself() -> None:
    """22 + 8 + 6 + 4 fill one strip of 40. Of two kits pooled, two 8 go beside the first 22, two 6
    beside the second, and only one 4 finds room there: three strips, where two do."""
    lengths = {"A": 22, "B": 8, "C": 6, "D": 4}
    made = quilt(*(
        piece(letter, f"{along} x 2 1/2", 1, host=None if letter == "A" else "A")
        for letter, along in lengths.items()
    ))  # fmt: skip
    one = plan(made)[0]
    assert cloth(plan(kits(made, 2, one))[0]).length == inches("7 1/2")
    both = plan_kits(made, 2, one)
    assert cloth(both.all).length == 5
    assert [(one.times, one.letters) for one in cloth(both.all).strips] == [(2, tuple("ABCD"))]
    assert both.all.letters["A"].cuts == 2


def test_joined_strips_with_guests_keep_the_last_one_for_them() -> None:
    """Two lengths of 50 joined (straight, 1/2 a seam): three strips make 119, 100 of them for B,
    so 21 of the last strip; 19 are left, for five squares of 3 1/2."""
    border = strip("B", "3 1/2", ("50", 2), join="straight")
    made = packed(4, border, piece("C", "3 1/2 square", 5, host="B"))
    assert [(one.times, one.letters) for one in cloth(made.all).strips] == [
        (8, ("B",)),
        (4, ("B", "C")),
    ]
    (line, squares) = bag(quilt(border, piece("C", "3 1/2 square", 5, host="B")), made.one)
    assert (line.number, line.last) == (3, Fraction(21))
    assert squares.number == 5


def test_the_binding_is_each_kits_own() -> None:
    """2 × (60 + 72) + 10 = 274; seven strips of 40 joined make 265 and eight 302 1/2."""
    made = packed(
        12, piece("A", "4 1/2 square", 8), binding=Binding("cloth", inches("2 1/2")),
        finished="60 x 72",
    )  # fmt: skip
    assert strips(made.all, BINDING) == 12 * 8
    assert made.all.yields[BINDING] == 12 * 8


def test_backings_come_off_one_bolt() -> None:
    """A quilt of 54 × 66 with 4 over takes two lengths of 62: 124 inches, 3 1/2 yards (to the
    next quarter). Ten: 1240 inches, 34 1/2 yards and not 35."""
    made = packed(10, piece("A", "4 1/2 square", 8), finished="54 x 66", backing=Backing())
    assert made.one.backing
    assert made.all.backing
    assert (made.one.backing.best.amount, made.all.backing.best.amount) == (
        inches("3 1/2"),
        inches("34 1/2"),
    )
    assert (made.all.backing.best.panels, made.all.backing.best.each) == (20, Fraction(62))


def test_a_backing_of_a_cloth_that_is_cut_too_is_bought_with_it() -> None:
    more = {"finished": "54 x 66", "backing": Backing("cloth")}
    made = packed(10, piece("A", "4 1/2 square", 80), **more)
    # 100 strips of 4 1/2 and 3 spare are 453 inches, 12 5/8 yards; the backings 34 1/2.
    assert cloth(made.all).buy.amount == inches("12 5/8") + inches("34 1/2")
    assert [(one.what, one.strips) for one in cloth(made.all).buy.lines] == [
        ("A", 100),
        ("backing", 20),
    ]


def test_what_the_pattern_states_to_buy_is_for_one() -> None:
    stated = fabric(stated_yards=Fraction(5))
    made = packed(10, piece("A", "4 1/2 square", 80, stated_strips=11), cloth=stated)
    assert cloth(made.one).buy.amount == 5
    # 800 squares, 8 to a strip: 450 inches and 3 spare.
    assert (cloth(made.all).buy.amount, cloth(made.all).buy.stated) == (inches("12 5/8"), False)


def test_packs_are_opened_for_all_kits() -> None:
    """Six strips a kit, forty to a pack: ten kits take two packs and not ten."""
    roll = fabric(form="strip roll", size=cut_size("2 1/2 x WOF"), pack=40)
    made = packed(10, piece("A", "2 1/2 x 6 1/2", 33, strip_width="2 1/2"), cloth=roll)
    assert (cloth(made.one).buy.number, cloth(made.one).buy.packs) == (6, 1)
    assert (cloth(made.all).buy.number, cloth(made.all).buy.packs) == (55, 2)


def test_battings_are_packages_or_lengths_off_one_roll() -> None:
    """A quilt of 40 × 50 with 4 over: 48 × 58, in a package of 72 × 90; off a roll 60 wide a
    length of 48, 1 3/8 yards. Three lengths are 144 inches, 4 yards."""
    made = packed(3, piece("A", "4 1/2 square", 8), finished="40 x 50", batting=Batting())
    assert made.one.batting
    assert made.all.batting == replace(made.one.batting, packs=3)
    roll = Batting(width=Fraction(60))
    made = packed(3, piece("A", "4 1/2 square", 8), finished="40 x 50", batting=roll)
    assert made.one.batting
    assert made.one.batting.roll
    assert made.one.batting.roll.amount == inches("1 3/8")
    assert made.all.batting
    assert made.all.batting.roll
    assert (made.all.batting.roll.panels, made.all.batting.roll.amount) == (3, Fraction(4))


def test_bias_squares_are_cut_together() -> None:
    """One square a kit, one to a strip of 40 where it is over 20: six strips either way; of
    squares of 18 for a smaller quilt two lie side by side, so three strips do for six."""
    bias = Binding("cloth", inches("2 1/4"), bias=True)
    for finished, taken in (("40 x 50", 6), ("20 x 26", 3)):
        made = quilt(piece("A", "4 1/2 square", 8), binding=bias, finished=finished)
        kitted = planned(made, 6)
        (line,) = (line for line in bag(made, kitted.one) if line.letter == BINDING)
        assert line.number == 1
        assert (line.size.across > 20) == (taken == 6)
        assert (cut(kitted.all, BINDING), strips(kitted.all, BINDING)) == (6, taken)
        assert list(recount(made, 6, kitted.one, kitted.all)) == []


def test_kits_have_no_spare_cloth_to_let_into_the_backing() -> None:
    """44 × 54 is by itself one length and a strip of what is left of five yards; ten kits that
    are cut together leave no such strip for each, so theirs are of whole lengths."""
    letter, stated = piece("A", "4 1/2 square", 8), fabric(stated_yards=Fraction(5))
    more: dict[str, Any] = {"finished": "36 x 46", "cloth": stated}
    made = quilt(letter, backing=Backing(pieced=True), **more)
    single = plan(made)[0]
    assert single.backing
    assert single.backing.best.insert
    ten, whole = planned(made, 10), planned(quilt(letter, backing=Backing(), **more), 10)
    assert (ten.one, ten.all) == (whole.one, whole.all)
    assert list(recount(made, 10, ten.one, ten.all)) == []


def test_what_is_in_a_bag() -> None:
    made = quilt(
        piece("A", "3 7/8 square", 15, diagonal="once", spare=1),
        strip("B", "2 1/2", ("30", 2)),
        strip("C", "2 1/2", ("50", 4)),
        binding=Binding("cloth", inches("2 1/4")),
        finished="40 x 50",
    )
    lines = {line.letter: line for line in bag(made, plan(made)[0])}
    assert (lines["A"].number, lines["A"].diagonal) == (16, "once")
    assert (lines["B"].kind, lines["B"].number, lines["B"].join) == ("strips", 2, None)
    # Four of 50: 200, and six strips joined make 6 × 40 − 5 × 2 1/2 = 227 1/2 (five make 190).
    assert (lines["C"].kind, lines["C"].number, lines["C"].join) == ("strips", 6, "diagonal")
    assert isinstance(lines[BINDING], Bagged)
    assert lines[BINDING].number == 5


# ---- other styles, whole patterns, and plans that are wrong


@pytest.mark.parametrize("style", ["shared", "thrifty"])
def test_in_another_style_border_lengths_are_cut_to_their_length(style: Any) -> None:
    """What the planner lays beside other letters is cut to length, in every kit alike."""
    made = quilt(
        strip("B", "2 1/2", ("24", 4)),
        piece("A", "2 1/2 x 15", 4),
        settings=Settings(cutting=style),
    )
    one = plan(made, full=True)[0]
    many = plan_kits(made, 5, one)
    assert cloth(many.all).style == style
    assert cut(many.all, "B") == 20
    assert cut(many.all, "A") == 20
    assert (cloth(many.all).buy.amount or 0) <= 5 * (cloth(one).buy.amount or 0)
    assert list(recount(made, 5, one, many.all)) == []


@pytest.mark.parametrize("number", [1, 2, 7, 100])
@pytest.mark.parametrize("name", ["late-returns", "tea-at-four", "porch-left-lit", "pear-thief",
                                  "one-good-picture", "cut-before-you-worry"])  # fmt: skip
def test_the_recount_finds_no_fault_in_the_patterns(name: str, number: int) -> None:
    for known in demo(name).sizes.values():
        made = plan_kits(known.quilt, number, known.cutting)
        assert [str(one) for one in recount(known.quilt, number, made.one, made.all)] == []


def wrong(made: KitsPlan, *strips: Strip, length: Fraction | None = None) -> CuttingPlan:
    right = cloth(made.all)
    planned = replace(right, strips=strips, length=right.length if length is None else length)
    return replace(made.all, fabrics={"cloth": planned})


def test_a_wrong_plan_is_refused() -> None:
    one = quilt(piece("A", "4 1/2 square", 20))
    made = planned(one, 4)
    full, *rest = cloth(made.all).strips
    assert (full.times, rest) == (10, [])

    def told(other: CuttingPlan) -> list[str]:
        """What only kits can have; the plan is carried out as any other too."""
        found = codes(recount(one, 4, made.one, other))
        return [code for code in found if code.startswith("kits-")]

    assert codes(recount(one, 4, made.one, made.all)) == []
    assert told(wrong(made, replace(full, times=9))) == ["kits-pieces"]
    assert told(wrong(made, replace(full, times=11))) == ["kits-pieces"]
    assert told(wrong(made, full, length=Fraction(60))) == ["kits-cloth"]
    tight = replace(full, times=8, cuts=(Cut("A", inches("4 1/2"), inches("4 1/2"), 10),))
    assert told(wrong(made, tight)) == ["kits-strip"]
    high = replace(full, cuts=(Cut("A", inches("4 1/2"), Fraction(5), 8),))
    assert told(wrong(made, high)) == ["kits-strip"]
