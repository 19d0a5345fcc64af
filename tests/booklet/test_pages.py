"""The printed pages of a demonstration booklet, read back: what stands on them, and how."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from functools import cache
from io import BytesIO
from pathlib import Path
from textwrap import dedent
from typing import cast

import page as validation
import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from patternbook.booklet import wording
from patternbook.booklet.parts.steps import StepShown, steps
from patternbook.edition.pipeline import Examined, examine
from patternbook.edition.printing import printed
from tests.booklet.page_reading import overprinted, pixels
from tests.booklet.small import DOORSTEP, book, demo, written

PAPERS = ("a4", "letter")
# Points: ISO 216 A4, and 8½ × 11 in (trade facts 14.4).
SIDES = {"a4": (595, 842), "letter": (612, 792)}
DEMOS = ("late-returns", "tea-at-four")
EACH = [(name, paper) for name in DEMOS for paper in PAPERS]


@cache
def examined(name: str) -> Examined:
    return demo(name)


@cache
def files(name: str, size: str | None = None) -> Mapping[str, bytes]:
    made, notices = printed(examined(name), PAPERS, size, ("full",), lambda _: None)
    assert notices == ()
    return made


def reader(name: str, paper: str) -> PdfReader:
    return PdfReader(BytesIO(files(name)[f"{name}-{paper}.pdf"]))


@cache
def pages(name: str, paper: str) -> tuple[str, ...]:
    """The text of each page, on one line, every space a plain one."""
    texts = (page.extract_text() for page in reader(name, paper).pages)
    return tuple(_flat(text) for text in texts)


def _flat(text: str) -> str:
    return " ".join(text.split())


def test_the_files_are_named_after_the_pattern_and_the_paper() -> None:
    assert set(files("late-returns")) == {
        "late-returns-a4.pdf", "late-returns-letter.pdf", "figures.json",
    }  # fmt: skip
    assert set(files("late-returns", "throw")) == {
        "late-returns-throw-a4.pdf", "late-returns-throw-letter.pdf", "figures.json",
    }  # fmt: skip


@cache
def edition(name: str) -> Mapping[str, bytes]:
    made, notices = printed(examined("late-returns"), PAPERS, None, (name,), lambda _: None)
    assert notices == ()
    return made


def test_another_edition_says_so_in_its_files_names() -> None:
    assert set(edition("labels")) == {
        "late-returns-labels-a4.pdf", "late-returns-labels-letter.pdf", "figures.json",
    }  # fmt: skip


@pytest.mark.parametrize("paper", PAPERS)
def test_labels_are_a_page_for_each_size(paper: str) -> None:
    whole = PdfReader(BytesIO(edition("labels")[f"late-returns-labels-{paper}.pdf"]))
    texts = [_flat(page.extract_text()) for page in whole.pages]
    assert len(texts) == 4
    for text, size in zip(texts, ("Crib", "Throw", "Twin", "Queen"), strict=True):
        assert f"Late Returns, {size}" in text
        assert text.count("Late Returns, ") == 11  # A to J, S and the binding


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", ["labels", "left-handed"])
def test_other_editions_are_open_to_all_readers_too(name: str, paper: str) -> None:
    pdf = edition(name)[f"late-returns-{name}-{paper}.pdf"]
    report = validation.validate_pdf_bytes(pdf, profile=validation.ValidationProfile.PDF_UA_1)
    assert [(failure.rule_id, failure.message) for failure in report.failures] == []
    assert list(overprinted(pdf)) == []


def test_the_left_handed_booklet_differs_where_it_is_cut_alone() -> None:
    """What to do is the same for all, which way to turn is not (alefthandedquilter.blogspot.com,
    2015-11-19)."""
    pdf = edition("left-handed")["late-returns-left-handed-a4.pdf"]
    texts = [_flat(page.extract_text()) for page in PdfReader(BytesIO(pdf)).pages]
    whole = " ".join(texts)
    assert "Late Returns · left-handed · Revision 1" in texts[0]
    assert "from the right, in the order told below" in whole
    assert "across the fabric, from the left" not in whole
    assert len(texts) == len(pages("late-returns", "a4"))


@pytest.mark.parametrize(("name", "paper"), EACH)
def test_a_booklet_of_all_sizes_has_at_most_ten_pages(name: str, paper: str) -> None:
    whole = reader(name, paper)
    assert len(whole.pages) <= 10
    for page in whole.pages:
        size = (round(float(page.mediabox.width)), round(float(page.mediabox.height)))
        assert size == SIDES[paper]


@pytest.mark.parametrize(("name", "paper"), EACH)
def test_every_foot_tells_page_name_revision_and_date(name: str, paper: str) -> None:
    """Reader complaint 3: the revision and its date on every page."""
    texts, title = pages(name, paper), name.replace("-", " ").lower()
    for number, text in enumerate(texts, start=1):
        assert f"{title} · revision 1, 25 november 2026" in text.lower()
        assert f"Page {number} of {len(texts)}" in text
    assert f"Pages {len(texts)} " in texts[0]


@pytest.mark.parametrize(("name", "paper"), EACH)
def test_no_step_is_parted(name: str, paper: str) -> None:
    for step in steps(book(examined(name))).shown:
        said = [_flat(line) for line in _lines(step)]
        whole = [page for page in pages(name, paper) if all(line in page for line in said)]
        assert whole, f"step {step.number}: {step.title}"


def _lines(step: StepShown) -> Iterator[str]:
    yield f"{step.number} {step.title}"
    yield from step.does
    if step.check:
        yield step.check
    for table in step.tables:
        for row in table.rows:
            yield row.cells[-1]


@pytest.mark.parametrize(("name", "paper"), EACH)
def test_counts_and_cut_sizes_on_paper_are_the_figures(name: str, paper: str) -> None:
    """Each letter of each size: what the chart says against `figures.json`, read apart."""
    figures = json.loads(files(name)["figures.json"])
    charts = dict(_charts(name, paper))
    assert list(charts) == list(figures["sizes"])
    for size, known in figures["sizes"].items():
        for letter, piece in known["pieces"].items():
            row = charts[size][letter]
            across, down = piece["cut"]["across"]["value"], piece["cut"].get("down")
            if down is None:
                strips = piece["own_strips"]["value"]
                assert f" {strips} {wording.typeset(across)}″" in row, (size, letter)
                continue
            cut = wording.typeset(f"{across} × {down['value']}″")
            assert row.startswith(f"{piece['count']['value']} {cut}"), (size, letter)


def _charts(name: str, paper: str) -> Iterator[tuple[str, dict[str, str]]]:
    """The rows of each size's chart, by letter."""
    lines = [
        line
        for page in reader(name, paper).pages
        for line in page.extract_text().replace(wording.NBSP, " ").splitlines()
    ]
    rows: dict[str, str] = {}
    for line in lines:
        head = re.fullmatch(r"(\w+), .* finished", line.strip())
        row = re.fullmatch(r"([A-Z]{1,2}\d?) (.+ .+″|.+ –)", line.strip())
        if head:
            rows = {}
            yield head.group(1).lower(), rows
        elif row:
            rows.setdefault(row.group(1), row.group(2))


@pytest.mark.parametrize(("name", "paper"), EACH)
def test_every_picture_has_words(name: str, paper: str) -> None:
    whole = reader(name, paper)
    root = cast("DictionaryObject", whole.root_object["/StructTreeRoot"])
    told = [str(one.get("/Alt", "")) for one in _elements(root) if str(one["/S"]) == "/Figure"]
    assert len(told) > 10
    assert all(len(words) > 20 for words in told)


def _elements(element: DictionaryObject) -> Iterator[DictionaryObject]:
    kids = element.get("/K", ())
    for kid in kids if isinstance(kids, list) else (kids,):
        one = kid.get_object() if hasattr(kid, "get_object") else kid
        if isinstance(one, DictionaryObject) and "/S" in one:
            yield one
            yield from _elements(one)


@pytest.mark.parametrize(("name", "paper"), EACH)
def test_the_pages_are_open_to_all_readers(name: str, paper: str) -> None:
    """PDF/UA-1 (ISO 14289-1), by an independent checker of that standard."""
    pdf = files(name)[f"{name}-{paper}.pdf"]
    report = validation.validate_pdf_bytes(pdf, profile=validation.ValidationProfile.PDF_UA_1)
    assert [(failure.rule_id, failure.message) for failure in report.failures] == []


@pytest.mark.parametrize(("name", "paper"), EACH)
def test_nothing_reaches_into_the_edge_that_printers_leave_blank(name: str, paper: str) -> None:
    """A quarter of an inch (trade facts 14.6)."""
    pdf = files(name)[f"{name}-{paper}.pdf"]
    for number in range(len(pages(name, paper))):
        grey = pixels(pdf, number, dpi=40)
        rim = 10
        inner = grey[rim:-rim, rim:-rim]
        assert (grey < 250).sum() == (inner < 250).sum(), f"page {number + 1}"


@pytest.mark.parametrize(("name", "paper"), EACH)
def test_no_page_is_half_empty(name: str, paper: str) -> None:
    """Common practice, no source: the last ink above the foot stands below the middle."""
    pdf = files(name)[f"{name}-{paper}.pdf"]
    for number in range(len(pages(name, paper))):
        grey = pixels(pdf, number, dpi=40)
        body = grey[: int(grey.shape[0] * 0.93)]
        lowest = max(row for row in range(body.shape[0]) if (body[row] < 200).any())
        assert lowest > grey.shape[0] * 0.6, f"page {number + 1}"


# Long steps with a wide picture, a table beside the words, and a page's foot below them.
LONG = ("bakers-door-beads", "courtyard-rain", "cream-on-fridays", "cut-before-you-worry")


@pytest.mark.parametrize("name", [*DEMOS, *LONG])
def test_no_words_are_printed_over_others(name: str) -> None:
    for file, pdf in files(name).items():
        if file.endswith(".pdf"):
            assert list(overprinted(pdf)) == [], file


def test_a_copy_for_one_size_shows_no_other() -> None:
    whole = PdfReader(BytesIO(files("late-returns", "throw")["late-returns-throw-a4.pdf"]))
    assert len(whole.pages) <= 10
    text = _flat(" ".join(page.extract_text() for page in whole.pages))
    assert "59 × 70″" in text
    assert not any(word in text for word in ("Crib", "Twin", "Queen"))


def test_a_fragment_has_no_booklet(tmp_path: Path) -> None:
    part = written(
        tmp_path,
        """
        pattern: Cup
        pieces:
          A: {cut: 3 1/2 square}
        units:
          cup: {rows: [A A, A A], make: 1}
        """,
    )
    made, (notice,) = printed(part, PAPERS, None, ("full",), lambda _: None)
    assert made == {}
    assert notice.code == "no-booklet"


def test_a_slip_in_a_sentence_keeps_the_booklet_back(tmp_path: Path) -> None:
    source = DOORSTEP.replace("plain square, 6 1/2 x 6 1/2 as cut.", "{{ cut.Z }}.")
    path = tmp_path / "pattern.yaml"
    path.write_text(dedent(source).lstrip("\n"), "utf-8")
    made, notices = printed(examine(path, "pattern.yaml"), PAPERS, None, ("full",), lambda _: None)
    assert made == {}
    assert [notice.code for notice in notices] == ["unknown-fill"]
