"""What to mark before the quilting, line by line, all on the ruler's marks."""

from __future__ import annotations

from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Figure
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.diagrams.naming import name as drawn
from patternbook.diagrams.quilts.division import to_mark


@dataclass(frozen=True)
class Marking:
    """The lines in words, numbered, and their picture."""

    title: str
    intro: str
    lines: tuple[str, ...]
    figure: Figure | None


def marking(quilts: QuiltBook, size: str) -> Marking | None:
    """None where every line follows a seam or a design that needs no marks."""
    lines = to_mark(quilts.plans[size])
    if not lines:
        return None
    figure = quilts.book.figure(drawn("quilts", size, "mark"))
    return Marking(
        "What to mark",
        "Mark before you baste, with a pen or chalk that comes out: try it on a scrap of each "
        "fabric first.",
        tuple(wording.sentence(line) for line in lines),
        Figure(figure.name, figure.alt, "", figure.inches) if figure else None,
    )
