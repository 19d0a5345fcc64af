"""Sizes and counts worked out from a source: what follows, what is doubted, what is blamed."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from patternbook.inch import plain
from patternbook.quilt.records import CutSize, LayoutMade, StripSetMade
from tests.quilt.support_quilt import told, worked_out

F = Fraction


def test_a_fit_bar_takes_the_width_of_the_quilt(tmp_path: Path) -> None:
    made = worked_out(
        tmp_path,
        """\
        pattern: Bars
        sizes: {crib: {finished: 36 x 42}}
        pieces: {A: {cut: fit x 2 1/2}}
        top: {rows: [A], down: 21}
        """,
    )
    assert made.sizes["crib"].pieces["A"].cut == CutSize(F(73, 2), F(5, 2))
    assert made.sizes["crib"].pieces["A"].count == 21
    assert [n.code for n in made.notices] == ["on-trust"]


def test_rows_repeat_until_the_layout_is_full(tmp_path: Path) -> None:
    """The checker of the handbook: odd cells give one kind one more (32 and 31)."""
    made = worked_out(
        tmp_path,
        """\
        pattern: Checker
        sizes: {crib: {finished: 42 x 54}}
        pieces: {A: {cut: 6 1/2 square}, P: {cut: 6 1/2 square}}
        top: {rows: [A P, P A], across: 7, down: 9}
        """,
    )
    pieces = made.sizes["crib"].pieces
    assert (pieces["A"].count, pieces["P"].count) == (32, 31)
    assert not made.notices


def test_a_strip_set_counts_whole_sets(tmp_path: Path) -> None:
    """Rail fence, 42 blocks: six slices of 6½ from 40 in, so seven sets."""
    made = worked_out(
        tmp_path,
        """\
        pattern: Rails
        sizes: {crib: {finished: 36 x 42}}
        pieces: {A: {cut: 2 1/2 x WOF}, B: {cut: 2 1/2 x WOF}, C: {cut: 2 1/2 x WOF}}
        units: {rail: {method: strip set, from: A B C, segment: 6 1/2}}
        top: {rows: [rail rail/right, rail/right rail], across: 6, down: 7}
        """,
    )
    rail = made.sizes["crib"].units["rail"].made
    assert isinstance(rail, StripSetMade)
    assert (rail.fits, rail.sets, plain(rail.set_width)) == (6, 7, "6 1/2")
    assert not told(made)


def test_a_part_may_be_turned_a_quarter(tmp_path: Path) -> None:
    made = worked_out(
        tmp_path,
        """\
        pattern: Turned
        sizes: {one: {finished: 18 x 12}}
        pieces: {A: {cut: 6 1/2 x 12 1/2}, B: {cut: 12 1/2 x 6 1/2}}
        units: {pair: {rows: [B, B]}}
        top: {rows: [A pair]}
        """,
    )
    assert not told(made)
    turned = worked_out(
        tmp_path,
        """\
        pattern: Turned
        sizes: {one: {finished: 12 x 12}}
        pieces: {A: {cut: 12 1/2 x 6 1/2}}
        top: {rows: [A/right A/left]}
        """,
    )
    assert not told(turned)


# Butted borders, a guild's lesson: 32½ × 44 raw, borders cut 1½, 2½, then 4½ with corner squares:
# sides 44, ends 34½; 46 and 38½; 50 and 38½ (https://oldmvc.villageserver.com/4Bs_Oct.html).
BORDERS = """\
pattern: Three borders
width: 52
sizes: {one: {finished: 46 x 57 1/2}}
pieces:
  P: {cut: 32 1/2 x 44}
  A: {cut: 1 1/2 x WOF}
  B: {cut: 2 1/2 x WOF}
  C: {cut: 4 1/2 x WOF}
  K: {cut: 4 1/2 square}
top:
  rows: [P]
  borders: [{strip: A}, {strip: B}, {strip: C, stones: K}]
"""


def test_butted_borders_grow_from_the_inside_out(tmp_path: Path) -> None:
    made = worked_out(tmp_path, BORDERS)
    top = made.sizes["one"].units["top"].made
    assert isinstance(top, LayoutMade)
    lengths = [(plain(b.side_length), plain(b.end_length)) for b in top.borders]
    assert lengths == [("44", "34 1/2"), ("46", "38 1/2"), ("50", "38 1/2")]
    after = [(plain(b.after.across), plain(b.after.down)) for b in top.borders]
    assert after == [("34 1/2", "46"), ("38 1/2", "50"), ("46 1/2", "58")]
    assert not told(made)


def test_ends_may_be_sewn_first(tmp_path: Path) -> None:
    text = BORDERS.replace("{strip: A}", "{strip: A, first: ends}")
    top = worked_out(tmp_path, text).sizes["one"].units["top"].made
    assert isinstance(top, LayoutMade)
    first = top.borders[0]
    assert (first.first, plain(first.side_length), plain(first.end_length)) == (
        "ends",
        "46",
        "32 1/2",
    )


# 4 × 5 blocks with outer sashing: 30 cornerstones, 49 sashes (a quilter's own formulas,
# http://susanintexas.blogspot.com/2009/02/quilt-math-algorithms-for-cornerstones.html).
def test_sashes_and_cornerstones_are_counted_with_the_outer_ring(tmp_path: Path) -> None:
    made = worked_out(
        tmp_path,
        """\
        pattern: Lattice
        sizes: {one: {finished: 58 x 72}}
        pieces: {G: {cut: 12 1/2 square}, S: {cut: 2 1/2 x 12 1/2}, T: {cut: 2 1/2 square}}
        top: {rows: [G], across: 4, down: 5, sashing: {sash: S, stones: T, round: yes}}
        """,
    )
    pieces = made.sizes["one"].pieces
    assert (pieces["S"].count, pieces["T"].count) == (49, 30)
    assert not told(made)


CASES = [
    pytest.param(
        "pieces: {A: {cut: 10 1/2 x 4 1/2}, B: {cut: 2 x 6}, C: {cut: 3 x 6}}\n"
        "units: {house: {rows: [A, B C B C B], make: 12}}",
        "row-length",
        "row 2 of house comes to 9½: 3 B 4½ + 2 C 5; row 1 of house to 10: A 10; short by ½.",
        "Cut C 3 1/4 x 6, or A 10 x 4 1/2.",
        id="a row half an inch short",
    ),
    pytest.param(
        "pieces: {A: {cut: 4 1/2 square}}\n"
        "units: {tide: {rows: [A A, A A], measure: 8 1/2 square, finished: 9 square}}",
        "unit-finished",
        "tide is 8 wide: 2 A 8, and 8 long: 2 A 8; 9 is stated, 1 too much.",
        "Write 8 square, or leave it out and it is worked out.",
        id="finished is not measured",
    ),
    pytest.param(
        "sizes: {one: {finished: 12 x 12}}\n"
        "pieces: {A: {cut: fit x 6 1/2}, B: {cut: 4 1/2 x 6 1/2}}\ntop: {rows: [A A B, A B]}",
        "no-room",
        "A would have to finish 0 in width: its place is too small for it; top is 4 = 2 A 0 + B 4.",
        "One letter has one size everywhere: use another letter, or make its neighbours shorter.",
        id="one letter in two sizes",
    ),
    pytest.param(
        "pieces: {A: {cut: fit x 2 1/2}, B: {cut: 2 1/2 square}}\nunits: {a: {rows: [A B]}}",
        "not-fixed",
        "nothing fixes the width of A.",
        "State A's cut, or what the unit it is sewn into finishes.",
        id="nothing fixes a length",
    ),
    pytest.param(
        "pieces: {A: {cut: 2 1/2 square}}\nunits: {a: {rows: [b A]}, b: {rows: [a A]}}",
        "made-from-itself",
        "'a' is made from itself.",
        "A unit may use only parts that can be made before it.",
        id="a unit made from itself",
    ),
    pytest.param(
        "pieces: {A: {cut: 2 1/2 square}}\nunits: {row: {rows: [A Z2]}}",
        "unknown-part",
        "nothing is called 'Z2'.",
        "Known parts: A, row.",
        id="a letter that is not cut",
    ),
    pytest.param(
        "sizes: {one: {finished: 6 x 2}}\n"
        "pieces: {A: {cut: 2 1/2 square}, D: {cut: 2 1/2 square}}\ntop: {rows: [A A A]}",
        "never-sewn",
        "D is cut but never sewn.",
        "Place it in a unit, or leave the piece out.",
        id="a piece that is never sewn",
    ),
    pytest.param(
        "sizes: {one: {finished: 6 x 2}}\n"
        "pieces: {A: {cut: 2 1/2 square, count: 4}}\ntop: {rows: [A A A]}",
        "count",
        "count of A: 4 stated, 3 sewn: 3 × 1 top = 3.",
        "Write 3, or leave it out and it is counted.",
        id="one piece too many",
    ),
    pytest.param(
        "sizes: {one: {finished: 10 x 2}}\npieces: {A: {cut: fit x 2 1/2}}\ntop: {rows: [A A A]}",
        "off-ruler",
        "A fits at a width of 3 5⁄6, which no ruler shows.",
        "Change a size beside it so that it comes out at 3 3/4 or 3 7/8.",
        id="a third of an inch",
    ),
    pytest.param(
        "pieces: {A: {cut: 2 1/2 square}}\nunits: {a: {rows: [A], columns: [A]}}",
        "rows-and-columns",
        "'a' has both rows and columns; the columns are not read.",
        "Keep one of the two.",
        id="rows and columns at once",
    ),
    pytest.param(
        "pieces: {A: {cut: 2 1/2 square}}\nunits: {row: {rows: [A*many]}}",
        "no-number",
        "'A*many': this size has no number called 'many'.",
        "Add `many: …` to the size.",
        id="a number that the size lacks",
    ),
]


@pytest.mark.parametrize(("text", "code", "message", "hint"), CASES)
def test_a_fault_names_both_sides_and_a_way_out(
    tmp_path: Path, text: str, code: str, message: str, hint: str
) -> None:
    notices = told(worked_out(tmp_path, "pattern: Fault\n" + text))
    found = [(notice.message, notice.hint) for notice in notices if notice.code == code]
    assert (message, hint) in found, [str(notice) for notice in notices]
    assert all(notice.marks for notice in notices)


def test_the_row_that_differs_from_most_is_blamed(tmp_path: Path) -> None:
    made = worked_out(
        tmp_path,
        """\
        pattern: Odd one out
        pieces: {A: {cut: 3 1/2 square}, B: {cut: 4 x 3 1/2}}
        units: {block: {rows: [A B, A A, A A, A A], make: 1}}
        """,
    )
    blamed = [notice.message.split(" of ")[0] for notice in told(made)]
    assert blamed == ["row 1"]
