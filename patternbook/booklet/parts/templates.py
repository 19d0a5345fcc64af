"""Templates at true scale, on pages of their own, each with the bar by which it is measured."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book
from patternbook.diagrams.at_need import beginning
from patternbook.diagrams.print_bar import NAME as BAR
from patternbook.inch import ruler_near
from patternbook.quilt.records import Quilt
from patternbook.quilt.template import HEXAGONS, CurvedPair, Template, curved_pairs
from patternbook.strokes.lettering import text_width
from patternbook.strokes.stroke import Drawing

# Inches of a page of either paper; what the heading, the sentence and the bar take of it.
WIDE: Final = 7.2
HIGH: Final = 9.9
HEAD: Final = 1.2
GAP: Final = 0.2
# A caption: what it needs to be read, points of its letters, and of its lines.
NARROWEST: Final = 2.3
CAPTION: Final = 9.0
LINE: Final = 11.25
BELOW: Final = 0.2  # inches under each figure
TEXT: Final = 10.5
TEXT_LINE: Final = 14.5
SPACED: Final = 1.05  # words are set a little wider in lines than alone
ACTUAL: Final = "Print at actual size (100 %). Measure this bar before you cut."


@dataclass(frozen=True)
class TrueFigure:
    """A drawing that is printed just as large as it is; widths as the page's style has them."""

    name: str
    alt: str
    caption: str
    image: str
    width: str


@dataclass(frozen=True)
class Sheet:
    """One page: its heading, sentences, and figures in rows."""

    head: str
    first: bool
    words: tuple[str, ...]
    rows: tuple[tuple[TrueFigure, ...], ...]


@dataclass(frozen=True)
class Templates:
    """The pages, and what stands on each."""

    title: str
    actual: str
    bar: TrueFigure
    sheets: tuple[Sheet, ...]


def templates(book: Book) -> Templates | None:
    """Pages of templates; None where everything is cut with a ruler."""
    drawings = [one for one in beginning(book.drawings, "template") if one.name != BAR]
    if not drawings:
        return None
    words = tuple(_words(book))
    pages = list(_pages(drawings, sum(map(_lines_high, words))))
    sheets = tuple(
        Sheet(_head(number, len(pages)), number == 1, words if number == 1 else (), rows)
        for number, rows in enumerate(pages, 1)
    )
    return Templates("Templates", ACTUAL, _figure(book.drawings[BAR], ""), sheets)


def _head(number: int, of: int) -> str:
    return "Templates" if of == 1 else f"Templates: page {number} of {of}"


Rows = tuple[tuple[TrueFigure, ...], ...]


def _pages(drawings: Iterable[Drawing], taken: float) -> Iterator[Rows]:
    """Figures side by side in rows, rows below one another, as many as a page holds."""
    rows: list[tuple[TrueFigure, ...]] = []
    left = HIGH - HEAD - taken
    for row in _rows(drawings):
        high = max(_high(drawing) for drawing in row)
        if rows and high > left:
            yield tuple(rows)
            rows, left = [], HIGH - HEAD
        elif high > left:  # the sentences take the first page alone
            yield ()
            left = HIGH - HEAD
        rows.append(tuple(_figure(drawing, drawing.title) for drawing in row))
        left -= high
    yield tuple(rows)


def _rows(drawings: Iterable[Drawing]) -> Iterator[list[Drawing]]:
    row: list[Drawing] = []
    left = WIDE
    for drawing in drawings:
        wide = _wide(drawing) + GAP
        if row and wide > left + GAP:
            yield row
            row, left = [], WIDE
        row.append(drawing)
        left -= wide
    if row:
        yield row


def _wide(drawing: Drawing) -> float:
    return max(drawing.inches[0], NARROWEST)


def _high(drawing: Drawing) -> float:
    """Inches with its caption."""
    long = text_width(drawing.title, CAPTION) / 72 * SPACED
    lines = math.ceil(long / (_wide(drawing) - 0.1))
    return drawing.inches[1] + lines * LINE / 72 + BELOW


def _lines_high(words: str) -> float:
    lines = math.ceil(text_width(words, TEXT) / 72 * SPACED / (WIDE - 0.1))
    return (lines * TEXT_LINE + 4) / 72


def _figure(drawing: Drawing, caption: str) -> TrueFigure:
    wide = drawing.inches[0]
    return TrueFigure(
        drawing.name, drawing.alt, caption, f"{wide:.6f}in", f"{max(wide, NARROWEST):.6f}in"
    )


def _words(book: Book) -> Iterator[str]:
    """What must be known before anything is cut."""
    found = [template for known in book.all for template in _templates(known.quilt).values()]
    if any(not template.laid_on for template in found):
        seam = wording.length(book.first.quilt.seam, book.system)
        yield (
            f"Solid lines are cut, dashed lines are sewn: the seam allowance of {seam} lies "
            "between them. Lay the arrow along the straight grain; match the short marks when you "
            "pin."
        )
    if any(template.laid_on for template in found):
        yield (
            "Shapes that are laid on a ground have no seam allowance and are drawn reversed: trace "
            "them as they are, onto the paper side of fusible web or the wrong side of the fabric."
        )
    if any(template.kind in HEXAGONS for template in found):
        yield (
            "Papers have no seam allowance: the fabric is folded round them. They can be used "
            "again, so that fewer will do."
        )
    yield from dict.fromkeys(_pairs(book))


def _pairs(book: Book) -> Iterator[str]:
    several = len({pair for known in book.all for pair in _curves(known.quilt)}) > 1
    for name, known in book.sizes.items():
        for pair in _curves(known.quilt):
            seam, longer = (_about(number, book) for number in (pair.seam_line, pair.longer))
            of = f" ({name})" if several and len(book.sizes) > 1 else ""
            yield (
                f"{pair.pie} and {pair.ground}{of}: the seam lines are equally long, {seam}. The "
                f"cut edge of {pair.pie} is {longer} longer than that of {pair.ground}; this is "
                "right, and the same for every radius. Match the middle and both ends first."
            )


def _templates(quilt: Quilt) -> dict[str, Template]:
    return {letter: piece.template for letter, piece in quilt.pieces.items() if piece.template}


def _curves(quilt: Quilt) -> tuple[CurvedPair, ...]:
    return tuple(curved_pairs(_templates(quilt), quilt.seam))


def _about(number: float, book: Book) -> str:
    near = ruler_near(Fraction(number), book.system)
    return f"about {wording.length(near, book.system)}"
