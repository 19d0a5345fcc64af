"""Faults planted in a page before it is laid out: each is read back, and nothing is written."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path
from textwrap import dedent

import pytest

from patternbook import diagrams
from patternbook.booklet import html as pages
from patternbook.booklet.book import Book
from patternbook.booklet.html import Whole
from patternbook.edition.pipeline import Examined
from patternbook.edition.printing import printed
from patternbook.notice import Notice
from patternbook.strokes.stroke import Drawing
from tests.booklet.small import DOORSTEP, written
from tests.support import Run

PAPER = ("letter",)
Spoil = Callable[[str], str]


@pytest.fixture(scope="module")
def examined(tmp_path_factory: pytest.TempPathFactory) -> Examined:
    return written(tmp_path_factory.mktemp("doorstep"))


@pytest.fixture(scope="module")
def drawn(examined: Examined) -> Mapping[str, Drawing]:
    """Its drawings, made once for all tests: no fault is planted in them."""
    assert examined.heading is not None
    return diagrams.drawings(examined.heading, examined.sizes)


@pytest.fixture
def doorstep(
    examined: Examined, drawn: Mapping[str, Drawing], monkeypatch: pytest.MonkeyPatch
) -> Examined:
    monkeypatch.setattr(diagrams, "drawings", lambda *_: drawn)
    return examined


def told(examined: Examined, *, size: str | None = None) -> tuple[Notice, ...]:
    files, notices = printed(examined, PAPER, size, ("full",), lambda _: None)
    assert bool(files) == (not notices)
    return notices


def spoiled(monkeypatch: pytest.MonkeyPatch, change: Spoil) -> None:
    """Every page is laid out with this one change."""
    whole = pages.html

    def html(book: Book) -> Whole:
        made = whole(book)
        changed = change(made.html)
        assert changed != made.html, "the fault was not planted"
        return made._replace(html=changed)

    monkeypatch.setattr(pages, "html", html)


def cell(row: str, column: int, change: Spoil, *, after: str = "") -> Spoil:
    """Changes one cell of the first row so called, behind the words `after`; columns from 1."""

    def changed(html: str) -> str:
        start = html.index(f'<th scope="row">{row}', html.index(after))
        end = html.index("</tr>", start)
        cells = re.split(r"(<td[^>]*>[^<]*</td>)", html[start:end])
        at = 2 * column - 1
        head, body = cells[at].split(">", 1)
        cells[at] = f"{head}>{change(body.removesuffix('</td>'))}</td>"
        return html[:start] + "".join(cells) + html[end:]

    return changed


def more(text: str) -> str:
    """The first whole number one larger."""
    return re.sub(r"\d+", lambda found: str(int(found.group()) + 1), text, count=1)


def without(row: str, *, after: str) -> Spoil:
    def changed(html: str) -> str:
        place = html.index(f'<th scope="row">{row}', html.index(after))
        start, end = html.rindex("<tr>", 0, place), html.index("</tr>", place) + 5
        return html[:start] + html[end:]

    return changed


def exchanged(row: str, *, after: str) -> Spoil:
    """The first two sizes' cells of a row in each other's place."""

    def changed(html: str) -> str:
        start = html.index(f'<th scope="row">{row}', html.index(after))
        end = html.index("</tr>", start)
        one, two = re.findall(r"<td[^>]*>[^<]*</td>", html[start:end])[:2]
        row_changed = html[start:end].replace(one, "\0").replace(two, one).replace("\0", two)
        return html[:start] + row_changed + html[end:]

    return changed


MAT, RUG = 'id="cut-mat"', 'id="cut-rug"'
NEEDS, FINISHING, GLANCE = 'id="requirements"', 'id="finishing"', 'id="glance"'
STEPS = 'id="steps"'

# What is planted, the size that is wrong, and the words that tell of the row.
FAULTS = {
    "a count": (cell("C", 1, more, after=MAT), "mat", "pieces of C"),
    "a cut size": (cell("C", 2, more, after=RUG), "rug", "cut size of C"),
    "strips": (cell("A", 3, more, after=RUG), "rug", "strips of A"),
    "a strip's width": (cell("B", 4, more, after=MAT), "mat", "wide of B"),
    "yardage": (cell("Coal", 2, more, after=NEEDS), "rug", "coal"),
    "a backing's amount": (cell("Back (backing), 4", 1, more, after=NEEDS), "mat", "back"),
    "a batting's package": (cell("Batting, a package", 1, more, after=NEEDS), "mat", "package"),
    "thread": (cell("Thread", 2, more, after=NEEDS), "rug", "thread"),
    "what is to spare": (cell("Coal", 1, more, after="To spare in"), "mat", "coal"),
    "binding strips": (cell("Binding strips", 2, more, after=FINISHING), "rug", "binding strips"),
    "the binding joined": (cell("Binding once", 1, more, after=FINISHING), "mat", "once joined"),
    "a backing's size": (cell("Backing, at", 1, more, after=FINISHING), "mat", "backing"),
    "a backing's lengths": (cell("Backing lengths", 2, more, after=FINISHING), "rug", "lengths"),
    "a finished size": (cell("Rug", 1, more, after=GLANCE), "rug", "finished size"),
    "centimetres": (cell("Mat", 2, more, after=GLANCE), "mat", "centimetres"),
    "all pieces": (cell("Mat", 3, more, after=GLANCE), "mat", "pieces"),
    "places that meet": (cell("Rug", 4, more, after=GLANCE), "rug", "places"),
    "the smallest piece": (cell("Rug", 5, more, after=GLANCE), "rug", "smallest"),
    "a step's count": (cell("Slices to cut", 2, more, after=STEPS), "rug", "Slices to cut"),
    "a step's spare": (cell("Slices to spare", 1, more, after=STEPS), "mat", "Slices to spare"),
    "rows to join": (cell("Rows to join", 2, more, after=STEPS), "rug", "Rows to join"),
    "a measure": (cell("Should measure", 1, more, after='id="step-5"'), "mat", "should measure"),
    "sizes exchanged": (exchanged("Coal", after=NEEDS), "mat", "coal"),
    "a row left out": (without("C", after=RUG), "rug", "of C"),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_a_planted_fault_is_read_back(
    fault: str, doorstep: Examined, monkeypatch: pytest.MonkeyPatch
) -> None:
    change, size, words = FAULTS[fault]
    spoiled(monkeypatch, change)
    found = [notice for notice in told(doorstep) if size in notice.sizes]
    assert any(words in notice.message for notice in found), [str(one) for one in found]
    assert {(one.code, one.severity, one.stage, one.rule) for one in found} == {
        ("read-back", "error", "booklet", "R20")
    }


def test_both_sides_and_the_page_are_named(
    doorstep: Examined, monkeypatch: pytest.MonkeyPatch
) -> None:
    spoiled(monkeypatch, cell("C", 1, more, after=MAT))
    (notice,) = told(doorstep)
    assert re.search(r"page \d+ of the Letter booklet says 3; 2 is right", notice.message)
    assert (notice.stated, notice.needed, notice.sizes) == ("3", "2", ("mat",))


def test_a_measure_in_a_sentence(doorstep: Examined, monkeypatch: pytest.MonkeyPatch) -> None:
    """A slice that is cut as no part of the pattern is."""
    spoiled(monkeypatch, lambda html: html.replace("slices 3½″", "slices 7⅛″"))
    (notice,) = told(doorstep)
    assert (notice.code, notice.stated) == ("read-back", "7⅛″")


def test_a_count_in_a_sentence(doorstep: Examined, monkeypatch: pytest.MonkeyPatch) -> None:
    """In one size's own copy the steps have no tables: they say how many in words."""
    spoiled(monkeypatch, lambda html: re.sub(r"Make (\d+) sets", r"Make 1\1 sets", html, count=1))
    messages = [notice.message for notice in told(doorstep, size="mat")]
    assert any(message.startswith("Make this many sets (pair)") for message in messages), messages


@pytest.mark.parametrize("size", [None, "mat", "rug"])
def test_a_sound_booklet_is_written(examined: Examined, size: str | None) -> None:
    assert told(examined, size=size) == ()


def test_build_writes_nothing_of_a_spoiled_booklet(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    source = tmp_path / "patterns" / "doorstep" / "pattern.yaml"
    source.parent.mkdir(parents=True)
    source.write_text(dedent(DOORSTEP).lstrip("\n"), "utf-8")
    spoiled(monkeypatch, cell("C", 1, more, after=MAT))
    ran = run("build", source.parent, "--paper", "letter", "--out", tmp_path / "out")
    assert ran.code != 0
    assert "read-back" in ran.out + ran.err
    assert not list((tmp_path / "out").rglob("*.pdf"))
