"""Cloth that is narrower, washed, one-way or of another form than the pattern takes it to be.

The numbers in brackets are rows of the trade facts; every source stands beside its check.
"""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from patternbook.cutting.backing import backing_plan
from patternbook.cutting.fabric import Wanted, cut_fabric
from patternbook.cutting.instead import substitutes
from patternbook.cutting.narrower import narrower
from patternbook.cutting.one_way import one_way
from patternbook.cutting.plan import plan
from patternbook.cutting.records import Instead
from patternbook.quilt.records import Backing, Binding, Piece, Quilt, Settings
from tests.cutting.small import cut, fabric, inches, piece, planned, quilt, strip
from tests.cutting.test_buying import SQUARES_A_YARD
from tests.support import Run, WritePattern

NO_SPARE = Settings(spare=Fraction(0))


def wanted(of: Quilt, **more: Any) -> Wanted:
    """All letters of the fabric `cloth`, each with strips of its own."""
    hosts: tuple[tuple[Piece, tuple[Piece, ...]], ...] = tuple(
        (one, ()) for one in of.pieces.values()
    )
    return replace(Wanted(of.fabrics["cloth"], hosts), **more)


def at_narrower(of: Quilt, **more: Any) -> dict[Fraction, tuple[Fraction | None, bool]]:
    """The amounts at each narrower width, and whether the plan holds."""
    asked = wanted(of, **more)
    found = narrower(of, asked, cut_fabric(of, asked).plan)
    return {one.width: (one.amount, one.holds) for one in found}


# ---- narrower cloth


@pytest.mark.parametrize("side", SQUARES_A_YARD)
def test_a_yard_does_at_the_widths_that_a_printed_table_says(side: str) -> None:
    """(11.A) alandacraft.com (2020): as many squares as a yard of 42 gives still come off a yard
    of narrower cloth just where the table has as many."""
    table = dict(zip((39, 40, 41, 42), SQUARES_A_YARD[side], strict=True))
    squares = quilt(
        piece("A", f"{side} square", table[42]),
        cloth=fabric(width=Fraction(42)),
        settings=NO_SPARE,
    )
    found = at_narrower(squares)
    assert list(found) == [41, 40, 39]
    for width, (amount, _) in found.items():
        assert amount is not None
        assert (amount <= 1) == (table[int(width)] >= table[42])


def test_a_printed_pattern_that_fails_at_40() -> None:
    """(11.9) Strips cut 40½ long pass at 40½ and more, not at 40: twocraftywomen.blogspot.com,
    "Easy quilt pattern" (2010)."""
    sashes = quilt(piece("S", "5 1/2 x 40 1/2", 5, join="none"), cloth=fabric(width=Fraction(42)))
    found = at_narrower(sashes)
    assert found == {41: (Fraction(7, 8), True), 40: (None, False), 39: (None, False)}


def test_a_strip_set_gives_fewer_slices_on_narrower_cloth(run: Run, pattern: WritePattern) -> None:
    """Own sum: 16 slices of 2½ from 40, 15 from 39; 32 slices are 2 sets or 3. Strips of 2½:
    2 × 2½ + 3 = 8 in, ¼ yd; 3 × 2½ + 3 = 10½, ⅜ yd."""
    source = pattern("""
pattern: Slices
settings: {spare: 3}
fabrics: {dark: {use: one}, light: {use: other}}
pieces:
  A: {fabric: dark, cut: 2 1/2 x WOF}
  B: {fabric: light, cut: 2 1/2 x WOF}
units:
  pair: {method: strip set, from: A B, segment: 2 1/2}
top: {rows: [pair], across: 4, down: 8}
""")
    cloth = run("figures", source, "--json", "--full").json()["sizes"]["one"]["materials"]["dark"]
    assert cloth["buy"]["amount"] == "1/4"
    assert cloth["narrower"] == [{"width": "39", "buy": "3/8", "holds": False}]


def test_backing_from_narrower_cloth() -> None:
    """Own sum: 67 × 78 from two panels across takes 78 + 1 = 79 of two widths, 39½ each, 134 in,
    3¾ yd, and ¼ yd for the squares. Of cloth 39 wide two lengths do, 156 in, 4½ yd."""
    backed = quilt(
        piece("A", "5 square", 4),
        finished="59 x 70",
        cloth=fabric(width=Fraction(42)),
        backing=Backing("cloth"),
    )
    made = backing_plan(backed)
    assert made is not None
    assert at_narrower(backed, backing=made) == {
        41: (Fraction(4), True),
        40: (Fraction(4), True),
        39: (inches("4 3/4"), False),
    }


# ---- shrinkage


def test_six_in_the_hundred() -> None:
    """(11.1) 80 squares of 2½: 12½ in, with 6 % 13¼, so ⅜ yd: "How to figure yardage for a
    quilt", featheredstar.wordpress.com. Divided by 1 − 6⁄100 and up to the ruler's mark: 13⅜."""
    shrunk = replace(NO_SPARE, shrinkage=Fraction(6))
    buy = planned(piece("A", "2 1/2 square", 80), settings=shrunk).fabrics["cloth"].buy
    assert (buy.needed, buy.amount) == (inches("13 3/8"), Fraction(3, 8))
    assert buy.spare == inches("0 1/8")  # 13½ less 6 % is 12.69, 12⅝ on the ruler


@pytest.mark.parametrize(("shrinkage", "yards"), [(0, "3 1/8"), (3, "3 1/4")])
def test_wide_backing_before_and_after_washing(shrinkage: int, yards: str) -> None:
    """(3.5) 103 × 110 from cloth of 108: 110 in are 3.05 yd, bought 3⅛; ⅛ more for shrinkage:
    teacherscollegesj.org, "How many yards of fabric do I need for quilt backing?" """
    rules = Settings(shrinkage=Fraction(shrinkage))
    backed = quilt(
        finished="95 x 102",
        cloth=fabric(form="wide backing", width=Fraction(108)),
        settings=rules,
        backing=Backing("cloth"),
    )
    buy = plan(backed)[0].fabrics["cloth"].buy
    assert buy.amount == inches(yards)


WIDE = """
pattern: Wide
settings: {{{settings}}}
sizes: {{one: {{finished: 60 x 75}}}}
fabrics: {{front: {{use: blocks}}, back: {{use: backing, form: wide backing}}}}
pieces: {{A: {{fabric: front, cut: 15 1/2 square}}}}
top: {{rows: [A], across: 4, down: 5}}
backing: {{fabric: back, over: 4}}
"""


def test_wide_backing_needs_no_seam(run: Run, pattern: WritePattern) -> None:
    """Own sum: 68 × 83 lies across 106 either way; 68 in are 1.89 yd, bought 2."""
    path = pattern(WIDE.format(settings="spare: 3"))
    assert run("check", path).code == 0
    backing = run("figures", path, "--json").json()["sizes"]["one"]["backing"]
    assert (backing["panels"], backing["buy"]["amount"]) == (1, "2")


def test_no_cloth_shrinks_by_half(run: Run, pattern: WritePattern) -> None:
    """(12.2) 3 to 10 in the hundred, flannel more: melgeecrafts.com; quiltingboard.com 2656851."""
    ran = run("check", pattern(WIDE.format(settings="shrinkage: 50%")))
    assert ran.code == 1
    assert "absurd-size" in ran.err


# ---- other forms


def instead(of: Quilt, **more: Any) -> dict[tuple[str, Fraction | None], Instead]:
    """What would do, by form and width."""
    asked = wanted(of, **more)
    found = substitutes(of, asked, cut_fabric(of, asked).plan)
    return {(one.form, one.size.across if one.size else None): one for one in found}


def test_half_strips_from_fat_quarters() -> None:
    """(4.10) 7 strips of 2½ per fat quarter, 80 half strips from 12: quiltingboard.com, "Fat
    quarter conversion", t222332."""
    quarters = instead(quilt(piece("A", "2 1/2 x 21", 80)))["fat quarter", Fraction(18)]
    assert (quarters.number, quarters.bound) == (12, 12)


@pytest.mark.parametrize(
    ("side", "yards"),
    [
        # (4.6) 8 five-inch squares to a strip: 42 are 6 strips, 30 in, ⅞ yd;
        # 4 ten-inch squares to a strip: 42 are 11 strips, 110 in, 3⅛ yd:
        # "Precuts to yardage", anniesattic.com.
        (5, "7/8"),
        (10, "3 1/8"),
    ],
)
def test_a_pack_of_squares_off_the_bolt(side: int, yards: str) -> None:
    pack = fabric(form="squares", size=cut(f"{side} square"), pack=42)
    found = instead(quilt(piece("A", f"{side} square", 42), cloth=pack, settings=NO_SPARE))
    assert found["yardage", None].amount == inches(yards)


def test_squares_from_ten_inch_squares() -> None:
    """Own sum: four of 5 in from one of 10; 30 from eight, and none of 6 in from a 5."""
    found = instead(quilt(piece("A", "5 square", 30)))
    assert found["squares", Fraction(10)].number == 8
    assert found["squares", Fraction(5)].number == 30
    assert ("squares", Fraction(5)) not in instead(quilt(piece("A", "6 square", 30)))


def test_strips_only_for_what_fits_them() -> None:
    """Own sum: 16 squares of 2½ to a strip of 40; none of 3."""
    roll = "strip roll", Fraction(5, 2)
    assert instead(quilt(piece("A", "2 1/2 square", 80)))[roll].number == 5
    assert roll not in instead(quilt(piece("A", "3 square", 80)))


def test_each_print_from_quarters_of_its_own() -> None:
    """Own sum: 60 squares of 5 from six prints are ten each; 3 × 4 = 12 lie on a quarter."""
    found = instead(quilt(piece("A", "5 square", 60), cloth=fabric(prints=6)))
    assert found["fat quarter", Fraction(18)].number == 6


def test_nothing_is_offered_that_would_need_more_joins() -> None:
    """A border of 50 in is joined from strips of 40; from quarters of 21 it would be scraps."""
    border = strip("F", "3", ("50", 4))
    assert instead(quilt(border)) == {}
    assert instead(quilt(piece("A", "2 1/2 x 30", 4))).keys() == {("strip roll", Fraction(5, 2))}


def test_binding_from_quarters_and_strips_but_not_from_squares() -> None:
    bound = quilt(finished="36 x 42", binding=Binding("cloth", Fraction(5, 2)))
    assert {form for form, _ in instead(bound, bound=True)} == {"strip roll", "fat quarter"}


def test_backing_is_not_cut_from_pre_cuts() -> None:
    backed = quilt(piece("A", "5 square", 4), finished="36 x 42", backing=Backing("cloth"))
    assert instead(backed, backing=backing_plan(backed)) == {}


# ---- prints that have one way up


def test_one_way_cloth_is_reckoned_apart(run: Run, pattern: WritePattern) -> None:
    """Own sum: 12 oblongs 4 × 9 lie ten to a strip 9 wide, upright, or four to a strip 4 wide,
    lying: 3 × 4 + 3 = 15 in, ½ yd, against 2 × 9 + 3 = 21, ⅝ yd."""
    source = pattern("""
pattern: Upright
settings: {spare: 3}
fabrics: {ground: {use: all}}
pieces: {A: {fabric: ground, cut: 4 x 9}}
top: {rows: [A], across: 6, down: 2}
""")
    cloth = run("figures", source, "--json", "--full").json()["sizes"]["one"]["materials"]["ground"]
    assert (cloth["buy"]["amount"], cloth["one_way"]) == ("1/2", "5/8")


def test_cloth_that_is_one_way_already_has_no_second_amount() -> None:
    made = quilt(piece("A", "4 x 9", 12), cloth=fabric(one_way=True), top=None)
    asked = wanted(made)
    assert one_way(made, asked, cut_fabric(made, asked).plan) is None
