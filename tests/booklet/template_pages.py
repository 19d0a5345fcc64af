"""The pages of templates alone, made as the booklet makes them, to be read back."""

from __future__ import annotations

import re

from patternbook.booklet.book import Book, Paper
from patternbook.booklet.html import PAPERS, rendered
from patternbook.booklet.parts.templates import Templates, templates
from patternbook.booklet.pdf import make_pdf
from patternbook.diagrams import drawings
from patternbook.edition.pipeline import Examined
from patternbook.shipped import shipped

TITLE = "Trial"


def page_record(examined: Examined, paper: Paper = "a4") -> tuple[Book, Templates]:
    """What the part is made of."""
    assert examined.heading is not None
    drawn = drawings(examined.heading, examined.sizes)
    book = Book(examined.heading, examined.sizes, drawn, paper)
    page = templates(book)
    assert page is not None
    return book, page


def template_pdf(examined: Examined, paper: Paper) -> bytes:
    """The finished PDF, with the booklet's own style."""
    book, page = page_record(examined, paper)
    body = rendered("templates", page)
    html = (
        f'<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>{TITLE}</title>'
        '<link rel="stylesheet" href="booklet/booklet.css">'
        f"<style>@page {{ size: {PAPERS[paper]} }}</style></head>"
        f'<body class="{paper} several" data-foot="{TITLE}"><h1>{TITLE}</h1>{body}</body></html>'
    )
    names = dict.fromkeys(re.findall('src="diagram:([^"]+)"', html))
    shown = {name: book.drawings[name] for name in names}
    pdf, told = make_pdf(
        html, shown, base=shipped("templates"), date=None, titles={"templates": "Templates"}
    )
    assert not told, [str(notice) for notice in told]
    return pdf
