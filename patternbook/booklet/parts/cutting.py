"""The cutting: how it is done, a chart for each size, and the lays that show it on the cloth."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Table, finished
from patternbook.booklet.chart import charts, is_whole, order, remarks
from patternbook.booklet.parts.tools import steps
from patternbook.cutting.records import CutStep
from patternbook.cutting.tools import LAYERS, TABLES
from patternbook.diagrams.naming import name as drawn
from patternbook.inch import System


@dataclass(frozen=True)
class SizeChart:
    """All that is cut for one size."""

    title: str
    anchor: str
    tables: tuple[Table, ...]
    remarks: tuple[str, ...]


@dataclass(frozen=True)
class Cutting:
    """How to cut, in order, and a chart for each size."""

    title: str
    words: tuple[str, ...]
    how: tuple[str, ...]
    notes: tuple[str, ...]
    sizes: tuple[SizeChart, ...]
    lays_title: str
    lays: tuple[Figure, ...]


def cutting(book: Book) -> Cutting:
    """The cutting of the sizes in this booklet."""
    notes = [said for piece in book.first.quilt.pieces.values() for said in book.said(piece.note)]
    return Cutting(
        "Cutting",
        book.said(book.first.quilt.words.get("cutting")),
        tuple(_how(book)),
        tuple(notes),
        tuple(_size(book, name) for name in book.sizes),
        "How the pieces lie on the fabric",
        tuple(_lays(book)),
    )


def _size(book: Book, name: str) -> SizeChart:
    known = book.sizes[name]
    size = f", {wording.sides(finished(known), book.system)} finished"
    return SizeChart(
        f"{wording.title(name)}{size}",
        f"cut-{name}",
        charts(known),
        tuple(remarks(known, shared=not book.drawings)),
    )


def _lays(book: Book) -> Iterator[Figure]:
    """In every size those of cloth whose strips give several letters; of cloth that is cut a
    letter a strip, as the chart says it, one size's; of whole strips none."""
    alone = len(book.sizes) == 1
    for size, known in book.sizes.items():
        for fabric, plan in known.cutting.fabrics.items():
            shared = alone or any(len(strip.letters) > 1 for strip in plan.strips)
            if all(is_whole(known, letter) for letter in order(plan)):
                continue
            if not shared and known is not book.first:
                continue
            figure = book.figure(drawn("lay", fabric, size))
            if figure and shared:
                yield figure
            elif figure:
                yield replace(figure, caption=f"{figure.caption} (the other sizes alike)")
        for web in known.cutting.webs:
            traced = book.figure(drawn("web", web, size))
            if traced and known is book.first:
                yield traced


def _how(book: Book) -> Iterator[str]:
    """The actions of all fabrics, each told once, in the order in which they come."""
    actions = steps(book)
    for kind, tell in HOW.items():
        found = [step for step in actions if step.kind == kind]
        if found:
            yield tell(book.system, found)
    by_template = _by_template(book)
    if by_template:
        their = "its template" if len(by_template) == 1 else "their templates"
        yield (
            f"Cut {wording.listed(by_template)} by {their} from the pieces in the chart. The "
            "templates are at the end of this booklet."
        )
    yield "Keep each letter in its own pile and label it."


def _by_template(book: Book) -> tuple[str, ...]:
    """The letters whose pieces are cut once more, along a template; cloth for hexagons is folded
    round papers as it is."""
    pieces = (piece for known in book.all for piece in known.quilt.pieces.values())
    found = (piece.letter for piece in pieces if piece.template and piece.template.trims)
    return tuple(dict.fromkeys(found))


def _straighten(system: System, steps: Sequence[CutStep]) -> str:
    ruler = wording.size(*TABLES[system.unit].long_ruler, system)
    twice = any(step.folds > 1 for step in steps)
    again = " Fold once more, fold to selvedge, edges parallel." if twice else ""
    width = wording.length(steps[0].width or 0, system)
    return (
        f"Straighten the edge: fold the fabric selvedge to selvedge until it lies flat.{again} "
        f"Lay the {ruler} ruler square to the fold and cut off about {width}."
    )


def _strip(system: System, steps: Sequence[CutStep]) -> str:
    table = TABLES[system.unit]
    told = ["Cut the strips across the fabric, the widest first, in the order of the chart."]
    if any(len(step.rulers) > 1 for step in steps):
        wide = wording.length(table.long_ruler.across, system)
        square = wording.size(*table.square, system)
        told.append(f"For strips wider than {wide} lay the {square} ruler beside the long one.")
    if any(step.on_fold for step in steps):
        widest = wording.length(table.long_ruler.across + table.square.across, system)
        told.append(
            f"For strips wider than {widest} fold the fabric once more along its length, edges "
            "parallel, and measure half the width from the fold."
        )
    return " ".join(told)


def _trim(_: System, steps: Sequence[CutStep]) -> str:
    layers = wording.spelled(max(step.layers for step in steps))
    return (
        f"Stack strips of one width in up to {layers} layers, edges level, and trim off the "
        "selvedge ends. Square the ends of pre-cut strips in the same way."
    )


def _subcut(_: System, steps: Sequence[CutStep]) -> str:
    stacked = any(step.layers > 1 for step in steps)
    layers = f", in stacks of up to {wording.spelled(LAYERS)} layers" if stacked else ""
    told = f"Cut the pieces from the strips, the longest first{layers}."
    if any(step.on_fold for step in steps):
        told += (
            " If one is longer than the ruler, fold once more and measure half from the fold; "
            "longer still, measure one with a tape and cut the others to match."
        )
    return told


HOW: Final[Mapping[str, Callable[[System, Sequence[CutStep]], str]]] = {
    "straighten": _straighten,
    "strip": _strip,
    "trim": _trim,
    "subcut": _subcut,
}
