"""The cutting: how it is done, a chart for each size, and the lays that show it on the cloth."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Table, finished
from patternbook.booklet.chart import charts, cut_to_length, is_whole, order
from patternbook.booklet.chart_remarks import remarks, sorted_lengths, webs
from patternbook.booklet.chart_strips import by_strips, lengths
from patternbook.booklet.cut_sentences import CutFrom, sentences
from patternbook.booklet.parts.tools import steps
from patternbook.booklet.style_words import how_planned
from patternbook.cutting.records import CutStep, FabricPlan
from patternbook.cutting.tools import LAYERS, TABLES
from patternbook.diagrams.lay_words import KEY
from patternbook.diagrams.naming import name as drawn
from patternbook.proof.evidence import Evidence

CAPTION: Final = 0.35  # inches that a lay's caption takes, and the air round it


@dataclass(frozen=True)
class SizeChart:
    """All that is cut for one size: in tables where there are several, in sentences alone."""

    title: str
    anchor: str
    tables: tuple[Table, ...]
    cut: tuple[CutFrom, ...]
    lengths: tuple[Table, ...]
    remarks: tuple[str, ...]


@dataclass(frozen=True)
class Cutting:
    """How to cut, in order, and a chart for each size."""

    title: str
    words: tuple[str, ...]
    how: tuple[str, ...]
    notes: tuple[str, ...]
    sizes: tuple[SizeChart, ...]
    style: str
    lays_title: str
    signs: Figure | None
    room: str
    lays: tuple[Figure, ...]


def cutting(book: Book) -> Cutting:
    """The cutting of the sizes in this booklet."""
    notes = [said for piece in book.first.quilt.pieces.values() for said in book.said(piece.note)]
    lays = tuple(_lays(book))
    return Cutting(
        "Cutting",
        book.said(book.first.quilt.words.get("cutting")),
        tuple(_how(book)),
        tuple(notes),
        tuple(_size(book, name) for name in book.sizes),
        how_planned(book),
        "How the pieces lie on the fabric",
        _signs(book),
        _room(book, lays),
        lays,
    )


def _size(book: Book, name: str) -> SizeChart:
    known, alone = book.sizes[name], len(book.sizes) == 1
    size = f", {wording.sides(finished(known), book.system)} finished"
    tables = (lengths(known, letter) for letter in known.quilt.pieces if _sorted(known, letter))
    below = (*sorted_lengths(known), *webs(known))
    return SizeChart(
        f"{wording.title(name)}{size}",
        f"cut-{name}",
        () if alone else charts(known),
        sentences(known) if alone else (),
        tuple(table for table in tables if table),
        below if alone else tuple(remarks(known, shared=not book.drawings)),
    )


def _sorted(known: Evidence, letter: str) -> bool:
    """Whether it is cut into lengths that are sorted."""
    return letter in known.cutting.letters and cut_to_length(known, letter)


def _signs(book: Book) -> Figure | None:
    """The rulers' signs and the others of the lays, as wide as they are."""
    figure = book.figure(KEY)
    return replace(figure, caption="") if figure else None


def _room(book: Book, lays: Sequence[Figure]) -> str:
    """How high the first lay stands on the page with its caption: no heading stands without it."""
    high = book.drawings[lays[0].name].inches[1] + CAPTION if lays else 0.0
    return f"{high:.2f}in"


def _lays(book: Book) -> Iterator[Figure]:
    """In every size those of cloth whose strips give several letters, or whose pre-cut pieces do
    in any size; of cloth that is cut a letter a strip, as the chart says it, one size's; of whole
    strips none, nor of pre-cuts that are used as they come."""
    alone = len(book.sizes) == 1
    plans = (plan for known in book.all for plan in known.cutting.fabrics.values())
    mixed_pieces = {plan.fabric for plan in plans if plan.sheets and _shares(plan)}
    for size, known in book.sizes.items():
        for fabric, plan in known.cutting.fabrics.items():
            mixed = by_strips(plan) or _shares(plan) or fabric in mixed_pieces
            shared = alone or mixed
            as_it_comes = not plan.steps
            if as_it_comes or all(is_whole(known, letter) for letter in order(plan)):
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


def _shares(plan: FabricPlan) -> bool:
    """Whether several letters come off one strip, or off one pre-cut piece."""
    rows = ([plan.strips[row.strip] for row in sheet.rows] for sheet in plan.sheets)
    return any(
        len({letter for strip in strips for letter in strip.letters}) > 1
        for strips in (*rows, *([strip] for strip in plan.strips))
    )


def _how(book: Book) -> Iterator[str]:
    """The actions of all fabrics, each told once, in the order in which they come."""
    actions = steps(book)
    for kind, tell in HOW.items():
        found = [step for step in actions if step.kind == kind]
        if found:
            yield tell(book, found)
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


def _straighten(book: Book, steps: Sequence[CutStep]) -> str:
    system = book.system
    ruler = wording.size(*TABLES[system.unit].long_ruler, system)
    twice = any(step.folds > 1 for step in steps)
    again = " Fold once more, fold to selvedge, edges parallel." if twice else ""
    width = wording.length(steps[0].width or 0, system)
    return (
        f"Straighten the edge: fold the fabric selvedge to selvedge until it lies flat.{again} "
        f"Lay the {ruler} ruler square to the fold and cut off about {width} at the {book.begins}."
    )


def _strip(book: Book, steps: Sequence[CutStep]) -> str:
    system, table = book.system, TABLES[book.system.unit]
    told = []
    if any(step.reason == "long" for step in steps):
        told.append("Cut the lengths off first, for the pieces along the fabric.")
    told.append(
        f"Cut the strips across the fabric, from the {book.begins}, in the order told below, the "
        "widest first."
    )
    if any(len(step.rulers) > 1 for step in steps):
        wide = wording.length(table.long_ruler.across, system)
        square = wording.size(*table.square, system)
        told.append(f"For strips wider than {wide} lay the {square} ruler beside the long one.")
    taped = [step.width for step in steps if step.reason == "taped" and step.width]
    if taped:
        told.append(
            f"Measure strips of {wording.length(min(taped), system)} and wider with a tape along "
            "both folded edges, mark them, and cut along the mark."
        )
    if any(step.on_fold for step in steps):
        widest = wording.length(table.long_ruler.across + table.square.across, system)
        told.append(
            f"For strips wider than {widest} fold the fabric once more along its length, edges "
            "parallel, and measure half the width from the fold."
        )
    return " ".join(told)


def _trim(_: Book, steps: Sequence[CutStep]) -> str:
    layers = wording.spelled(max(step.layers for step in steps))
    return (
        f"Stack strips of one width in up to {layers} layers, edges level, and trim off the "
        "selvedge ends. Square the ends of pre-cut strips in the same way."
    )


def _subcut(book: Book, steps: Sequence[CutStep]) -> str:
    stacked = any(step.layers > 1 for step in steps)
    layers = f", in stacks of up to {wording.spelled(LAYERS)} layers" if stacked else ""
    told = f"Cut the pieces from the strips, from the {book.begins}, the longest first{layers}."
    if any(step.folds and not step.on_fold for step in steps):
        told += " Open a strip before a piece would lie over its fold."
    if any(step.on_fold for step in steps):
        told += (
            " If one is longer than the ruler, fold once more and measure half from the fold; "
            "longer still, measure one with a tape and cut the others to match."
        )
    return told


HOW: Final[Mapping[str, Callable[[Book, Sequence[CutStep]], str]]] = {
    "straighten": _straighten,
    "strip": _strip,
    "trim": _trim,
    "subcut": _subcut,
}
