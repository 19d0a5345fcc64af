"""How it may be quilted: the author's suggestions, their spacing, and a map of the lines."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure
from patternbook.quilt.records import Quilting as Suggested

# Where a packet names no limit, the lines stay this close (common practice, no source).
USUAL_LIMIT: Final = {"in": Fraction(3), "cm": Fraction(8)}


@dataclass(frozen=True)
class Quilting:
    """The suggestions, what to mind, and the maps."""

    title: str
    words: tuple[str, ...]
    suggestions: tuple[str, ...]
    advice: tuple[str, ...]
    figures: tuple[Figure, ...]


def quilting(book: Book) -> Quilting | None:
    """None where the author suggests nothing."""
    quilt = book.first.quilt
    if not quilt.quilting:
        return None
    drawn = (book.figure(f"quilting-{size}") for size in book.sizes)
    return Quilting(
        "Quilting",
        book.said(quilt.words.get("quilting")),
        tuple(line for design in quilt.quilting for line in _suggestion(book, design)),
        tuple(_advice(book)),
        tuple(figure for figure in drawn if figure),
    )


def _suggestion(book: Book, design: Suggested) -> Iterator[str]:
    apart = f", {wording.length(design.spacing, book.system)} apart" if design.spacing else ""
    area = "all over" if design.area == "all over" else f"in {design.area}"
    yield f"{wording.capital(design.design)}{apart}, {area}."
    yield from book.said(design.note)


def _advice(book: Book) -> Iterator[str]:
    limit, stated = _limit(book)
    far = wording.length(limit, book.system)
    source = "the batting's own limit here" if stated else "assumed here, as packets differ"
    yield f"Batting must be quilted closely enough to hold: no more than {far} between lines ({source}; read your packet)."
    yield "Begin with a line through the middle and work outward on both sides. Sew neighbouring lines in opposite directions, so that the top does not drift."
    yield "Try thread, needle and tension first on a scrap of the same three layers. A thread close in colour to the fabric hides a wobble."


def _limit(book: Book) -> tuple[Fraction, bool]:
    batting = book.first.quilt.batting
    if batting is not None and batting.limit is not None:
        return batting.limit, True
    return USUAL_LIMIT[book.system.unit], False
