"""The quilting pages: the plan of the quilting, to be laid beside the machine."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Final

from patternbook.edition.editions.form import Edition

if TYPE_CHECKING:
    from patternbook.booklet.book import Book
    from patternbook.booklet.html import Whole
    from patternbook.notice import Notice
    from patternbook.proof.evidence import Evidence


def _drawn(book: Book) -> Book:
    from patternbook.booklet.quilting.made import quilt_book

    return replace(book, drawings=quilt_book(book).book.drawings)


def _sheets(book: Book) -> Whole:
    from patternbook.booklet.quilting.html import html
    from patternbook.booklet.quilting.made import of_book

    return html(of_book(book))


def _read(pdf: bytes, sizes: Mapping[str, Evidence], paper: str) -> tuple[Notice, ...]:
    from patternbook.booklet.readback import read_quilting

    return read_quilting(pdf, sizes, paper)


EDITION: Final = Edition("quilting", "the quilting pages", _drawn, _sheets, _read)
