"""Faults planted in the cutting of one size, in tables of shared strips, and on labels."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from patternbook.booklet import html as pages
from patternbook.booklet import labels as label_pages
from patternbook.booklet.book import Book
from patternbook.booklet.html import Whole
from patternbook.edition.pipeline import Examined
from patternbook.edition.printing import printed
from patternbook.notice import Notice
from tests.booklet.cabin import CABIN, SHELF
from tests.booklet.small import DOORSTEP, written

Change = tuple[str, str]
SHARED = SHELF.replace("STYLE", "shared")
NB = "\N{NO-BREAK SPACE}"


def told(examined: Examined, size: str | None, edition: str) -> tuple[Notice, ...]:
    files, notices = printed(examined, ("letter",), size, (edition,), lambda _: None)
    assert bool(files) == (not notices)
    return notices


def spoiled(monkeypatch: pytest.MonkeyPatch, edition: str, change: Change) -> None:
    """Every page is laid out with this one change."""
    module, name = (label_pages, "label_sheets") if edition == "labels" else (pages, "html")
    whole: Callable[[Book], Whole] = getattr(module, name)

    def changed(book: Book) -> Whole:
        made = whole(book)
        assert change[0] in made.html, "the fault was not planted"
        return made._replace(html=made.html.replace(*change, 1))

    monkeypatch.setattr(module, name, changed)


# What is planted: the source, the size alone or all, the edition, the change, what is told.
FAULTS = {
    "strips of a sentence": (
        DOORSTEP, "rug", "full", (f"Two strips, 6½″{NB}", f"Three strips, 6½″{NB}"),
        ("the strips of chalk", "3 × 6½, 3 × 3½", "2 × 6½, 3 × 3½"),
    ),
    "pieces of a sentence": (
        DOORSTEP, "rug", "full", ("twelve squares", "eleven squares"),
        ("pieces of C", "11", "12"),
    ),
    "a size in a sentence": (
        DOORSTEP, "rug", "full", ("twelve squares, 6½", "twelve squares, 3½"),
        ("cut size of C", "3½ × 6½", "6½ × 6½"),
    ),
    "a strip that is shared": (
        SHARED, None, "full", (f"four{NB}B and one{NB}D", f"three{NB}B and one{NB}D"),
        ("what strips give of B", "3", "4"),
    ),
    "a shared strip's width": (
        SHARED, None, "full", ('<td class="number">12½″</td>', '<td class="number">6½″</td>'),
        ("the strips of oak", "1 × 6½, 1 × 12½, 1 × 6½", "2 × 12½, 1 × 6½"),
    ),
    "a length of a log": (
        CABIN, None, "full",
        ('<th scope="row">In all</th>\n<td class="number">4</td>',
         '<th scope="row">In all</th>\n<td class="number">5</td>'),
        ("the lengths of A", "4 × 2½, 4 × 3½, 4 × 4½, 5 × 5½", "4 × 2½, 4 × 3½, 4 × 4½, 4 × 5½"),
    ),
    "a label's number": (
        DOORSTEP, None, "labels", (f"12{NB}squares", f"13{NB}squares"),
        ("the label of C", "6½ × 6½, 13", "6½ × 6½, 12"),
    ),
    "a label's letter": (
        DOORSTEP, None, "labels", ("<h3>C</h3>", "<h3>D</h3>"),
        ("labels of C", "0", "1"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("fault", FAULTS)
def test_a_planted_fault_is_told(
    fault: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    source, size, edition, change, (what, shown, right) = FAULTS[fault]
    examined = written(tmp_path, source, full=True)
    spoiled(monkeypatch, edition, change)
    notices = told(examined, size, edition)
    assert {notice.code for notice in notices} == {"read-back"}
    found = [(one.message.split(":")[0], one.stated, one.needed) for one in notices]
    assert (what, shown, right) in found


@pytest.mark.parametrize(
    ("source", "size", "edition"),
    [
        (DOORSTEP, "rug", "full"),
        (DOORSTEP, None, "labels"),
        (DOORSTEP, None, "left-handed"),
        (SHARED, None, "full"),
        (SHARED, "rug", "full"),
        (CABIN, None, "full"),
        (CABIN, "rug", "left-handed"),
        (CABIN, "rug", "labels"),
    ],
)
def test_without_a_fault_nothing_is_told(
    source: str, size: str | None, edition: str, tmp_path: Path
) -> None:
    assert told(written(tmp_path, source, full=True), size, edition) == ()
