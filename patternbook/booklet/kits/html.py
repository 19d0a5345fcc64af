"""The kit sheet as one HTML page, laid out in the booklet's own style."""

from __future__ import annotations

from patternbook.booklet.html import PAPERS, Whole, engine, titles
from patternbook.booklet.kits.book import KitBook
from patternbook.booklet.kits.sheet import sheet
from patternbook.booklet.parts.cover import revision


def html(kits: KitBook) -> Whole:
    """The whole sheet as one page."""
    book = kits.book
    page = (
        engine("kits", "booklet")
        .get_template("kits.html")
        .render(
            page=sheet(kits),
            by=book.heading.by or "",
            foot=f"{book.heading.pattern} · {kits.size} · {kits.kits} · {revision(book)}",
            paper=PAPERS[book.paper],
            kind=book.paper,
        )
    )
    return Whole(page, titles(page))
