"""Labels to cut out and clip to the piles of pieces."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Final

from patternbook.edition.editions.form import Edition, as_it_is

if TYPE_CHECKING:
    from patternbook.booklet.book import Book
    from patternbook.booklet.html import Whole
    from patternbook.notice import Notice
    from patternbook.proof.evidence import Evidence


def _sheets(book: Book) -> Whole:
    from patternbook.booklet.labels import label_sheets

    return label_sheets(book)


def _read(pdf: bytes, sizes: Mapping[str, Evidence], paper: str) -> tuple[Notice, ...]:
    from patternbook.booklet.readback import read_labels

    return read_labels(pdf, sizes, paper)


EDITION: Final = Edition("labels", "labels for the piles of pieces", as_it_is, _sheets, _read)
