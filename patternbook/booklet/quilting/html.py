"""The quilting pages as one HTML page, laid out in the booklet's own style."""

from __future__ import annotations

from patternbook.booklet.html import PAPERS, Whole, engine, titles
from patternbook.booklet.parts.cover import revision
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.pages import pages


def html(quilts: QuiltBook) -> Whole:
    """All of them as one page."""
    book = quilts.book
    page = (
        engine("quilting", "booklet")
        .get_template("quilting.html")
        .render(
            page=pages(quilts),
            by=book.heading.by or "",
            foot=f"{book.heading.pattern} · quilting · {revision(book)}",
            paper=PAPERS[book.paper],
            kind=book.paper,
        )
    )
    return Whole(page, titles(page))
