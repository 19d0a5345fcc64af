"""Mitred corners: how long the strips are cut, how they lie, and what cannot be mitred.

Numbers in brackets are rows of the trade facts.
"""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternbook.exact import ROOT2, Exact
from patternbook.proof.shapes import area
from patternbook.quilt.records import Border, LayoutMade
from tests.methods.test_on_point import examined, inches, quilt_of, told

SIDES = st.integers(12, 90)
WIDTHS = st.integers(1, 12)


def source(across: str, down: str, borders: str, more: str = "F: {cut: 7 1/2 x WOF}") -> str:
    return f"""
pattern: Mitred
width: 100
pieces:
  P: {{cut: {across} x {down}, along: length}}
  {more}
top: {{rows: [P], borders: [{borders}]}}
"""


def borders(folder: Path, text: str) -> tuple[Border, ...]:
    made = quilt_of(folder, text).units["top"].made
    assert isinstance(made, LayoutMade)
    return made.borders


# Golden 9 (5.32): a top of 50 × 60, borders of 1 + 2 1/2 + 3 1/2 sewn on as one: strips of 65 and
# 75, https://www.quiltingboard.com/main-f1/printfriendly-calculating-required-border-lengths-multiple-borders-mitered-corners-t168402.html
def test_a_mitred_border_is_cut_x_and_twice_y_and_one(tmp_path: Path) -> None:
    (border,) = borders(tmp_path, source("50 1/2", "60 1/2", "{strip: F, corners: mitred}"))
    assert [border.end_length, border.side_length] == [65, 75]
    assert list(border.after) == [inches("64 1/2"), inches("74 1/2")]


# Golden 9 (5.30) with its corners mitred: each strip reaches along the outer edge and ½ in further
# than the measure that the same guild lesson gives for that border; the lengths: computed.
def test_three_borders_mitred_one_after_another(tmp_path: Path) -> None:
    strips = "A: {cut: 1 1/2 x WOF}\n  B: {cut: 2 1/2 x WOF}\n  C: {cut: 4 1/2 x WOF}"
    listed = ", ".join(f"{{strip: {letter}, corners: mitred}}" for letter in "ABC")
    made = borders(tmp_path, source("32 1/2", "44", listed, strips))
    measures = [("34 1/2", "46"), ("38 1/2", "50"), ("46 1/2", "58")]
    assert [list(border.after) for border in made] == [list(map(inches, two)) for two in measures]
    for border in made:
        assert border.side_length == border.after.down + Fraction(1, 2)
        assert border.end_length == border.after.across + Fraction(1, 2)


# (5.34) 20 in of cloth 42 wide for mitred borders round a top of 56: four lengths of 68 are 272.
# Six strips of 3 are 252 and short; seven of 2 3/4 are 294 and enough,
# https://jmncreativeendeavours.ca/2022/04/18/
SHORT = """
pattern: A Border That Does Not Fit
width: 42
settings: {joins: not counted}
pieces:
  P: {cut: 56 square}
  F: {cut: 3 x WOF, strips: 6}
top:
  rows: [P]
  borders: [{strip: F, corners: mitred, side-length: 68, end-length: 68}]
"""


def test_the_mitred_border_that_does_not_fit(tmp_path: Path) -> None:
    found = [one for one in examined(tmp_path, SHORT).notices if one.code == "strips-short"]
    assert [(one.stated, one.needed) for one in found] == [("6", "7")]
    assert "272" in found[0].message
    assert "252" in found[0].message
    assert "short by 20" in found[0].message


def test_narrower_strips_and_one_more_of_them_do(tmp_path: Path) -> None:
    text = SHORT.replace("3 x WOF, strips: 6", "2 3/4 x WOF, strips: 7")
    assert told(tmp_path, text, "strips-short") == []
    assert 7 * inches("2 3/4") <= 20
    assert 4 * 68 <= 7 * 42 == 294


def test_a_length_of_her_own_is_obeyed_where_it_is_enough(tmp_path: Path) -> None:
    """Writers differ (5.32): "at least twice the border's width" more, "a couple of inches"."""
    longer = "{strip: F, corners: mitred, side-length: 78, end-length: 64 1/2}"
    (border,) = borders(tmp_path, source("50 1/2", "60 1/2", longer))
    assert [border.side_length, border.end_length] == [78, inches("64 1/2")]
    short = longer.replace("64 1/2", "62")
    found = told(tmp_path, source("50 1/2", "60 1/2", short), "mitre-short")
    assert found == [("error", "62", "65")]


@pytest.mark.parametrize(
    ("border", "code"),
    [
        ("{strip: F, corners: mitred, stones: K}", "mitre-parts"),
        ("{sides: F, ends: G, corners: mitred}", "mitre-width"),
    ],
)
def test_what_cannot_be_mitred(tmp_path: Path, border: str, code: str) -> None:
    more = "F: {cut: 3 x WOF}\n  G: {cut: 4 x WOF}\n  K: {cut: 3 square}"
    assert [one[0] for one in told(tmp_path, source("30", "40", border, more), code)] == ["error"]


@settings(max_examples=25)
@given(across=SIDES, down=SIDES, width=WIDTHS)
def test_mitred_strips_fill_the_frame(
    tmp_path_factory: pytest.TempPathFactory, across: int, down: int, width: int
) -> None:
    """Four strips with slanting ends cover the frame, and the mitre runs at 45°."""
    folder = tmp_path_factory.mktemp("frame")
    text = source(
        f"{across} 1/2",
        f"{down} 1/2",
        "{strip: F, corners: mitred}",
        f"F: {{cut: {width} 1/2 x WOF}}",
    )
    made = examined(folder, text)
    assert not [one for one in made.notices if one.stage == "proof"]
    unit = made.quilts["one"].units["top"].made
    assert isinstance(unit, LayoutMade)
    (border,) = unit.borders
    covered = sum((area(part.outline) for part in border.parts if part.outline), Exact(0))
    assert covered == (across + 2 * width) * (down + 2 * width) - across * down
    last = made.sizes["one"].sewing.steps[-1]
    sewn = 2 * (across + Fraction(1, 2)) + 4 * width * ROOT2
    assert (last.seams, last.seam_length) == (2 + 4, sewn)
