"""At a glance: how large, how many pieces, how many places must match, and the smallest piece."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Row, Table, finished
from patternbook.proof.evidence import Evidence


@dataclass(frozen=True)
class Glance:
    """The table of sizes, the units that are the same in all of them, and the sizes drawn."""

    title: str
    table: Table
    units: tuple[str, ...]
    figure: Figure | None


def glance(book: Book) -> Glance:
    """A row for each size."""
    head = (
        "Size",
        "Finished, width × length",
        *(("In centimetres",) if book.system.unit == "in" else ()),
        "Pieces",
        "Places where seams must meet",
        "Smallest piece, finished",
    )
    rows = tuple(Row(wording.title(size), _cells(known)) for size, known in book.sizes.items())
    return Glance(
        "At a glance",
        Table("Sizes", head, rows),
        tuple(_unit(book, name) for name in _blocks(book)),
        book.figure("tops") if len(book.sizes) > 1 else None,
    )


def _cells(known: Evidence) -> tuple[str, ...]:
    quilt, totals = known.quilt, known.sewing.totals
    return (
        wording.sides(finished(known), quilt.system),
        *((_centimetres(known),) if quilt.system.unit == "in" else ()),
        str(totals.pieces),
        str(totals.matches),
        smallest(known),
    )


def _centimetres(known: Evidence) -> str:
    """For orientation only: the pattern is in inches, and its pieces are never converted."""
    from patternbook.metric import centimetres

    near = [_nearest(centimetres(side.up(known.quilt.system.step))) for side in finished(known)]
    return wording.glued(f"about {near[0]} × {near[1]} cm")


def _nearest(length: Fraction) -> int:
    """The nearest whole centimetre, a half upward."""
    return (length * 2 + 1) // 2


def smallest(known: Evidence) -> str:
    """The patch with the least cloth in it as it is sewn; of two alike, the first letter."""
    patch = min(known.patches, key=lambda one: (one.across * one.down, one.letter))
    return f"{patch.letter}, {wording.size(patch.across, patch.down, known.quilt.system)}"


def _blocks(book: Book) -> tuple[str, ...]:
    """Units that are blocks: all but the top, of one size whatever the quilt's."""
    return tuple(
        name
        for name, unit in book.first.quilt.units.items()
        if name != book.first.quilt.top
        and all(
            name in known.quilt.units and known.quilt.units[name].finished == unit.finished
            for known in book.all
        )
    )


def _unit(book: Book, name: str) -> str:
    unit = book.first.quilt.units[name]
    sizes = wording.both_sizes(unit.finished, unit.measure, book.system)
    return f"{wording.title(name)}: {sizes}."
