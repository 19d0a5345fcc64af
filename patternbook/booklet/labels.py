"""Labels to cut out and clip to the piles of pieces: one for each letter of each size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, finished
from patternbook.booklet.chart import cut_to_length, order
from patternbook.booklet.chart_strips import lengths_of
from patternbook.booklet.html import Whole, sheets, titles
from patternbook.cutting.records import BINDING, FabricPlan
from patternbook.diagrams.naming import name as drawn
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Piece

NAMED: Final = 3  # so many units are named on a label; of more, how many


@dataclass(frozen=True)
class Label:
    """What is written on one: the letter, the cloth, the size as cut, how many, and for what."""

    letter: str
    fabric: str
    picture: Figure | None
    cut: str
    number: str
    use: str
    size: str


@dataclass(frozen=True)
class LabelPage:
    """All labels of one size."""

    title: str
    anchor: str
    labels: tuple[Label, ...]


def label_sheets(book: Book) -> Whole:
    """The sheets of labels, a page for each size."""
    pages = tuple(_page(book, name) for name in book.sizes)
    markup = sheets("labels", book, pages=pages)
    return Whole(markup, titles(markup))


def _page(book: Book, name: str) -> LabelPage:
    known = book.sizes[name]
    size = wording.sides(finished(known), book.system)
    plans = known.cutting.fabrics.items()
    labels = tuple(
        label
        for fabric, plan in plans
        for letter in order(plan)
        for label in _labels(book, known, fabric, plan, letter)
    )
    return LabelPage(f"{wording.title(name)}, {size} finished", f"labels-{name}", labels)


def _labels(
    book: Book, known: Evidence, fabric: str, plan: FabricPlan, letter: str
) -> Iterator[Label]:
    """One for a letter; one for each length of a letter that is cut into logs, or along the
    cloth."""
    for cut, number in _piles(known, plan, letter):
        yield Label(
            letter="Binding" if letter == BINDING else letter,
            fabric=wording.title(fabric or "fabric"),
            picture=_swatch(book, fabric),
            cut=cut,
            number=number,
            use="" if letter == BINDING else used_in(known, letter),
            size=f"{book.heading.pattern}, {wording.title(known.quilt.size)}",
        )


def _swatch(book: Book, fabric: str) -> Figure | None:
    figure = book.figure(drawn("swatch", fabric)) if fabric else None
    return Figure(figure.name, figure.alt, "", figure.inches) if figure else None


def _piles(known: Evidence, plan: FabricPlan, letter: str) -> Iterator[tuple[str, str]]:
    """The size as cut, and how many, of each pile of a letter."""
    system = known.quilt.system
    if letter == BINDING:
        binding = known.cutting.binding
        if binding is not None:
            width = wording.length(binding.cut, system)
            count = wording.counted(binding.strips, "strip")
            yield f"{width} wide", "bias" if binding.square is not None else count
        return
    piece = known.quilt.pieces[letter]
    if not piece.is_strip:
        yield wording.cut_size(piece.cut, system), _pieces(known, piece)
    elif cut_to_length(known, letter) or piece.along == "length":
        for length, number in lengths_of(plan, letter).items():
            size = wording.size(piece.cut.across, length, system)
            yield size, wording.counted(number, "length")
    else:
        yield f"{wording.length(piece.cut.across, system)} wide", _strips(plan, letter)


def _pieces(known: Evidence, piece: Piece) -> str:
    """Squares or pieces, and the triangles or shapes that they become."""
    plan = known.cutting.letters[piece.letter]
    count = wording.counted(plan.cuts, wording.shape(piece.cut))
    if plan.each > 1:
        return f"{count}, cut into {wording.counted(plan.yields, 'triangle')}"
    by_template = piece.template is not None and piece.template.trims
    return f"{count}, cut by the template" if by_template else count


def _strips(plan: FabricPlan, letter: str) -> str:
    number = sum(strip.times for strip in plan.strips if letter in strip.letters)
    return wording.counted(number, "strip")


def used_in(known: Evidence, letter: str) -> str:
    """The units and borders that take it: `for novels, poems and rhymes`."""
    quilt = known.quilt
    units = [unit.name for unit in quilt.units.values() if unit.uses.get(letter)]
    runs = [run.use for run in quilt.pieces[letter].runs]
    names = tuple(dict.fromkeys(_named(known, name) for name in (*units, *runs)))
    if len(names) > NAMED:
        return f"for {', '.join(names[:NAMED])} and {len(names) - NAMED} more"
    return f"for {wording.listed(names)}" if names else ""


def _named(known: Evidence, name: str) -> str:
    return "the quilt top" if name == known.quilt.top else name.replace("-", " ")
