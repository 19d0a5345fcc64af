"""Cases that no sum catches: each is answered by what the booklet prints, proven here on a small
booklet. (Common practice, no source; the numbers are those of the collection of cases.)"""

import re
from collections.abc import Mapping
from functools import cache
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from textwrap import dedent
from typing import Any

import pytest
from pypdf import PdfReader

from patternbook.booklet.book import Book, Paper
from patternbook.booklet.html import parts, text
from patternbook.diagrams import drawings
from patternbook.edition.pipeline import Examined
from patternbook.strokes.stroke import STYLES, Drawing, Line, Patch
from tests.booklet.page_reading import boxes
from tests.booklet.small import written
from tests.booklet.template_pages import template_pdf
from tests.support import Run, WritePattern

PAPERS: tuple[Paper, ...] = ("a4", "letter")
INCH = 72.0
STARS = """
    pattern: Small Lights
    sizes:
      six: {finished: 6 square}
      eight: {finished: 8 square}
      ten: {finished: 10 square}
    fabrics: {night: {use: ground}, lamp: {use: points}}
    pieces:
      P:
        fabric: lamp
        template: quarter circle
        radius: {six: 2, eight: 3, ten: 4}
      G:
        fabric: night
        cut: {six: 3 1/2 square, eight: 4 1/2 square, ten: 5 1/2 square}
        template: quarter hollow
        radius: {six: 2, eight: 3, ten: 4}
    units:
      petal: {method: curved seam, pie: P, ground: G}
    top: {rows: [petal petal/right, petal/left petal/half]}
    """
LONG = """
    pattern: Long Leaf
    sizes: {one: {}}
    pieces:
      W: {template: outline, outline: [0 x 0, 15 x 0, 15 x 9, 0 x 4], count: 2}
    """
GEESE = """
    pattern: Geese Going Home
    sizes: {one: {finished: 12 x 18}}
    fabrics: {sky: {use: wings}, bird: {use: geese}, edge: {use: binding}, back: {use: backing}}
    pieces:
      A: {fabric: bird, cut: 7 1/2 square}
      B: {fabric: sky, cut: 4 square}
    units:
      goose: {method: flying geese, goose: A, wings: B, measure: 6 1/2 x 3 1/2}
    top: {rows: [goose goose], across: 2, down: 6}
    backing: {fabric: back}
    binding: {fabric: edge}
    """
CORNERS = """
    pattern: Ribbon Corner
    sizes: {one: {finished: 12 square}}
    fabrics: {dark: {use: ribbon}, light: {use: ground}, edge: {use: binding}, back: {use: backing}}
    pieces:
      D: {fabric: dark, cut: 7 square}
      L: {fabric: light, cut: 7 square}
    units:
      corner: {method: half-square triangles, from: D L, measure: 6 1/2 square}
    top: {rows: [corner corner/right, corner/left corner/half]}
    backing: {fabric: back}
    binding: {fabric: edge}
    """

EXACT = (
    GEESE.replace("7 1/2 square", "6 1/2 x 3 1/2")
    .replace("4 square", "3 1/2 square")
    .replace("wings: B,", "wings: B, gives: 1,")
)
SASHED = """
    pattern: Reversible Nine
    sizes: {one: {finished: 21 x 28 1/2}}
    fabrics: {tile: {use: blocks}, lath: {use: sashing}, edge: {use: binding}, back: {use: backing}}
    pieces:
      A: {fabric: tile, cut: 6 1/2 square}
      S: {fabric: lath, cut: 2 x 6 1/2}
      K: {fabric: tile, cut: 2 square}
    top:
      rows: [A]
      across: 3
      down: 4
      sashing: {sash: S, stones: K}
    backing: {fabric: back}
    binding: {fabric: edge}
    """


@cache
def known(source: str) -> Examined:
    with TemporaryDirectory() as folder:
        return written(Path(folder), source)


def words_of(page: Any) -> str:
    return " ".join(page.extract_text().split())


@cache
def drawn(source: str) -> Mapping[str, Drawing]:
    examined = known(source)
    assert examined.heading is not None
    return drawings(examined.heading, examined.sizes)


@cache
def printed(source: str) -> dict[str, str]:
    """The words of each part of the booklet."""
    examined = known(source)
    assert examined.heading is not None
    made = parts(Book(examined.heading, examined.sizes, drawn(source), "a4"))
    return {name: " ".join(text(markup).split()) for name, markup in made.items()}


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("source", [STARS, LONG], ids=["star-set", "long-page"])
def test_a35_a49_every_template_page_says_actual_size_and_bears_a_bar(
    source: str, paper: Paper
) -> None:
    """A-35: a page drawn at 0.75. A-49: a page printed to fit, at 11/14."""
    reader = PdfReader(BytesIO(template_pdf(known(source), paper)))
    title, *pages = reader.pages
    assert "Templates" not in title.extract_text()
    assert pages
    for page in pages:
        assert "Print at actual size (100 %). Measure this bar before you cut." in words_of(page)
        wide = [width / INCH for width, _ in boxes(page, reader)]
        assert min(abs(width - 2) for width in wide) < 0.001
        assert min(abs(width - 5 / 2.54) for width in wide) < 0.001


def test_a35_each_template_names_the_size_of_quilt_that_it_is_for() -> None:
    words = printed(STARS)["templates"]
    for radius, size in (("2", "six"), ("3", "eight"), ("4", "ten")):
        assert re.search(rf"(?i)radius {radius}″.*?{size}|{size}.*?radius {radius}″", words), words


@pytest.mark.parametrize("paper", PAPERS)
def test_a49_a_template_larger_than_the_page_is_tiled(paper: Paper) -> None:
    """15 inches go on neither paper; no page is larger than the paper that it is printed on."""
    pages = PdfReader(BytesIO(template_pdf(known(LONG), paper))).pages
    widths = {"a4": 595.28, "letter": 612.0}
    assert len(pages) > 2
    assert {round(float(page.mediabox.width), 1) for page in pages} == {round(widths[paper], 1)}


def test_a50_templates_are_drawn_in_dark_lines_that_a_copy_keeps() -> None:
    """At least mid-grey, and no thinner than 0.8 points (0.28 mm)."""
    lines = [
        STYLES[stroke.role]
        for name, drawing in drawn(LONG).items()
        if name.startswith("template-")
        for stroke in drawing.strokes
        if isinstance(stroke, Line) and stroke.role in ("edge", "seam", "trim")
    ]
    assert lines
    for line in lines:
        assert line.width >= 0.8
        assert max(bytes.fromhex(line.colour[1:])) < 0x80


def test_a41_sashing_has_its_width_and_its_order_in_the_booklet() -> None:
    made = printed(SASHED)
    assert "cut 17 rectangles, 2 × 6½″ (S)" in made["cutting"]
    steps = made["steps"]
    rows = steps.index("From the left: A and S in turn, beginning and ending with A")
    between = steps.index("From the left: S (lying sideways) and K in turn")
    assert rows < between < steps.index("Quilt top: join the rows")
    assert "Press toward S." in steps[rows:between]
    assert "Press toward the S rows." in steps


def test_a41_sashing_without_a_width_is_no_pattern(run: Run, pattern: WritePattern) -> None:
    source = dedent(SASHED).replace("cut: 2 x 6 1/2", "cut: fit x 6 1/2")
    source = source.replace("cut: 2 square", "cut: fit x fit")
    source = source.replace("{finished: 21 x 28 1/2}", "{}")
    told = errors(run, pattern(source))
    assert {(one["code"], one["rule"]) for one in told} == {("not-fixed", "R10")}
    assert "nothing fixes the width of S." in [one["message"] for one in told]


def test_a60_a_one_way_print_that_would_turn_is_told(run: Run, pattern: WritePattern) -> None:
    """A-60: half of the triangles would lie on their side, and only a drawing shows it."""
    one_way = "light: {use: ground, direction: one-way}"
    source = dedent(CORNERS).replace("light: {use: ground}", one_way)
    told = run("check", pattern(source), "--json").json()["notices"]
    (one,) = [notice for notice in told if notice["code"] == "print-direction"]
    assert (one["severity"], one["rule"]) == ("warning", "R18")
    assert "stand 4 ways in the quilt" in one["message"]


def test_a61_a62_the_assembly_turns_the_one_drawing_of_a_unit() -> None:
    """One unit drawing, turned 0, 90, 180 and 270 degrees; the words name each turn."""
    steps = printed(CORNERS)["steps"]
    assert "corner, corner (turned a quarter to the right)" in steps
    assert "corner (turned a quarter to the left), corner (turned half round)" in steps
    dark = known(CORNERS).sizes["one"].patches
    corners = [right_angle(patch) for patch in dark if patch.letter == "D"]
    assert sorted(corners) == [(0, 0), (0, 12), (12, 0), (12, 12)]
    shown = [
        sorted(point for point in stroke.points)
        for stroke in drawn(CORNERS)["top-one"].strokes
        if isinstance(stroke, Patch) and len(stroke.points) == 3
    ]
    assert len(shown) == len(dark)


def right_angle(patch: Any) -> tuple[int, int]:
    """Where the right angle of a triangle of a half-square lies in the top."""
    corners = [(int(x.fraction), int(y.fraction)) for x, y in patch.outline.corners]
    x, y = (
        max({corner[axis] for corner in corners}, key=[c[axis] for c in corners].count)
        for axis in (0, 1)
    )
    return x, y


def test_a73_there_is_room_to_trim_or_nothing_is_called_trimming() -> None:
    """Geese are cut so that something is trimmed; sewn from cut rectangles there is nothing to
    trim, and only what they should measure is told. One block is sewn and measured first."""
    made = printed(GEESE)
    assert "Trim to 6½ × 3½″" in made["steps"]
    assert "One block first. Cut and sew one goose before you cut the rest." in made["notes"]
    exact = printed(EXACT)
    assert "Trim to" not in exact["steps"]
    assert "Should measure 6½ × 3½″ with seam allowances." in exact["steps"]
    assert "With seam allowances it must measure 6½ × 3½″." in exact["notes"]


def errors(run: Run, source: Path) -> list[dict[str, Any]]:
    told = run("check", source, "--json").json()["notices"]
    return [notice for notice in told if notice["severity"] == "error"]
