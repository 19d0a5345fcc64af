"""The kit sheet as one HTML page, laid out in the booklet's own style."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from patternbook.booklet.html import PAPERS, Whole, titles
from patternbook.booklet.kits.book import KitBook
from patternbook.booklet.kits.sheet import sheet
from patternbook.booklet.parts.cover import revision
from patternbook.shipped import shipped

if TYPE_CHECKING:  # the templates' engine is loaded when a page is made
    from jinja2 import Environment


def html(kits: KitBook) -> Whole:
    """The whole sheet as one page."""
    book = kits.book
    page = (
        _templates()
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


@cache
def _templates() -> Environment:
    from jinja2 import FileSystemLoader, StrictUndefined
    from jinja2.sandbox import ImmutableSandboxedEnvironment

    home = shipped("templates")
    return ImmutableSandboxedEnvironment(
        loader=FileSystemLoader([home / "kits", home / "booklet"]),
        undefined=StrictUndefined,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
