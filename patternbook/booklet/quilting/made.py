"""From the booklet's contents to those of the quilting pages, with the plan of every size."""

from __future__ import annotations

from dataclasses import replace

from patternbook.booklet.book import Book
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.drawings import quilt_drawings
from patternbook.quilting.designs import by_name


def of_book(book: Book) -> QuiltBook:
    """The sizes that are quilted, with the drawings that the book has."""
    found = {size: known.quilting for size, known in book.sizes.items()}
    plans = {size: plan for size, plan in found.items() if plan is not None}
    return QuiltBook(book, plans, by_name)


def quilt_book(book: Book) -> QuiltBook:
    """The same with drawings of its own."""
    quilts = of_book(book)
    drawings = quilt_drawings(book, quilts.plans, quilts.designs)
    return replace(quilts, book=replace(book, drawings=drawings))
