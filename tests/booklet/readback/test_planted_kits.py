"""Faults planted in a kit sheet before it is laid out: each is read back, and no sheet written."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from patternbook.booklet.html import Whole
from patternbook.booklet.kits import html as pages
from patternbook.booklet.kits.book import KitBook
from patternbook.edition.kits import Kits, kit_sheets, kits_of
from patternbook.notice import Notice
from tests.booklet.small import DOORSTEP, written
from tests.booklet.test_quarters import BOATS

Spoil = Callable[[str], str]


@pytest.fixture(scope="module")
def kits(tmp_path_factory: pytest.TempPathFactory) -> Kits:
    examined = written(tmp_path_factory.mktemp("kits"), DOORSTEP)
    assert examined.heading is not None
    made, told = kits_of(examined.heading, examined.sizes["rug"], 12, None)
    assert not told
    return made


def told(kits: Kits) -> tuple[Notice, ...]:
    files, notices = kit_sheets(kits, ("letter",), lambda _: None)
    assert bool(files) == (not notices)
    return notices


def spoiled(monkeypatch: pytest.MonkeyPatch, change: Spoil) -> None:
    """Every page is laid out with this one change."""
    whole = pages.html

    def html(book: KitBook) -> Whole:
        made = whole(book)
        changed = change(made.html)
        assert changed != made.html, "the fault was not planted"
        return made._replace(html=changed)

    monkeypatch.setattr(pages, "html", html)


def more(text: str) -> str:
    """The first whole number one larger."""
    return re.sub(r"\d+", lambda found: str(int(found.group()) + 1), text, count=1)


def after(words: str, change: Spoil, *, within: str = "") -> Spoil:
    """Changes what follows the first such words (behind `within`), markup left alone."""

    def changed(html: str) -> str:
        start = html.index(words, html.index(within)) + len(words)
        parts = re.split(r"(<[^>]*>)", html[start : start + 400])
        at = next(at for at, part in enumerate(parts) if part[:1] != "<" and change(part) != part)
        parts[at] = change(parts[at])
        return html[:start] + "".join(parts) + html[start + 400 :]

    return changed


def fewer(word: str, other: str) -> Spoil:
    return lambda text: text.replace(word, other, 1)


CLOTH, CUTS, BAG = 'id="cloth"', 'id="cuts"', 'id="bag"'
LABELS, LESSON = 'id="kit-labels"', 'id="lesson"'

# What is planted, and the words that tell of it.
FAULTS = {
    "the number of kits": (after("Doorstep: ", more, within="<h1"), "number of kits"),
    "the finished size": (after("Size Rug, ", more), "finished size"),
    "cloth for all": (after('row">Coal', more, within=CLOTH), "coal"),
    "cloth for one": (after("</td>", more, within='row">Coal'), "coal"),
    "batting": (after("Batting, packaged", more, within=CLOTH), "batting in packages"),
    "thread": (after("Thread for piecing, about", more, within=CLOTH), "thread"),
    "the edge": (after("of cloth: about ", fewer("½", "9⅜"), within=CUTS), "measure in a sentence"),
    "the cloth that is cut": (after("From coal: ", more, within=CUTS), "the cloth of coal"),
    "a strip's width": (after('row">', more, within="From coal"), "the width of a strip of coal"),
    "what strips give": (
        after("From chalk", fewer("six", "five"), within=CUTS), "what strips of chalk give",
    ),
    "all letters": (after('row">C', more, within="Pieces counted"), "all C"),
    "a letter in the bag": (after('row">C', more, within=BAG), "the bag's C"),
    "a strip letter in the bag": (after('row">A', more, within=BAG), "the bag's A"),
    "a cut size in the bag": (after("Chalk", more, within=BAG), "the bag's"),
    "a length of backing": (after("if it is in the kit", more, within=BAG), "lengths of backing"),
    "a label's size": (after("Chalk", more, within=LABELS), "the label of"),
    "a label's number": (after('class="number">', more, within=LABELS), "the label of"),
    "labels to print": (after("Print them ", more), "number of labels"),
    "cloth in the class list": (after('row">Coal', more, within=LESSON), "coal for one quilt"),
    "backing in the class list": (after("backing, ", more, within=LESSON), "backing"),
    "bags to fill": (after("The teacher prepares", more), "number of kits"),
}  # fmt: skip


def test_a_sound_sheet_is_written(kits: Kits) -> None:
    assert told(kits) == ()


@pytest.mark.parametrize("name", FAULTS)
def test_a_planted_fault_is_read_back(
    name: str, kits: Kits, monkeypatch: pytest.MonkeyPatch
) -> None:
    change, words = FAULTS[name]
    spoiled(monkeypatch, change)
    notices = told(kits)
    assert {one.code for one in notices} == {"read-back"}
    assert any(words in one.message for one in notices), [str(one) for one in notices]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (after("Keels: ", more, within='class="plain"'), "how keels is cut"),
        (after("fat eighths each: ", fewer("one strip", "two strips")), "how keels is cut"),
        (after('row">Keels', more, within=CLOTH), "the size of Keels"),
        (after("</th>", more, within='row">Keels'), "keels"),
    ],
)
def test_quarters_and_eighths(
    change: Spoil, words: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    examined = written(tmp_path, BOATS)
    assert examined.heading is not None
    made, _ = kits_of(examined.heading, examined.sizes["cot"], 4, "shared")
    spoiled(monkeypatch, change)
    assert any(words in one.message for one in told(made))
