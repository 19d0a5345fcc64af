"""Hexagons over papers: sizes, counts, places, and rows that do not interlock."""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternbook.exact import ROOT3, Exact
from patternbook.proof.shapes import area
from patternbook.quilt.records import LayoutMade
from patternbook.sewing.records import LinesStep
from tests.methods.test_on_point import examined, quilt_of, told

# Flat to flat s√3, from point to point 2s: common practice, no source. Two sizes worked by hand:
# 14 × 20 with a side of 1½ are 36.4 × 45¾, 270 and 20 halves; 22 × 29 are 57.2 × 66, 624 and 28.
SOURCE = """
pattern: Hexagons
sizes: {one: {across: 14}}
pieces:
  H: {template: hexagon, side: 1 1/2, cut: 3 3/4 square}
  N: {template: half hexagon, side: 1 1/2, cut: 3 3/4 square}
top:
  setting: hexagons
  rows:
    - H*across
    - N H*(across - 1) N/half
  down: 20
"""


@pytest.mark.parametrize(
    ("across", "down", "wide", "long", "whole", "halves"),
    [(14, 20, "36.37", "45.75", 270, 20), (22, 29, "57.16", "66.00", 624, 28)],
)
def test_the_two_sizes_worked_by_hand(
    tmp_path: Path, across: int, down: int, wide: str, long: str, whole: int, halves: int
) -> None:
    text = SOURCE.replace("across: 14", f"across: {across}").replace("down: 20", f"down: {down}")
    quilt = quilt_of(tmp_path, text)
    assert [f"{float(side):.2f}" for side in quilt.units["top"].finished] == [wide, long]
    assert [quilt.pieces[letter].count for letter in "HN"] == [whole, halves]


@settings(max_examples=20)
@given(across=st.integers(2, 6), down=st.integers(1, 6), eighths=st.integers(4, 32))
def test_hexagons_fill_their_own_edge(
    tmp_path_factory: pytest.TempPathFactory, across: int, down: int, eighths: int
) -> None:
    """The area of the hexagons is that within the pointed outline; none lies over another."""
    side = Fraction(eighths, 8)
    text = SOURCE.replace("across: 14", f"across: {across}").replace("down: 20", f"down: {down}")
    text = text.replace("1 1/2", str(side)).replace("cut: 3 3/4", "cut: 12")
    if down == 1:
        text = "\n".join(line for line in text.splitlines() if "N" not in line)
    made = examined(tmp_path_factory.mktemp("hexagons"), text)
    assert not [str(one) for one in made.notices if one.severity == "error"]
    top = made.quilts["one"].units["top"]
    assert isinstance(top.made, LayoutMade)
    assert top.made.edge is not None
    covered = sum((area(part.outline) for part in top.placed if part.outline), Exact(0))
    assert covered == area(top.made.edge)
    # A hexagon's area is 3√3/2 s²: whole ones and halves.
    worth = sum(2 if part.part == "H" else 1 for part in top.placed)
    assert covered == worth * ROOT3 * 3 * side * side / 4


def test_nothing_has_to_match_and_papers_come_out(tmp_path: Path) -> None:
    made = examined(tmp_path, SOURCE).sizes["one"].sewing
    assert made.totals.matches == 0
    last = made.steps[-1]
    assert isinstance(last, LinesStep)
    assert (last.papers, last.press, last.seams) == (True, (), 19)
    # Two sides for every hexagon across, in 19 seams between rows.
    assert last.seam_length == 19 * 28 * Fraction(3, 2)


@pytest.mark.parametrize(
    ("right", "wrong", "code"),
    [
        ("N H*(across - 1) N/half", "H*across", "hexagon-rows"),
        ("N H*(across - 1) N/half", "N H*(across - 1) N", "hexagon-rows"),
        ("N H*(across - 1) N/half", "N H*across N/half", "row-length"),
        ("  down: 20", "  down: 20\n  borders: [{strip: B}]", "hexagon-rows"),
        ("N H*(across - 1)", "N B*(across - 1)", "hexagon-rows"),
        ("half hexagon, side: 1 1/2", "half hexagon, side: 2", "hexagon-side"),
    ],
)
def test_what_does_not_lie_together(tmp_path: Path, right: str, wrong: str, code: str) -> None:
    assert right in SOURCE
    text = SOURCE.replace(right, wrong).replace("  N:", "  B: {cut: 2 x WOF}\n  N:")
    assert [one[0] for one in told(tmp_path, text, code)] == ["error"]
