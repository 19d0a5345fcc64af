"""The booklet for those who cut with the left hand: the lays mirrored, cut from the right."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from patternbook.edition.editions.form import Edition, booklet, every_figure

if TYPE_CHECKING:
    from patternbook.booklet.book import Book


def _mirrored(book: Book) -> Book:
    from patternbook.diagrams.left_handed import left_handed

    return replace(book, drawings=left_handed(book.drawings), hand="left")


EDITION: Final = Edition(
    "left-handed", "the booklet with its cutting mirrored", _mirrored, booklet, every_figure
)
