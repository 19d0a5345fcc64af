"""The kit sheet as one HTML page, laid out in the booklet's own style."""

from __future__ import annotations

from patternbook.booklet.html import Whole, one_page
from patternbook.booklet.kits.book import KitBook
from patternbook.booklet.kits.sheet import sheet


def html(kits: KitBook) -> Whole:
    """The whole sheet as one page."""
    return one_page("kits", sheet(kits), kits.book, f"{kits.size} · {kits.kits}")
