"""Labels to clip to the piles: one a letter, with its cloth, size, number and use."""

from __future__ import annotations

from pathlib import Path

from patternbook.booklet.labels import label_sheets
from tests.booklet.cabin import CABIN
from tests.booklet.small import book, demo, written
from tests.support import Golden

SP = "\N{NO-BREAK SPACE}"


def label(markup: str, letter: str, after: str) -> list[str]:
    """The lines of a letter's first label behind some words."""
    start = markup.index(f"<h3>{letter}</h3>", markup.index(after))
    found = markup[start : markup.index("</div>", start)].splitlines()
    texts = (line.split(">", 1)[1].split("<")[0] for line in found if line.startswith("<"))
    return [text.replace(SP, " ") for text in texts if text]


def test_every_letter_has_its_label_in_every_size(tmp_path: Path, golden: Golden) -> None:
    golden(label_sheets(book(written(tmp_path))).html, "booklet/labels.html")


def test_a_label_says_letter_cloth_size_number_and_use() -> None:
    markup = label_sheets(book(demo("late-returns"))).html
    assert label(markup, "A", 'id="labels-throw"') == [
        "A", "Books", "8½ × 2½″", "46 rectangles", "for novels", "Late Returns, Throw",
    ]  # fmt: skip
    assert label(markup, "Binding", 'id="labels-throw"') == [
        "Binding", "Ribbon", "2½″ wide", "8 strips", "Late Returns, Throw",
    ]  # fmt: skip


def test_each_length_of_a_log_cabin_has_a_pile_of_its_own(tmp_path: Path) -> None:
    markup = label_sheets(book(written(tmp_path, CABIN), "rug")).html
    assert markup.count("<h3>A</h3>") == markup.count("<h3>B</h3>") == 4
    assert label(markup, "A", "labels-rug")[2:5] == ["1½ × 5½″", "12 lengths", "for cabin"]
