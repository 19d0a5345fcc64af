"""The colouring page: the quilt in outline, to try colours before any cloth is cut."""

from __future__ import annotations

from dataclasses import dataclass

from patternbook.booklet.book import Book, Figure


@dataclass(frozen=True)
class Colouring:
    """The quilt in outline."""

    title: str
    words: str
    figures: tuple[Figure, ...]


def colouring(book: Book) -> Colouring | None:
    """None where it was not drawn."""
    drawn = tuple(
        figure for size in book.sizes if (figure := book.figure(f"colouring-{size}"))
    )
    if not drawn:
        return None
    words = "Colour it in, or paste on snips of your own fabrics, before you cut."
    return Colouring("Colouring page", words, drawn)
