"""Templates as they are drawn: which there are, what is written on them, how they are parted."""

from __future__ import annotations

import math
from collections.abc import Mapping
from pathlib import Path

import pytest

from patternbook.diagrams import drawn_from
from patternbook.diagrams.cutout import Cutout, cutouts, handed
from patternbook.diagrams.pattern import Pattern
from patternbook.diagrams.templates import templates
from patternbook.diagrams.tiles import MOST, OVERLAP, tiles
from patternbook.strokes.stroke import STYLES, Drawing, Line
from tests.booklet.small import written
from tests.diagrams.drawn import box, clashes, covered, told, words
from tests.support import Golden

LEAF = """\
<svg xmlns="http://www.w3.org/2000/svg" width="3in" height="2in" viewBox="0 0 300 200">
<path d="M 20 20 C 150 20 280 60 280 180 C 120 180 60 120 20 20 Z"/></svg>
"""
CURVES = """
    pattern: Curves
    sizes: {crib: {}, twin: {}}
    pieces:
      P: {template: quarter circle, radius: 4, count: {crib: 48, twin: 120}}
      G: {cut: 6 1/2 square, template: quarter hollow, radius: 4, count: 48}
    """
LEAVES = """
    pattern: Leaves
    sizes: {one: {finished: 18 x 9}}
    fabrics:
      ground: {use: grounds, tone: light}
      leaf: {use: leaves, tone: dark}
    pieces:
      G: {fabric: ground, cut: 10 square}
      L: {fabric: leaf, template: drawing, drawing: leaf.svg, cut: 2 1/2 x fit}
    units:
      twig:
        method: applique
        ground: G
        shapes: L L/mirror L
        at: [1 x 1, 4 x 1, 1 x 4]
        finished: 9 square
    top: {rows: [twig twig]}
    """


def drawn(folder: Path, text: str) -> Mapping[str, Drawing]:
    return {one.name: one for one in templates(_pattern(folder, text))}


def shapes(folder: Path, text: str) -> list[Cutout]:
    return list(cutouts(_pattern(folder, text)))


def _pattern(folder: Path, text: str) -> Pattern:
    (folder / "leaf.svg").write_text(LEAF, "utf-8")
    examined = written(folder, text)
    assert examined.heading is not None
    return drawn_from(examined.heading, examined.sizes)


def fragment(*pieces: str, sizes: str = "{one: {}}") -> str:
    lines = "\n  ".join(pieces)
    return f"pattern: Trial\nsizes: {sizes}\npieces:\n  {lines}\n"


def test_a_pie_in_full(tmp_path: Path, golden: Golden) -> None:
    golden(told(drawn(tmp_path, CURVES)["template-p"]), "strokes/template-p.txt")


def test_the_bar_in_full(tmp_path: Path, golden: Golden) -> None:
    golden(told(drawn(tmp_path, CURVES)["templates-bar"]), "strokes/templates-bar.txt")


def test_counts_of_each_size_stand_on_it(tmp_path: Path) -> None:
    found = drawn(tmp_path, CURVES)
    assert list(found) == ["templates-bar", "template-p", "template-g"]
    assert words(found["template-p"]) == [
        "P",
        "crib: cut 48",
        "twin: cut 120",
        "radius 4″ finished",
    ]
    assert words(found["template-g"]) == ["G", "cut 48", "radius 4″, finishes 6 × 6″"]


def test_a_template_that_is_not_the_same_in_all_sizes_is_drawn_for_each(tmp_path: Path) -> None:
    pie = "P: {template: quarter circle, radius: {crib: 3, twin: 4}, count: 48}"
    found = drawn(tmp_path, fragment(pie, sizes="{crib: {}, twin: {}}"))
    assert list(found) == ["templates-bar", "template-p-crib", "template-p-twin"]
    assert words(found["template-p-twin"]) == ["P", "twin: cut 48", "radius 4″ finished"]


def test_shapes_to_be_laid_on_are_reversed_and_mirrored_ones_apart(tmp_path: Path) -> None:
    """Of six leaves two lie mirrored; those are traced as they are, the others reversed."""
    plain, mirrored = shapes(tmp_path, LEAVES)
    assert plain.counts == (("one", 4),)
    assert mirrored.counts == (("one", 2),)
    assert (plain.name, mirrored.name) == ("template-l", "template-l-mirrored")
    lies = plain.template.curves[0]
    assert plain.cut[0][0] == pytest.approx(2.5 - lies[0][0], abs=1e-6)
    assert mirrored.cut[0][0] == pytest.approx(lies[0][0], abs=1e-6)
    said = words(drawn(tmp_path, LEAVES)["template-l"])
    assert said[0] == "L"
    assert {"cut 4", "reversed for tracing", "no seam allowance"} <= set(said)


@pytest.mark.parametrize(
    ("outline", "hands"),
    [
        ("0 x 0, 4 x 0, 0 x 3", True),  # a right-angled triangle of unequal legs
        ("0 x 0, 4 x 0, 0 x 4", False),
        ("0 x 2, 2 x 0, 4 x 2, 2 x 4", False),
        ("1 x 0, 4 x 0, 3 x 2, 0 x 2", True),  # a leaning parallelogram
        ("1 x 0, 3 x 0, 4 x 2, 0 x 2", False),
    ],
)
def test_a_shape_that_turned_over_is_another(tmp_path: Path, outline: str, hands: bool) -> None:
    (shape,) = shapes(
        tmp_path, fragment(f"K: {{template: outline, outline: [{outline}], count: 8}}")
    )
    assert handed(shape.template) is hands


WIDE = "W: {template: outline, outline: [0 x 0, 15 x 0, 15 x 9, 0 x 4], count: 2}"


def test_a_template_larger_than_a_page_is_parted(tmp_path: Path) -> None:
    found = drawn(tmp_path, fragment(WIDE))
    parts = [one for name, one in found.items() if name.startswith("template-w-tile")]
    assert len(parts) == 6
    for part in parts:
        assert all(side <= most + 0.1 for side, most in zip(part.inches, MOST, strict=True))
        said = words(part)
        assert any("joins here" in word for word in said)
    assert "Tile 3 of 6" in words(parts[2])


@pytest.mark.parametrize("size", [(15.5, 9.5), (7.0, 7.6), (7.1, 3.0), (3.0, 30.0), (20.0, 20.0)])
def test_tiles_cover_the_whole_and_meet_on_the_same_lines(size: tuple[float, float]) -> None:
    found = tiles(size)
    assert max(tile.within[2] for tile in found) == pytest.approx(size[0])
    assert max(tile.within[3] for tile in found) == pytest.approx(size[1])
    by_number = {tile.number: tile for tile in found}
    for tile in found:
        left, top, right, low = tile.within
        assert right - left <= MOST[0] + 1e-9
        assert low - top <= MOST[1] + 1e-9
        for line, other in tile.joins:
            back = [join for join, number in by_number[other].joins if number == tile.number]
            assert back == [pytest.approx(line)]


def test_a_tile_and_its_neighbour_show_the_same_strip() -> None:
    """They overlap by half an inch, a quarter on either side of the line where they are joined."""
    one, other = tiles((13.0, 3.0))
    assert one.within[2] - other.within[0] == pytest.approx(OVERLAP)
    ((line, number),) = one.joins
    assert number == 2
    assert one.within[2] - line[0] == pytest.approx(OVERLAP / 2)


def test_one_that_fits_lying_is_turned_and_its_grain_with_it(tmp_path: Path) -> None:
    long = "B: {template: outline, outline: [0 x 0, 7 x 0, 7 x 1, 0 x 2], count: 2}"
    found = drawn(tmp_path, fragment(long))
    assert list(found) == ["templates-bar", "template-b"]
    wide, high = found["template-b"].inches
    assert high > wide


def test_papers_are_finished_size_and_counted_in_sheets(tmp_path: Path) -> None:
    hexagon = "H: {template: hexagon, side: 1, count: {crib: 270, twin: 624}}"
    sheet = drawn(tmp_path, fragment(hexagon, sizes="{crib: {}, twin: {}}"))["template-papers-h"]
    lines = [stroke for stroke in sheet.strokes if isinstance(stroke, Line)]
    each = len(lines)
    for line in lines:
        ends = zip(line.points, (*line.points[1:], line.points[0]), strict=True)
        assert [math.dist(*pair) for pair in ends] == pytest.approx([1] * 6)
    assert f"{each} on a sheet" in sheet.title
    assert f"print {math.ceil(270 / each)} sheets for the 270 of crib" in sheet.title


MANY = (
    "P: {template: quarter circle, radius: 4, count: 48}",
    "T: {template: quarter circle, radius: 1, count: 48}",
    "G: {cut: 6 1/2 square, template: quarter hollow, radius: 4, count: 48}",
    "S: {cut: 2 1/4 square, template: quarter hollow, radius: 1 1/4, count: 48}",
    "H: {template: hexagon, side: 1/2, count: 270}",
    "N: {template: half hexagon, side: 2, count: 20}",
    "L: {template: drawing, drawing: leaf.svg, count: 4}",
    "M: {template: drawing, drawing: leaf.svg, cut: 1/2 x fit, count: 4}",
    "K: {template: outline, outline: [0 x 0, 6 x 0, 0 x 1], count: 8}",
    WIDE,
)


def test_every_word_on_them_can_be_read(tmp_path: Path) -> None:
    for called, drawing in drawn(tmp_path, fragment(*MANY)).items():
        assert not list(clashes(drawing)), called
        assert not list(covered(drawing)), called
        assert drawing.alt.strip()
        for stroke in drawing.strokes:
            left, top, right, low = box(stroke, drawing)
            assert min(left, top) >= 0, (called, stroke)
            assert right <= drawing.width + 1e-9, (called, stroke)
            assert low <= drawing.height + 1e-9, (called, stroke)
            if isinstance(stroke, Line):
                assert STYLES[stroke.role].width >= 0.5, (called, stroke.role)
