"""Shapes that no ruler cuts: how large they finish, what they are cut from, what is told."""

from __future__ import annotations

import math
from fractions import Fraction
from pathlib import Path
from textwrap import dedent

import pytest

from patternbook.exact import ROOT3, Exact
from patternbook.methods.made import Sides
from patternbook.quilt.records import CutSize, Piece
from patternbook.quilt.template import curved_pairs
from tests.quilt.support_quilt import told, worked_out

F = Fraction
LEAF = """\
<svg xmlns="http://www.w3.org/2000/svg" width="3in" height="2in" viewBox="0 0 300 200">
<path d="M 50 100 C 90 30 200 30 250 100 C 200 170 90 170 50 100 Z"/></svg>
"""


def fragment(*pieces: str, unit: str = "inches") -> str:
    lines = "\n  ".join(pieces)
    return f"pattern: Trial\nwritten-in: {unit}\nsizes: {{one: {{}}}}\npieces:\n  {lines}\n"


def pieces(folder: Path, *written: str, unit: str = "inches") -> dict[str, Piece]:
    made = worked_out(folder, fragment(*written, unit=unit))
    assert not told(made), [str(notice) for notice in told(made)]
    return dict(made.sizes["one"].pieces)


def codes(folder: Path, *written: str) -> list[str]:
    return [notice.code for notice in worked_out(folder, fragment(*written)).notices]


def test_the_two_pieces_of_a_curved_seam(tmp_path: Path) -> None:
    """Kind 23, finishing 6 with a radius of 4: the pie comes from 4½, the ground from 6½."""
    found = pieces(
        tmp_path,
        "P: {template: quarter circle, radius: 4, count: 48}",
        "G: {cut: 6 1/2 square, template: quarter hollow, radius: 4, count: 48}",
    )
    assert found["P"].cut == CutSize(F(9, 2), F(9, 2))
    assert found["P"].finished == Sides(Exact(4), Exact(4))
    assert found["G"].finished == Sides(Exact(6), Exact(6))


@pytest.mark.parametrize("radius", ["4", "2 1/2", "5"])
def test_seam_lines_agree_and_cut_edges_differ_by_the_same_for_every_radius(
    tmp_path: Path, radius: str
) -> None:
    """Kind 23: the seam of radius 4 is 6.283 long; the edges differ by π/4 = 0.785."""
    found = pieces(
        tmp_path,
        f"P: {{template: quarter circle, radius: {radius}, count: 4}}",
        f"G: {{cut: 6 1/2 square, template: quarter hollow, radius: {radius}, count: 4}}",
    )
    templates = {letter: piece.template for letter, piece in found.items() if piece.template}
    (pair,) = curved_pairs(templates, F(1, 4))
    assert (pair.pie, pair.ground) == ("P", "G")
    assert pair.longer == pytest.approx(math.pi / 4)
    if radius == "4":
        assert round(pair.seam_line, 3) == 6.283


def test_a_quarter_circle_may_be_sized_by_its_cut(tmp_path: Path) -> None:
    found = pieces(tmp_path, "P: {cut: 4 1/2 square, template: quarter circle, count: 4}")
    assert found["P"].template is not None
    assert found["P"].template.radius == Exact(4)


def test_hexagons_are_named_by_their_side(tmp_path: Path) -> None:
    """Kind 24: s√3 wide, 2s high; a wrapping square of 2s + ¾ (common practice, no source)."""
    found = pieces(
        tmp_path,
        "H: {template: hexagon, side: 1 1/2, count: 270}",
        "N: {template: half hexagon, side: 1 1/2, count: 20}",
    )
    assert found["H"].finished == Sides(ROOT3 * F(3, 2), Exact(3))
    assert found["N"].finished == Sides(ROOT3 * F(3, 4), Exact(3))
    assert found["H"].cut == CutSize(F(15, 4), F(15, 4))


def test_a_wrapping_square_of_two_allowances_is_large_enough(tmp_path: Path) -> None:
    enough = "H: {template: hexagon, side: 1, cut: 2 1/2 square, count: 1}"
    assert not told(worked_out(tmp_path, fragment(enough)))
    assert codes(tmp_path, "H: {template: hexagon, side: 1, cut: 2 square, count: 1}") == [
        "template-box",
        "template-box",
    ]


def test_a_metric_template_has_its_own_allowance(tmp_path: Path) -> None:
    found = pieces(tmp_path, "P: {template: quarter circle, radius: 10, count: 4}", unit="cm")
    assert found["P"].cut == CutSize(F(23, 2), F(23, 2))  # 10 and two seams of 0.75


def test_an_outline_is_cut_from_the_box_around_its_cut_line(tmp_path: Path) -> None:
    """A right-angled triangle of 3 and 4. Both tips are cut off blunt ½ from their corners: the cut
    line reaches from -¼ to 4.505 and from -¼ to 3.460, 4.755 and 3.710 in all."""
    found = pieces(tmp_path, "K: {template: outline, outline: [0 x 0, 4 x 0, 0 x 3], count: 8}")
    piece = found["K"]
    assert piece.finished == Sides(Exact(4), Exact(3))
    assert piece.cut == CutSize(F(39, 8), F(15, 4))


def test_an_outline_may_be_written_either_way_round(tmp_path: Path) -> None:
    found = pieces(
        tmp_path,
        "K: {template: outline, outline: [0 x 0, 4 x 0, 4 x 1, 0 x 3], count: 8}",
        "L: {template: outline, outline: [0 x 3, 4 x 1, 4 x 0, 2 x 0, 0 x 0], count: 8}",
    )
    one, other = found["K"].template, found["L"].template
    assert one is not None
    assert other is not None
    assert set(one.sew.corners) == set(other.sew.corners)  # and no corner where nothing bends
    assert [corner.x for corner in other.sew.corners][:1] == [Exact(0)]


@pytest.mark.parametrize(
    ("written", "code"),
    [
        ("P: {template: quarter circle, count: 1}", "template-figure"),
        ("G: {cut: 6 square, template: quarter hollow, count: 1}", "template-figure"),
        ("H: {template: hexagon, count: 1}", "template-figure"),
        ("K: {template: outline, count: 1}", "template-figure"),
        ("L: {template: drawing, count: 1}", "template-figure"),
        ("H: {template: hexagon, side: 1, diagonal: once, count: 1}", "template-figure"),
        ("H: {template: hexagon, side: 1, cut: 3 x WOF}", "template-figure"),
        ("K: {template: outline, outline: [0 x 0, 4 x 0], count: 1}", "template-figure"),
        ("K: {template: outline, outline: [0 x 0, 4 x 0, 2 x 0], count: 1}", "template-figure"),
        (
            "K: {template: outline, outline: [0 x 0, 4 x 4, 4 x 0, 0 x 4], count: 1}",
            "template-figure",
        ),
        (
            "G: {cut: 4 1/2 square, template: quarter hollow, radius: 4, count: 1}",
            "template-radius",
        ),
        (
            "G: {cut: 4 1/2 square, template: quarter hollow, radius: 1/4, count: 1}",
            "template-radius",
        ),
        ("P: {cut: 4 1/4 square, template: quarter circle, radius: 4, count: 1}", "template-box"),
        ("G: {template: quarter hollow, radius: 4, count: 1}", "not-fixed"),
        (
            "K: {template: outline, outline: [0 x 0, 4 x 0, 0 x 3], edges: [4, 5], count: 1}",
            "template-edge",
        ),
        (
            "K: {template: outline, outline: [0 x 0, 4 x 0, 0 x 3], angle: 45, count: 1}",
            "template-angle",
        ),
        ("H: {template: hexagon, side: 2, finished: 4 square, count: 1}", "cut-finished"),
    ],
)
def test_a_template_that_cannot_be(tmp_path: Path, written: str, code: str) -> None:
    assert set(codes(tmp_path, written)) == {code}


def test_edges_and_angle_are_compared_with_the_outline(tmp_path: Path) -> None:
    """A-45: a seam of 3⅞ on one template must be 3⅞ on the other."""
    good = (
        "K: {template: outline, outline: [0 x 0, 3 7/8 x 0, 0 x 2], "
        "edges: [EDGE, 4 23/64, 2], count: 1}"
    )
    assert not told(worked_out(tmp_path, fragment(good.replace("EDGE", "3 7/8"))))
    made = worked_out(tmp_path, fragment(good.replace("EDGE", "3 5/8")))
    (notice,) = told(made)
    assert notice.code == "template-edge"
    assert notice.message == "edge 1 of K is 3⅞″ long; 3⅝″ is stated."
    assert notice.rule == "R13"


def test_the_points_of_a_diamond_have_the_angle_that_is_stated(tmp_path: Path) -> None:
    """A-46: eight diamonds round a point need 45 degrees each, not 43½."""
    star = (
        "D: {template: outline, outline: [0 x 0, 3 x 0, 5 1/8 x 2 1/8, 2 1/8 x 2 1/8], "
        "angle: ANGLE, count: 8}"
    )
    assert not told(worked_out(tmp_path, fragment(star.replace("ANGLE", "45"))))
    assert codes(tmp_path, star.replace("ANGLE", "43 1/2")) == ["template-angle"]


def leaf(folder: Path, cut: str = "") -> str:
    (folder / "leaf.svg").write_text(LEAF, "utf-8")
    return f"L: {{template: drawing, drawing: leaf.svg{cut}, count: 4}}"


def test_a_drawing_is_as_large_as_its_cut_says(tmp_path: Path) -> None:
    found = pieces(tmp_path, leaf(tmp_path, ", cut: 6 x 3"))
    assert found["L"].finished == Sides(Exact(6), Exact(3))
    assert found["L"].cut == CutSize(F(6), F(3))
    assert found["L"].template is not None
    xs = [corner.x for corner in found["L"].template.sew.corners]
    assert (min(xs), max(xs)) == (Exact(0), Exact(6))


def test_a_drawing_that_is_not_sized_is_as_large_as_it_was_drawn(tmp_path: Path) -> None:
    found = pieces(tmp_path, leaf(tmp_path))
    assert found["L"].finished.across == 2  # from 50 to 250 of 300 that are 3 inches
    assert found["L"].cut.across == 2


def test_a_drawing_keeps_its_shape_where_one_side_fits(tmp_path: Path) -> None:
    found = pieces(tmp_path, leaf(tmp_path, ", cut: 4 x fit"))
    own = pieces(tmp_path, leaf(tmp_path))
    double = own["L"].finished.down * 2
    assert abs(float(found["L"].finished.down - double)) <= 1 / 32


def test_a_drawing_pulled_out_of_shape_is_told(tmp_path: Path) -> None:
    assert codes(tmp_path, leaf(tmp_path, ", cut: 3 square")) == ["template-stretched"]


def test_a_drawing_that_is_not_there_is_named(tmp_path: Path) -> None:
    from patternbook.source.load import load

    path = tmp_path / "pattern.yaml"
    path.write_text(dedent(fragment("L: {template: drawing, drawing: pear.svg, count: 1}")))
    source, notices = load(path, "pattern.yaml")
    assert source is None
    (notice,) = notices
    assert notice.code == "drawing-missing"
    assert "pear.svg" in notice.message
