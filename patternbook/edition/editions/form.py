"""What an edition says of itself: its name, what it is, and how its pages are made and read."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:  # the names are needed for `--help`, the pages only when they are made
    from patternbook.booklet.book import Book
    from patternbook.booklet.html import Whole
    from patternbook.notice import Notice
    from patternbook.proof.evidence import Evidence


@dataclass(frozen=True)
class Edition:
    """One kind of booklet. `name` stands in the source, in `--edition` and in the file's name.

    `book` turns the booklet's contents into this edition's own, `sheets` makes the pages, and
    `read` reads the finished PDF back: an error for every figure that is printed otherwise.
    """

    name: str
    tells: str
    book: Callable[[Book], Book]
    sheets: Callable[[Book], Whole]
    read: Callable[[bytes, Mapping[str, Evidence], str], tuple[Notice, ...]]


def as_it_is(book: Book) -> Book:
    """The contents unchanged."""
    return book


def booklet(book: Book) -> Whole:
    """All parts of the booklet."""
    from patternbook.booklet.html import html

    return html(book)


def every_figure(pdf: bytes, sizes: Mapping[str, Evidence], paper: str) -> tuple[Notice, ...]:
    """Reads a whole booklet back."""
    from patternbook.booklet.readback import read_back

    return read_back(pdf, sizes, paper)
