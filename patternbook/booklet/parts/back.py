"""The last page: what was changed, cautions, what readers may do with it, and whom to tell."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from patternbook.booklet.book import Book
from patternbook.booklet.dates import written_out
from patternbook.booklet.parts.cover import revision


@dataclass(frozen=True)
class Change:
    """One revision: why, and what to do if already cut or sewn."""

    head: str
    why: str
    if_cut: str
    if_sewn: str


class Caution(NamedTuple):
    """One thing that hurts people, and how it does not."""

    head: str
    words: str


@dataclass(frozen=True)
class Back:
    """Revisions, cautions, permission and contact."""

    title: str
    revision_title: str
    changes: tuple[Change, ...]
    newest: str
    site: str
    cautions: tuple[Caution, ...]
    cautions_last: str
    permission_title: str
    permission: tuple[str, ...]
    contact_title: str
    contact: str
    addresses: tuple[str, ...]


def back(book: Book) -> Back:
    """The last page of the booklet."""
    return Back(
        "Cautions, revisions and contact",
        "Revisions",
        tuple(_changes(book)),
        _newest(book),
        book.heading.site or "",
        CAUTIONS,
        "Local rules, the makers' instructions and the advice of qualified people come first.",
        "Permission",
        tuple(_permission(book)),
        "Found a fault, or stuck?",
        "Tell us the piece, the size, what you got, and what the pattern says.",
        tuple(line for line in (book.heading.report, book.heading.contact) if line),
    )


# Sources: trade facts 13.1 to 13.8 (paediatric and health-service advice, youth sewing guides).
CAUTIONS = (
    Caution(
        "Rotary cutter",
        "Close the guard after every cut. Cut away from yourself, fingers clear of the ruler's "
        "edge, shoes on. Wrap old blades. Keep it from children; they cut only with an adult "
        "beside them.",
    ),
    Caution("Iron", "Stand it on its heel, cord out of reach, and unplug it when you leave."),
    Caution(
        "Needle and pins",
        "Fingers clear; switch off before you change a needle. Do not sew over pins or hold them "
        "in your mouth. Count basting pins back into their box.",
    ),
    Caution(
        "Quilts and babies",
        "A baby under one year sleeps with no quilt, pillow or loose bedding in the cot or crib. "
        "Use the quilt on the floor, awake and watched. Ask your health visitor or doctor.",
    ),
    Caution(
        "Small parts",
        "No buttons, beads or other small parts on a quilt for a child under three.",
    ),
)


def _changes(book: Book) -> Iterator[Change]:
    for entry in sorted(book.heading.revisions, key=lambda entry: -entry.number):
        date = written_out(entry.date or None)
        yield Change(
            f"Revision {entry.number}{f', {date}' if date else ''}",
            " ".join(book.said(entry.why)),
            " ".join(book.said(entry.if_cut)),
            " ".join(book.said(entry.if_sewn)),
        )


def _newest(book: Book) -> str:
    words = revision(book)
    first = book.heading.revision == 1 and not book.heading.revisions
    told = f"Your copy is {words[0].lower()}{words[1:]}{', the first' if first else ''}."
    if not book.heading.site:
        return told
    return f"{told} Before you cut, see whether there is a newer one, and what it changes:"


def _permission(book: Book) -> Iterator[str]:
    by = f" by {book.heading.by}" if book.heading.by else ""
    if book.heading.licence:
        licence = book.heading.licence
        yield f"{book.heading.pattern}{by}: text and drawings under the licence {licence}."
    else:
        yield f"{book.heading.pattern}{by}: ask before you copy or share it."
    yield "The quilts that you sew are yours to keep, give or sell."
