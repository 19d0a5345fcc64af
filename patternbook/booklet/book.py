"""What every part of the booklet is made from, and the few shapes that finished words come in."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from patternbook.booklet import wording
from patternbook.booklet.sentences import fill
from patternbook.inch import System
from patternbook.proof.evidence import Evidence
from patternbook.quilt.heading import Heading
from patternbook.quilt.records import Sides
from patternbook.strokes.stroke import Drawing

Paper = Literal["a4", "letter"]
Hand = Literal["left", "right"]
Align = Literal["words", "number"]
NARROWEST: Final = 1.6  # inches that a caption needs to be read in lines of words


@dataclass(frozen=True)
class Book:
    """One booklet to be made: the sizes it is printed for, its paper and its drawings, and the
    hand that holds the cutter."""

    heading: Heading
    sizes: Mapping[str, Evidence]
    drawings: Mapping[str, Drawing]
    paper: Paper
    hand: Hand = "right"

    @property
    def begins(self) -> Hand:
        """The side of the cloth that cutting begins at: the other one than the cutter's."""
        return "left" if self.hand == "right" else "right"

    @property
    def all(self) -> tuple[Evidence, ...]:
        """Its sizes in order."""
        return tuple(self.sizes.values())

    @property
    def first(self) -> Evidence:
        """The size that stands for all where they do not differ."""
        return self.all[0]

    @property
    def middle(self) -> str:
        """The size that the cover shows, and other pictures that are of one size."""
        return tuple(self.sizes)[(len(self.sizes) - 1) // 2]

    @property
    def system(self) -> System:
        """Inches or centimetres."""
        return self.first.quilt.system

    @property
    def names(self) -> tuple[str, ...]:
        """The names of its sizes as heads of columns."""
        return tuple(wording.title(name) for name in self.sizes)

    def each(self, tell: Callable[[Evidence], str]) -> tuple[str, ...]:
        """What is told of each size, in order."""
        return tuple(tell(known) for known in self.all)

    def said(self, text: str | None) -> tuple[str, ...]:
        """The author's paragraphs with their figures filled in for these sizes."""
        return wording.paragraphs(wording.typeset(fill(text, self.all)[0])) if text else ()

    def figure(self, name: str, caption: str = "") -> Figure | None:
        """A drawing with the words that say what it shows; None where it was not drawn."""
        drawing = self.drawings.get(name)
        if drawing is None:
            return None
        return Figure(name, drawing.alt, caption or drawing.title, drawing.inches[0])


@dataclass(frozen=True)
class Figure:
    """A drawing by name, its words for those who cannot see it, its caption, and how wide it is
    printed, in inches."""

    name: str
    alt: str
    caption: str
    inches: float

    @property
    def width(self) -> str:
        """How wide it stands on the page, its caption beneath it."""
        least = NARROWEST if self.caption else 0.0
        return f"{max(self.inches, least):.2f}in"


@dataclass(frozen=True)
class Row:
    """One thing of a table."""

    head: str
    cells: tuple[str, ...]


@dataclass(frozen=True)
class Table:
    """A table of finished words: a row is a thing; the columns are its sizes or its figures."""

    caption: str
    head: tuple[str, ...]
    rows: tuple[Row, ...]
    align: tuple[Align, ...] = ()

    @property
    def columns(self) -> tuple[tuple[str, Align], ...]:
        """Head and alignment of each column behind the first."""
        numbers: tuple[Align, ...] = tuple("number" for _ in self.head[1:])
        align = self.align or numbers
        return tuple(zip(self.head[1:], align, strict=True))


def finished(known: Evidence) -> Sides:
    """The finished size of the top: a booklet is made of quilts that have one."""
    return known.quilt.units[known.quilt.top or ""].finished


def told_by_size(
    book: Book, rows: Sequence[tuple[str, Callable[[Evidence], str]]]
) -> tuple[Row, ...]:
    """Rows with a column for each size; a row that has nothing to say in any size is left out."""
    made = (Row(head, book.each(tell)) for head, tell in rows)
    return tuple(row for row in made if any(cell != wording.NONE for cell in row.cells))
