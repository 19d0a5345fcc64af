"""Blocks set on point: sizes of triangles, counts, places and rows.

Numbers in brackets are rows of the trade facts; what is printed by a source is not computed here.
"""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternbook.edition.pipeline import Examined, examine
from patternbook.exact import ROOT2, Exact
from patternbook.proof.shapes import area
from patternbook.quilt.records import LayoutMade, Quilt
from patternbook.quilt.slanting import seams_between
from patternbook.sewing.records import LinesStep, LineStep

FEW = st.integers(1, 5)


def source(block: str, across: int, down: int, triangles: str = "", more: str = "") -> str:
    return f"""
pattern: On Point
pieces:
  A: {{cut: {block} square}}
  S: {{diagonal: twice{triangles}}}
  K: {{diagonal: once}}
top:
  setting: on point
  rows: [A]
  across: {across}
  down: {down}
  side-triangle: S
  corner-triangle: K
{more}"""


def examined(folder: Path, text: str) -> Examined:
    path = folder / "pattern.yaml"
    path.write_text(text, "utf-8")
    return examine(path, "pattern.yaml")


def quilt_of(folder: Path, text: str) -> Quilt:
    made = examined(folder, text)
    assert not made.failed, [str(notice) for notice in made.notices]
    return made.quilts["one"]


def told(folder: Path, text: str, code: str) -> list[tuple[str, str | None, str | None]]:
    """Severity, stated and needed of every notice of one code."""
    found = examined(folder, text).notices
    return [(one.severity, one.stated, one.needed) for one in found if one.code == code]


def inches(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


# Golden 5 (5.19): squares for side and corner triangles by the finished block, rounded up to an
# eighth, "Quilt blocks set on point", http://lukas.is-a-geek.org/tani/chart.htm
CHART = {
    5: ("8 3/8", "4 1/2"),
    6: ("9 3/4", "5 1/8"),
    7: ("11 1/4", "5 7/8"),
    8: ("12 5/8", "6 5/8"),
    9: ("14", "7 1/4"),
    10: ("15 1/2", "8"),
    11: ("16 7/8", "8 3/4"),
    12: ("18 1/4", "9 3/8"),
    13: ("19 3/4", "10 1/8"),
    14: ("21 1/8", "10 7/8"),
    15: ("22 1/2", "11 1/2"),
    16: ("23 7/8", "12 1/4"),
}


@pytest.mark.parametrize("block", CHART)
def test_the_chart_of_setting_triangles(tmp_path: Path, block: int) -> None:
    """All 24 cells but one: blocks of 16 want 24, for √2 is more than the chart's 1.414."""
    quilt = quilt_of(tmp_path, source(f"{block} 1/2", 2, 2))
    side, corner = (inches(number) for number in CHART[block])
    assert quilt.pieces["S"].cut.across == (24 if block == 16 else side)
    assert quilt.pieces["K"].cut.across == corner


def test_where_the_charts_root_is_too_small_it_is_said_why(tmp_path: Path) -> None:
    assert told(tmp_path, source("16 1/2", 2, 2), "root-two") == [("advice", None, "24")]
    assert told(tmp_path, source("12 1/2", 2, 2), "root-two") == []


def test_the_charts_own_cut_is_let_pass_where_it_just_fits(tmp_path: Path) -> None:
    """16√2 + ¼(2 + 2√2) = 23.834 is sewn; the chart's 23 7/8 is more, if less than the rule's."""
    text = source("16 1/2", 2, 2, ", cut: 23 7/8 square")
    assert told(tmp_path, text, "root-two") == [("advice", "23 7/8", "24")]
    assert told(tmp_path, text, "setting-triangle") == []


# (5.20) A chart rounded to quarters, whose 14 and 20 fall short: "Piecing a quilt on point",
# http://phoebemoon.com/tutorials/on-point.htm
@pytest.mark.parametrize(
    ("block", "cut", "needed"),
    [("14 1/2", "21", "21 1/8"), ("17 1/2", "25 1/4", "25 3/8"), ("20 1/2", "29 1/2", "29 5/8")],
)
def test_squares_cut_too_small(tmp_path: Path, block: str, cut: str, needed: str) -> None:
    text = source(block, 2, 2, f", cut: {cut} square")
    assert told(tmp_path, text, "setting-triangle") == [("error", cut, needed)]


@pytest.mark.parametrize(("block", "cut"), [("15 1/2", "22 1/2"), ("10 1/2", "15 1/2")])
def test_the_same_chart_where_it_suffices(tmp_path: Path, block: str, cut: str) -> None:
    assert not examined(tmp_path, source(block, 2, 2, f", cut: {cut} square")).failed


# (5.24) A printed magazine quilt: squares of 18 3/4 for a block finishing 11 7/8, to be trimmed,
# https://issuu.com./freespiritfabrics/docs/kfc_august_2023_inspiration/s/28978552
def test_larger_squares_are_trimmed(tmp_path: Path) -> None:
    text = source("12 3/8", 4, 5, ", cut: 18 3/4 square")
    quilt = quilt_of(tmp_path, text)
    assert quilt.pieces["S"].cut.across == inches("18 3/4")
    assert told(tmp_path, text, "setting-triangle-large") == []
    much = source("12 3/8", 4, 5, ", cut: 19 1/4 square")
    assert told(tmp_path, much, "setting-triangle-large") == [("advice", "19 1/4", "18 1/8")]


# (5.23) 35 blocks set straight 5 × 7 are 32 set on point 4 × 5,
# https://apqs.com/reference-chart-for-squares-on-point; 14 side triangles: the source of 5.24
def test_how_many_blocks_and_triangles(tmp_path: Path) -> None:
    pieces = quilt_of(tmp_path, source("6 1/2", 4, 5)).pieces
    assert [pieces[letter].count for letter in "ASK"] == [32, 14, 4]


def test_which_way_the_triangles_are_cut(tmp_path: Path) -> None:
    """The straight grain on the outer edge: common practice, no source."""
    text = source("6 1/2", 3, 4).replace("twice", "once")
    assert [one[0] for one in told(tmp_path, text, "bias-edge")] == ["error"]
    text = source("6 1/2", 3, 4).replace("K: {diagonal: once}", "K: {diagonal: twice}")
    assert [one[0] for one in told(tmp_path, text, "bias-edge")] == ["error"]


@pytest.mark.parametrize(
    ("right", "wrong", "code"),
    [
        ("rows: [A]", "rows: [A A, A]\n  between: [A]", "on-point-rows"),
        ("rows: [A]", "columns: [A]", "on-point-rows"),
        ("rows: [A]", "rows: [A]\n  sashing: {sash: A}", "on-point-rows"),
        ("cut: 6 1/2 square", "cut: 6 1/2 x 7", "on-point-square"),
        ("rows: [A]", "rows: [A]\n  between: [B]", "on-point-size"),
        ("  side-triangle: S\n", "", "no-setting-triangle"),
        ("corner-triangle: K", "corner-triangle: A", "no-setting-triangle"),
    ],
)
def test_what_cannot_be_set_on_point(tmp_path: Path, right: str, wrong: str, code: str) -> None:
    text = source("6 1/2", 3, 4).replace("  S:", "  B: {cut: 6 square}\n  S:")
    if code == "on-point-rows":
        text = text.replace("  across: 3\n", "") if "A A" in wrong else text
    assert right in text
    found = told(tmp_path, text.replace(right, wrong), code)
    assert [one[0] for one in found] == ["error"]


# ---- places


@settings(max_examples=20)
@given(across=FEW, down=FEW, eighths=st.integers(5, 100))
def test_blocks_and_triangles_fill_the_top(
    tmp_path_factory: pytest.TempPathFactory, across: int, down: int, eighths: int
) -> None:
    """m·n + (m−1)(n−1) blocks, 2(m+n−2) sides and 4 corners come to m·d × n·d in area."""
    folder = tmp_path_factory.mktemp("filled")
    block = Fraction(eighths, 8)
    text = source(f"{(block + Fraction(1, 2))}", across, down)
    if across == down == 1:
        text = text.replace("  S: {diagonal: twice}\n", "").replace("  side-triangle: S\n", "")
    quilt = quilt_of(folder, text)
    top = quilt.units["top"]
    assert list(top.finished) == [block * ROOT2 * across, block * ROOT2 * down]
    counts = [sum(part.part == letter for part in top.placed) for letter in "ASK"]
    assert counts == [across * down + (across - 1) * (down - 1), 2 * (across + down - 2), 4]
    covered = sum((area(part.outline) for part in top.placed if part.outline), Exact(0))
    assert covered == top.finished.across * top.finished.down


@settings(max_examples=20)
@given(across=FEW, down=FEW)
def test_rows_on_the_slant(
    tmp_path_factory: pytest.TempPathFactory, across: int, down: int
) -> None:
    """There are m + n − 1 rows; every block is in one of them, every triangle at an end."""
    if across == down == 1:
        return
    quilt = quilt_of(tmp_path_factory.mktemp("rows"), source("6 1/2", across, down))
    made = quilt.units["top"].made
    assert isinstance(made, LayoutMade)
    assert len(made.lines) == across + down - 1
    for line in made.lines:
        triangles = [number for number, part in enumerate(line.parts) if part.part == "S"]
        assert set(triangles) <= {0, len(line.parts) - 1}
        assert line.across == len(line.parts) * Exact(6)
    # Rows meet along whole blocks: twice as many sides as blocks, less those on triangles.
    *between, a, b, c, d = seams_between(made)
    assert {a, b, c, d} == {Exact(6)}
    blocks, sides = quilt.pieces["A"].count, quilt.pieces["S"].count
    joined = sum(len(line.parts) - 1 for line in made.lines)
    sewn = sum(between, Exact(0)) / 6 + joined + 4
    assert sewn == (4 * blocks + 2 * sides + 4) / Fraction(2)


def test_the_steps_of_a_small_top(tmp_path: Path) -> None:
    """3 × 4 blocks in 6 rows: rows 1 and 6 alike, and 2 and 5; the corners come last."""
    made = examined(tmp_path, source("6 1/2", 3, 4)).sizes["one"].sewing
    lines = [step for step in made.steps if isinstance(step, LineStep)]
    assert [step.numbers for step in lines] == [(1, 6), (2, 5), (3,), (4,)]
    assert [step.triangles for step in lines] == [2, 2, 1, 1]
    assert [step.measure.across for step in lines] == [inches(w) for w in TOLD]
    last = made.steps[-1]
    assert isinstance(last, LinesStep)
    assert (last.corners, last.seams, last.parts[0]) == ("K", 5 + 4, ("K", 4, 4))


TOLD = ("6 1/2", "18 1/2", "30 1/2", "30 1/2")


def test_seams_that_meet_between_rows_on_the_slant(tmp_path: Path) -> None:
    """Edges of 3, 5, 6, 5 and 3 blocks: one place fewer on each; pressed in turn, all nest."""
    made = examined(tmp_path, source("6 1/2", 3, 4)).sizes["one"].sewing
    last = made.steps[-1]
    assert (last.matches, last.same_way) == (2 + 4 + 5 + 4 + 2, 0)


def test_a_border_goes_round_blocks_on_point(tmp_path: Path) -> None:
    """2 × 6√2 across: the ends are cut to that, two seams and two borders of 2 more."""
    more = "  borders: [{strip: F}]\n"
    text = source("6 1/2", 2, 3, more=more).replace("  S:", "  F: {cut: 2 1/2 x WOF}\n  S:")
    made = quilt_of(tmp_path, text).units["top"].made
    assert isinstance(made, LayoutMade)
    border = made.borders[0]
    assert border.side_length == 18 * ROOT2 + Fraction(1, 2)
    assert border.end_length == 12 * ROOT2 + Fraction(9, 2)
