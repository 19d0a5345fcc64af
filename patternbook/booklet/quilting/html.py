"""The quilting pages as one HTML page, laid out in the booklet's own style."""

from __future__ import annotations

from patternbook.booklet.html import Whole, one_page
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.pages import pages


def html(quilts: QuiltBook) -> Whole:
    """All of them as one page."""
    return one_page("quilting", pages(quilts), quilts.book, "quilting")
