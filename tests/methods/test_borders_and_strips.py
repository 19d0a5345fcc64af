"""Pieced borders, coping strips round a panel, and strips that are cut to their place's length."""

from fractions import Fraction
from pathlib import Path

import pytest

from patternbook.quilt.records import LayoutMade
from tests.methods.test_on_point import examined, inches, quilt_of, told

# A printed panel finishing 23 × 41, a coping strip, squares of 3, an outer border of 6. Worked by
# hand: coping finishes 2 all round, 52 squares, 33 × 51; 45 × 63 with the border.
PANEL = """
pattern: Story Window
pieces:
  P: {cut: 23 1/2 x 41 1/2, along: length}
  C: {cut: fit x WOF}
  D: {cut: fit x WOF}
  A: {cut: 3 1/2 square}
units:
  centre: {rows: [P], borders: [{sides: C, ends: D}]}
  side: {columns: [A*15]}
  end: {rows: [A*11]}
top:
  rows: [centre]
  borders: [{sides: side, ends: end}]
"""


@pytest.mark.parametrize(
    ("panel", "sides", "ends"),
    [
        ("23 1/2 x 41 1/2", "2 1/2", "2 1/2"),
        # The panel trimmed to finish 22¼ × 40: strips of 2⅜ and 2½ finished.
        ("22 3/4 x 40 1/2", "2 7/8", "3"),
    ],
)
def test_coping_strips_make_up_the_difference(
    tmp_path: Path, panel: str, sides: str, ends: str
) -> None:
    quilt = quilt_of(tmp_path, PANEL.replace("23 1/2 x 41 1/2", panel))
    assert [quilt.pieces[letter].cut.across for letter in "CD"] == [inches(sides), inches(ends)]
    assert list(quilt.units["top"].finished) == [33, 51]
    assert quilt.pieces["A"].count == 2 * 15 + 2 * 11


def test_blocks_that_do_not_divide_the_side(tmp_path: Path) -> None:
    """Without the coping the panel is 23 + 2 × 3 across: 9 squares are 27, 10 are 30."""
    text = PANEL.replace("rows: [centre]", "rows: [P]").replace("[A*15]", "[A*14]")
    text = text.replace("[A*11]", "[A*9]")
    told_of = {
        one.message for one in examined(tmp_path, text).notices if one.code == "border-blocks"
    }
    assert told_of == {SIDES_TOLD, ENDS_TOLD}


SIDES_TOLD = (
    "the sides of border 1 are side: 14 A of 3 = 42 finished; the edge is 41. Edges that it fits: "
    "39 (13 A) or 42 (14 A). A plain strip round the inside can make up the difference."
)
ENDS_TOLD = (
    "the ends of border 1 are end: 9 A of 3 = 27 finished; the edge is 29. Edges that it fits: "
    "27 (9 A) or 30 (10 A). A plain strip round the inside can make up the difference."
)


# A strip in a row is as long as its place: bars of 6, 9 and 12, and one across the whole.
BARS = """
pattern: Bars
pieces:
  A: {cut: 6 1/2 square}
  B: {cut: 6 1/2 x 9 1/2}
  S: {cut: 2 1/2 x WOF}
top:
  rows: [A S A, S/right, B S B, S/right]
"""


def test_a_strip_is_cut_to_the_length_of_its_place(tmp_path: Path) -> None:
    quilt = quilt_of(tmp_path, BARS)
    runs = {run.length: run.number for run in quilt.pieces["S"].runs}
    assert runs == {inches("6 1/2"): 1, inches("9 1/2"): 1, inches("14 1/2"): 2}
    assert list(quilt.units["top"].finished) == [14, 6 + 2 + 9 + 2]


def test_a_strip_that_nothing_measures_is_told(tmp_path: Path) -> None:
    text = BARS.replace("[A S A, S/right, B S B, S/right]", "[S]")
    assert [one[0] for one in told(tmp_path, text, "not-fixed")] == ["error"]


SASHED = """
pattern: Sashed
pieces:
  G: {cut: 10 1/2 square}
  S: {cut: 2 1/2 x WOF}
  T: {cut: 3 1/2 x WOF}
  K: {cut: 2 1/2 x 3 1/2}
top: {rows: [G], across: 3, down: 4, sashing: {sash: S, cross: T%s}}
"""


@pytest.mark.parametrize(
    ("more", "sashes", "crosses", "size"),
    [
        # 2 × 4 sashes of 10½; 3 that run the whole width of 34½.
        ("", (8, "10 1/2"), (3, "34 1/2"), ("34", "49")),
        # With stones the cross sashes are as long as a block: 3 × 3 of them.
        (", stones: K", (8, "10 1/2"), (9, "10 1/2"), ("34", "49")),
        # With a ring: 4 × 4 sashes, 5 × 3 cross sashes, 4 × 5 stones.
        (", stones: K, round: yes", (16, "10 1/2"), (15, "10 1/2"), ("38", "55")),
        (", round: yes", (16, "10 1/2"), (5, "38 1/2"), ("38", "55")),
    ],
)
def test_sashes_from_strips(
    tmp_path: Path,
    more: str,
    sashes: tuple[int, str],
    crosses: tuple[int, str],
    size: tuple[str, str],
) -> None:
    text = SASHED % more
    if "stones" not in more:
        text = text.replace("  K: {cut: 2 1/2 x 3 1/2}\n", "")
    quilt = quilt_of(tmp_path, text)
    for letter, (number, length) in (("S", sashes), ("T", crosses)):
        runs = [(run.number, run.length) for run in quilt.pieces[letter].runs]
        assert runs == [(number, inches(length))]
    assert list(quilt.units["top"].finished) == list(map(Fraction, size))


def test_a_border_for_one_size_only(tmp_path: Path) -> None:
    text = """
pattern: Only
sizes: {small: {finished: 12 square}, large: {finished: 16 square}}
pieces:
  A: {cut: 6 1/2 square}
  F: {cut: 2 1/2 x WOF}
top:
  rows: [A A, A A]
  borders: [{strip: F, only: large}]
"""
    quilts = examined(tmp_path, text).quilts
    made = {size: quilt.units["top"].made for size, quilt in quilts.items()}
    assert {
        size: len(unit.borders) for size, unit in made.items() if isinstance(unit, LayoutMade)
    } == {"small": 0, "large": 1}
