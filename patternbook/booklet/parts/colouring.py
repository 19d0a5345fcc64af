"""The colouring page: the quilt in outline, to try colours before any cloth is cut."""

from __future__ import annotations

from dataclasses import dataclass

from patternbook.booklet.book import Book, Figure
from patternbook.diagrams.naming import name as drawn


@dataclass(frozen=True)
class Colouring:
    """The quilt in outline."""

    title: str
    words: str
    figure: Figure


def colouring(book: Book) -> Colouring | None:
    """One page, of the size in the middle; None where it was not drawn."""
    figure = book.figure(drawn("colouring", book.middle))
    if figure is None:
        return None
    words = "Colour it in, or paste on snips of your own fabrics, before you cut."
    return Colouring("Colouring page", words, figure)
