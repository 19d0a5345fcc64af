"""The drawings of the quilting pages, made from the same plans as their words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from patternbook.booklet.book import Book
from patternbook.diagrams import drawn_from
from patternbook.diagrams.quilts import quilts
from patternbook.diagrams.quilts.practice import practice
from patternbook.diagrams.quilts.signs import signs
from patternbook.quilting.designs.form import Design
from patternbook.quilting.records import QuiltingPlan
from patternbook.strokes.stroke import Drawing


def quilt_drawings(
    book: Book, plans: Mapping[str, QuiltingPlan], designs: Mapping[str, Design]
) -> Mapping[str, Drawing]:
    """All of them by name."""
    return {one.name: one for one in _drawn(book, plans, designs)}


def _drawn(
    book: Book, plans: Mapping[str, QuiltingPlan], designs: Mapping[str, Design]
) -> Iterator[Drawing]:
    yield signs()
    for size in drawn_from(book.heading, book.sizes).sizes:
        if size.name in plans:
            yield from quilts(size, plans[size.name])
    used = dict.fromkeys(fill.design for plan in plans.values() for fill in plan.fills)
    for design in used:
        if design in designs:
            yield practice(designs[design])
