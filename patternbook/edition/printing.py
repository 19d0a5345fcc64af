"""From an examined pattern to the files of its booklet, on each paper, and its figures."""

from __future__ import annotations

import datetime as dt
import json
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Final

from patternbook.booklet.book import Book, Paper
from patternbook.booklet.sentences import told
from patternbook.edition.editions import FULL, by_name
from patternbook.edition.editions.form import Edition
from patternbook.edition.figures import figures
from patternbook.edition.pipeline import Examined
from patternbook.notice import Notice, failed
from patternbook.shipped import shipped

FIGURES: Final = "figures.json"
PAPER_NAMES: Final[Mapping[str, tuple[Paper, str]]] = {
    "a4": ("a4", "A4"),
    "letter": ("letter", "Letter"),
}
Files = Mapping[str, bytes]
_SHOWN: Final = re.compile(r'src="diagram:([^"]+)"')


def printed(
    examined: Examined,
    papers: tuple[str, ...],
    size: str | None,
    editions: Sequence[str],
    step: Callable[[str], None],
) -> tuple[Files, tuple[Notice, ...]]:
    """The files by name, and what went wrong; no booklet where a notice is an error.

    With `size` it is that one size's own copy. `editions` are made in this order ("full": the
    whole booklet).
    """
    heading = examined.heading
    sizes = {
        name: known
        for name, known in examined.sizes.items()
        if known.quilt.top is not None and size in (None, name)
    }
    if heading is None or not sizes:
        return {}, (_nothing(),)
    notices = told(heading, sizes)
    if failed(notices):
        return {}, notices
    files: dict[str, bytes] = {}
    stem = heading.slug if size is None else f"{heading.slug}-{size}"
    from patternbook.diagrams import drawings

    step("drawing")
    book = Book(heading, sizes, drawings(heading, sizes), "a4")
    for name in editions:
        for paper, pdf, more in _booklets(by_name[name], book, papers, step):
            files[f"{stem}{'' if name == FULL else f'-{name}'}-{paper}.pdf"] = pdf
            notices = (*notices, *more)
    if failed(notices):
        return {}, notices
    files[FIGURES] = _figures(examined)
    return files, notices


def _booklets(
    edition: Edition, book: Book, papers: tuple[str, ...], step: Callable[[str], None]
) -> Iterable[tuple[str, bytes, tuple[Notice, ...]]]:
    """One edition on each paper, from the same drawings."""
    from patternbook.booklet.pdf import make_pdf

    date = dt.date.fromisoformat(book.heading.date) if book.heading.date else None
    which = "" if edition.name == FULL else f" {edition.name}"
    own = edition.book(book)
    for name in papers:
        paper, called = PAPER_NAMES[name]
        step(f"laying out {called}{which}")
        page = edition.sheets(replace(own, paper=paper))
        shown = {found: own.drawings[found] for found in dict.fromkeys(_SHOWN.findall(page.html))}
        pdf, more = make_pdf(
            page.html, shown, base=shipped("templates"), date=date, titles=page.titles
        )
        if not failed(more):
            step(f"reading {called}{which} back")
            more = (*more, *edition.read(pdf, book.sizes, called))
        yield name, pdf, more


def _figures(examined: Examined) -> bytes:
    record = figures(examined, bare=True, full=True)
    return (json.dumps(record, indent=2, ensure_ascii=False) + "\n").encode()


def _nothing() -> Notice:
    return Notice(
        "no-booklet",
        "error",
        "booklet",
        "there is no booklet of it, since it has no quilt top in any size asked for.",
        hint="Write what the top is made of: `top: {rows: [...]}`.",
    )
