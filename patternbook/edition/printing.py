"""From an examined pattern to the files of its booklet, on each paper, and its figures."""

from __future__ import annotations

import datetime as dt
import json
import re
from collections.abc import Callable, Iterable, Mapping
from typing import Final

from patternbook.booklet.book import Book, Paper
from patternbook.booklet.sentences import told
from patternbook.edition.figures import figures
from patternbook.edition.pipeline import Examined
from patternbook.notice import Notice, failed
from patternbook.proof.evidence import Evidence
from patternbook.quilt.heading import Heading
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
    edition: str,
    step: Callable[[str], None],
) -> tuple[Files, tuple[Notice, ...]]:
    """The files by name, and what went wrong; no booklet where a notice is an error.

    With `size` it is that one size's own copy. `edition` names what is in it ("full": all).
    """
    heading = examined.heading
    sizes = {
        name: known
        for name, known in examined.sizes.items()
        if known.quilt.top is not None and size in (None, name)
    }
    if heading is None or not sizes:
        return {}, (_nothing(edition),)
    notices = told(heading, sizes)
    if failed(notices):
        return {}, notices
    files: dict[str, bytes] = {}
    stem = heading.slug if size is None else f"{heading.slug}-{size}"
    for paper, pdf, more in _booklets(heading, sizes, papers, step):
        files[f"{stem}-{paper}.pdf"] = pdf
        notices = (*notices, *more)
    if failed(notices):
        return {}, notices
    files[FIGURES] = _figures(examined)
    return files, notices


def _booklets(
    heading: Heading,
    sizes: Mapping[str, Evidence],
    papers: tuple[str, ...],
    step: Callable[[str], None],
) -> Iterable[tuple[str, bytes, tuple[Notice, ...]]]:
    """The booklet on each paper, from the same drawings."""
    from patternbook.booklet.html import html
    from patternbook.booklet.pdf import make_pdf
    from patternbook.booklet.readback import read_back
    from patternbook.diagrams import drawings

    step("drawing")
    drawn = drawings(heading, sizes)
    date = dt.date.fromisoformat(heading.date) if heading.date else None
    for name in papers:
        paper, called = PAPER_NAMES[name]
        step(f"laying out {called}")
        page = html(Book(heading, sizes, drawn, paper))
        shown = {found: drawn[found] for found in dict.fromkeys(_SHOWN.findall(page.html))}
        pdf, more = make_pdf(
            page.html, shown, base=shipped("templates"), date=date, titles=page.titles
        )
        if not failed(more):
            step(f"reading {called} back")
            more = (*more, *read_back(pdf, sizes, called))
        yield name, pdf, more


def _figures(examined: Examined) -> bytes:
    return (json.dumps(figures(examined, bare=True), indent=2, ensure_ascii=False) + "\n").encode()


def _nothing(edition: str) -> Notice:
    return Notice(
        "no-booklet",
        "error",
        "booklet",
        f"there is no {edition} booklet of it, since it has no quilt top in any size asked for.",
        hint="Write what the top is made of: `top: {rows: [...]}`.",
    )
