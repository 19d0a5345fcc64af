"""The tools that this pattern needs: no ruler larger than its cuts ask for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Book
from patternbook.cutting.records import CutStep, Ruler


@dataclass(frozen=True)
class Tools:
    """A list of tools."""

    title: str
    tools: tuple[str, ...]


def tools(book: Book) -> Tools:
    """Cutting, sewing, layering, and what the author adds."""
    return Tools("Tools", (*_cutting(book), *_sewing(book), *book.heading.tools))


def steps(book: Book) -> tuple[CutStep, ...]:
    """All that is done at the cutting table, in any of these sizes."""
    plans = (plan for known in book.all for plan in known.cutting.fabrics.values())
    return tuple(step for plan in plans for step in plan.steps)


def rulers(book: Book) -> tuple[Ruler, ...]:
    """The rulers that the cuts of these sizes are made with, the smallest first."""
    used = {ruler for step in steps(book) for ruler in step.rulers}
    return tuple(sorted(used, key=lambda ruler: (ruler.across * ruler.down, ruler)))


def _cutting(book: Book) -> Iterator[str]:
    found = rulers(book)
    if not found:
        return
    mat = max(step.mat for step in steps(book) if step.mat)
    yield "rotary cutter with a sharp blade"
    yield f"cutting mat, {wording.size(*mat, book.system)} or larger"
    for ruler in found:
        yield f"ruler, {wording.size(*ruler, book.system)}"


def _sewing(book: Book) -> Iterator[str]:
    seam = wording.length(book.first.quilt.seam, book.system)
    yield f"sewing machine with a {seam} guide or foot"
    yield "iron and pressing board"
    yield "pins, scissors and seam ripper"
    if any(piece.template for known in book.all for piece in known.quilt.pieces.values()):
        yield "pencil, and card or template plastic"
        yield "scissors for paper"
    if any(known.cutting.backing for known in book.all):
        yield "curved safety pins for basting"
    feet = {stage.foot for known in book.all if known.quilting for stage in known.quilting.stages}
    if feet:
        yield "walking foot and a marker that comes off (try it first)"
    if "ruler" in feet:
        yield "ruler foot and a thick quilting ruler to go with it"
    if "free motion" in feet:
        yield "free-motion foot, and a test piece of the three layers"
    if any(known.cutting.binding for known in book.all):
        yield "clips or a needle for the binding"
