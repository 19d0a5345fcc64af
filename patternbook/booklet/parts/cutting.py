"""The cutting: how it is done, a chart for each size, and the lays that show it on the cloth."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Table
from patternbook.booklet.chart import charts, remarks
from patternbook.cutting.records import CutStep
from patternbook.cutting.tools import LAYERS, TABLES
from patternbook.diagrams.naming import name as drawn


@dataclass(frozen=True)
class SizeChart:
    """All that is cut for one size."""

    title: str
    anchor: str
    tables: tuple[Table, ...]
    remarks: tuple[str, ...]
    lays_title: str
    lays: tuple[Figure, ...]


@dataclass(frozen=True)
class Cutting:
    """How to cut, in order, and a chart for each size."""

    title: str
    words: tuple[str, ...]
    how: tuple[str, ...]
    notes: tuple[str, ...]
    sizes: tuple[SizeChart, ...]


def cutting(book: Book) -> Cutting:
    """The cutting of the sizes in this booklet."""
    notes = [said for piece in book.first.quilt.pieces.values() for said in book.said(piece.note)]
    return Cutting(
        "Cutting",
        book.said(book.first.quilt.words.get("cutting")),
        tuple(_how(book)),
        tuple(notes),
        tuple(_size(book, name) for name in book.sizes),
    )


def _size(book: Book, name: str) -> SizeChart:
    known = book.sizes[name]
    finished = known.quilt.finished
    size = f", {wording.sides(finished, book.system)} finished" if finished else ""
    lays = (book.figure(drawn("lay", fabric, name)) for fabric in known.cutting.fabrics)
    return SizeChart(
        f"{wording.title(name)}{size}",
        f"cut-{name}",
        charts(known),
        tuple(remarks(known)),
        f"{wording.title(name)}: how the pieces lie on the fabric",
        tuple(lay for lay in lays if lay),
    )


def _steps(book: Book) -> tuple[CutStep, ...]:
    plans = (plan for known in book.all for plan in known.cutting.fabrics.values())
    return tuple(step for plan in plans for step in plan.steps)


def _how(book: Book) -> Iterator[str]:
    """The actions of all fabrics, each told once, in the order in which they come."""
    steps = _steps(book)
    tell = {
        "straighten": _straighten,
        "strip": _strip,
        "trim": _trim,
        "join": _join,
        "subcut": _subcut,
    }
    for kind, words in tell.items():
        found = [step for step in steps if step.kind == kind]
        if found:
            yield from words(book, found)
    yield "Keep each letter in its own pile and label it."


def _straighten(book: Book, steps: list[CutStep]) -> Iterator[str]:
    ruler = wording.size(*TABLES[book.system.unit].long_ruler, book.system)
    again = (
        " Fold once more, fold to selvedge, edges parallel."
        if any(step.folds > 1 for step in steps)
        else ""
    )
    width = wording.length(steps[0].width or 0, book.system)
    yield (
        f"Straighten the edge: fold the fabric selvedge to selvedge until it lies flat.{again} "
        f"Lay the {ruler} ruler square to the fold and cut off about {width}."
    )


def _strip(book: Book, steps: list[CutStep]) -> Iterator[str]:
    table = TABLES[book.system.unit]
    told = "Cut the strips across the fabric, the widest first, in the order of the chart."
    if any(len(step.rulers) > 1 for step in steps):
        wide = wording.length(table.long_ruler.across, book.system)
        square = wording.size(*table.square, book.system)
        told += f" For strips wider than {wide} lay the {square} ruler beside the long one."
    if any(step.on_fold for step in steps):
        widest = wording.length(table.long_ruler.across + table.square.across, book.system)
        told += (
            f" For strips wider than {widest} fold the fabric once more along its length, edges "
            "parallel, and measure half the width from the fold."
        )
    yield told


def _trim(book: Book, steps: list[CutStep]) -> Iterator[str]:
    layers = wording.spelled(max(step.layers for step in steps))
    yield f"Stack strips of one width in up to {layers} layers, edges level, and trim off the selvedge ends; trim the ends of pre-cut strips the same way."


def _join(book: Book, steps: list[CutStep]) -> Iterator[str]:
    yield "Join end to end those strips of which the chart says so."


def _subcut(book: Book, steps: list[CutStep]) -> Iterator[str]:
    stacked = (
        f" in stacks of up to {wording.spelled(LAYERS)} layers"
        if any(step.layers > 1 for step in steps)
        else ""
    )
    yield f"Cut the pieces from the strips{stacked}, the longest first."
