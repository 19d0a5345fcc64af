"""The cover: what it is, how large, for whom, which revision, and where to ask for a newer one."""

from __future__ import annotations

from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Row, Table, finished
from patternbook.booklet.dates import written_out
from patternbook.booklet.skills import level, skills


@dataclass(frozen=True)
class Cover:
    """The cover's words and picture."""

    name: str
    by: str
    summary: tuple[str, ...]
    welcome: tuple[str, ...]
    figure: Figure | None
    sizes: Table
    level: str
    skills: str
    revision: str
    hand: str
    newest: str
    contact: str


def cover(book: Book) -> Cover:
    """The cover of the sizes in this booklet."""
    heading, system = book.heading, book.system
    rows = tuple(
        Row(wording.title(size), (wording.sides(finished(known), system),))
        for size, known in book.sizes.items()
    )
    return Cover(
        name=heading.pattern,
        by=heading.by or "",
        summary=book.said(heading.summary),
        welcome=book.said(book.first.quilt.words.get("welcome")),
        figure=book.figure("cover"),
        sizes=Table("Finished sizes, width × length", ("Size", "Finished"), rows, ("words",)),
        level=wording.capital(level(heading.level, book.all)),
        skills=skills(book.all),
        revision=revision(book),
        hand="left-handed, from the right" if book.hand == "left" else "",
        newest=heading.site or "",
        contact=heading.report or heading.contact or "",
    )


def revision(book: Book) -> str:
    """`Revision 2, 25 November 2026`, as the foot of every page says it."""
    date = written_out(book.heading.date)
    return f"Revision {book.heading.revision}{f', {date}' if date else ''}"
