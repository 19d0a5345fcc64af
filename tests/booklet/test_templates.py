"""Templates come out of the printer as large as they are: read back from the finished PDF."""

from __future__ import annotations

import math
from functools import cache
from io import BytesIO
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import page as validation
import pytest
from pypdf import PdfReader

from patternbook.booklet.book import Paper
from patternbook.booklet.html import rendered
from patternbook.edition.pipeline import Examined
from tests.booklet.page_reading import Point, boxes, lines
from tests.booklet.small import written
from tests.booklet.template_pages import page_record, template_pdf
from tests.support import Golden

PAPERS: tuple[Paper, ...] = ("a4", "letter")
INCH = 72.0
NEAR = 0.05  # points an inch
SHAPES = """
    pattern: Shapes
    sizes: {crib: {}, twin: {}}
    pieces:
      P: {template: quarter circle, radius: 4, count: {crib: 48, twin: 120}}
      G: {cut: 6 1/2 square, template: quarter hollow, radius: 4, count: {crib: 48, twin: 120}}
      H: {template: hexagon, side: 1 1/2, count: {crib: 270, twin: 624}}
      N: {template: half hexagon, side: 1 1/2, count: {crib: 20, twin: 28}}
      K: {template: outline, outline: [0 x 0, 4 x 0, 0 x 3], count: 8}
      W: {template: outline, outline: [0 x 0, 15 x 0, 15 x 9, 0 x 4], count: 2}
    """
METRIC = """
    pattern: Metric
    written-in: cm
    sizes: {crib: {}}
    pieces:
      P: {template: quarter circle, radius: 10, count: 48}
      K: {template: outline, outline: [0 x 0, 12 x 0, 0 x 9], count: 8}
    """


@cache
def known(text: str) -> Examined:
    with TemporaryDirectory() as folder:
        return written(Path(folder), text)


@cache
def pdf(text: str, paper: Paper) -> PdfReader:
    return PdfReader(BytesIO(template_pdf(known(text), paper)))


def pages(reader: PdfReader) -> list[Any]:
    return [page for page in reader.pages if "Measure this bar" in page.extract_text()]


def edges(way: list[Point]) -> list[float]:
    return [math.dist(*ends) for ends in pairwise([*way, way[0]])]


def triangle(reader: PdfReader, sides: tuple[float, ...]) -> list[float]:
    """The edges of the triangle that has such sides, in points."""
    for page in pages(reader):
        for way in lines(page, reader):
            found = sorted(edges(way)) if len(way) == 3 else []
            if found and all(abs(a - b) < 1 for a, b in zip(found, sides, strict=True)):
                return found
    raise AssertionError("no such triangle was drawn")


@pytest.mark.parametrize("paper", PAPERS)
def test_every_page_has_a_bar_of_two_inches_and_of_five_centimetres(paper: Paper) -> None:
    reader = pdf(SHAPES, paper)
    found = pages(reader)
    assert len(found) == len(reader.pages) - 1  # all but the one with the title
    for page in found:
        wide = [width for width, _ in boxes(page, reader)]
        inches = [width for width in wide if abs(width - 2 * INCH) < 1]
        centimetres = [width for width in wide if abs(width - 5 / 2.54 * INCH) < 1]
        assert inches == pytest.approx([2 * INCH], abs=2 * NEAR)
        assert centimetres == pytest.approx([5 / 2.54 * INCH], abs=2 * NEAR)
        text = page.extract_text()
        assert "Print at actual size (100 %). Measure this bar before you cut." in text
        assert "2 inches" in text
        assert "5 centimetres" in text
        assert "Templates" in text


@pytest.mark.parametrize("paper", PAPERS)
def test_the_printer_is_asked_for_actual_size(paper: Paper) -> None:
    reader = pdf(SHAPES, paper)
    root: Any = reader.trailer["/Root"]
    assert root["/ViewerPreferences"]["/PrintScaling"] == "/None"
    size = {"a4": (595.28, 841.89), "letter": (612, 792)}[paper]
    for page in reader.pages:
        assert [float(side) for side in page.mediabox[2:]] == pytest.approx(size, abs=0.01)
        assert "/UserUnit" not in page


@pytest.mark.parametrize("paper", PAPERS)
def test_the_seam_line_of_a_template_is_drawn_at_its_size(paper: Paper) -> None:
    """A triangle with sides of 3, 4 and 5 inches."""
    found = triangle(pdf(SHAPES, paper), (3 * INCH, 4 * INCH, 5 * INCH))
    assert [side / inches for side, inches in zip(found, (3, 4, 5), strict=True)] == pytest.approx(
        [INCH] * 3, abs=NEAR
    )


@pytest.mark.parametrize("paper", PAPERS)
def test_the_curve_of_a_template_has_its_radius(paper: Paper) -> None:
    """The seam line of the pie: every corner of it 4 inches from where its straight edges meet."""
    reader = pdf(SHAPES, paper)
    radii = []
    for page in pages(reader):
        for way in lines(page, reader):
            far = [math.dist(point, way[0]) for point in way[1:]]
            if len(far) > 20 and max(far) - min(far) < 1:
                radii.append(far)
    (pie,) = radii
    assert [length / 4 for length in pie] == pytest.approx([INCH] * len(pie), abs=NEAR)


@pytest.mark.parametrize("paper", PAPERS)
def test_a_metric_template_is_drawn_in_centimetres(paper: Paper) -> None:
    centimetre = INCH / 2.54
    found = triangle(pdf(METRIC, paper), (9 * centimetre, 12 * centimetre, 15 * centimetre))
    inches = [length / 2.54 for length in (9, 12, 15)]
    assert [side / of for side, of in zip(found, inches, strict=True)] == pytest.approx(
        [INCH] * 3, abs=NEAR
    )


@pytest.mark.parametrize("paper", PAPERS)
def test_paper_hexagons_have_their_side(paper: Paper) -> None:
    reader = pdf(SHAPES, paper)
    sixes = [
        edges(way)
        for page in pages(reader)
        if "Papers for H" in page.extract_text()
        for way in lines(page, reader)
        if len(way) == 6
    ]
    assert len(sixes) == 6  # those on one sheet
    for side in (side for six in sixes for side in six):
        assert side / 1.5 == pytest.approx(INCH, abs=NEAR)


@pytest.mark.parametrize("paper", PAPERS)
def test_nothing_reaches_into_the_margins(paper: Paper) -> None:
    """A quarter inch at least is kept free, which every printer can print (trade facts 14.6)."""
    reader = pdf(SHAPES, paper)
    for page in pages(reader):
        wide, high = (float(side) for side in page.mediabox[2:])
        points = [point for way in lines(page, reader) for point in way]
        assert min(x for x, _ in points) > 18
        assert max(x for x, _ in points) < wide - 18
        assert min(y for _, y in points) > 18
        assert max(y for _, y in points) < high - 18


def test_they_are_open_to_readers_who_cannot_see_them() -> None:
    """ISO 14289-1, judged by the library page-validation."""
    pdf = template_pdf(known(SHAPES), "a4")
    report = validation.validate_pdf_bytes(pdf, profile=validation.ValidationProfile.PDF_UA_1)
    assert [(failure.rule_id, failure.message) for failure in report.failures] == []
    assert report.is_compliant


def test_both_papers_show_the_same_templates() -> None:
    shown = [
        [row for sheet in page_record(known(SHAPES), paper)[1].sheets for row in sheet.rows]
        for paper in PAPERS
    ]
    assert shown[0] == shown[1]


def test_the_words_of_the_pages(golden: Golden) -> None:
    _, page = page_record(known(SHAPES))
    golden(rendered("templates", page), "booklet/templates.html")


def test_a_quilt_of_squares_has_no_templates() -> None:
    from patternbook.booklet.book import Book
    from patternbook.booklet.parts.templates import templates
    from patternbook.diagrams import drawings
    from tests.booklet.small import DOORSTEP

    examined = known(DOORSTEP)
    assert examined.heading is not None
    drawn = drawings(examined.heading, examined.sizes)
    assert templates(Book(examined.heading, examined.sizes, drawn, "a4")) is None
