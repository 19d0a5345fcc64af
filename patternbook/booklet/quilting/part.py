"""The quilting in the booklet itself: one page of it, and where the whole plan is to be found."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Table
from patternbook.booklet.quilting.areas import areas_table
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.figures import SHORT, figures_table
from patternbook.booklet.quilting.made import of_book
from patternbook.booklet.quilting.measures import told, where
from patternbook.booklet.quilting.steps import SEWN
from patternbook.diagrams.naming import name as drawn
from patternbook.quilt.records import Quilting as Suggested
from patternbook.quilting.asked import SAMPLER
from patternbook.quilting.designs import by_name
from patternbook.quilting.records import QuiltingPlan

ORDER = {
    "anchor": "the long seams and marked lines, to hold the layers",
    "lines": "the designs sewn in lines",
    "free motion": "the designs sewn freely",
    "border": "the border",
}


@dataclass(frozen=True)
class Quilting:
    """The author's words, the overview of the first size, its areas, the figures, the steps."""

    title: str
    words: tuple[str, ...]
    suggestions: tuple[str, ...]
    figure: Figure | None
    areas: Table
    figures: Table
    steps: tuple[str, ...]


def quilting(book: Book) -> Quilting | None:
    """None where there is no top to quilt."""
    return part(of_book(book))


def part(quilts: QuiltBook) -> Quilting | None:
    """The same from plans at hand."""
    if not quilts.plans:
        return None
    book = quilts.book
    size = next(iter(quilts.plans))
    quilt = quilts.known(size).quilt
    areas = areas_table(quilts.first, quilts.system)
    several = f" ({wording.title(size)})" if len(quilts.plans) > 1 else ""
    return Quilting(
        "Quilting",
        book.said(quilt.words.get("quilting")),
        tuple(line for design in quilt.quilting for line in _suggestion(book, design)),
        book.figure(drawn("quilts", size, "overview-small")),
        Table(f"The areas{several}", areas.head, areas.rows, areas.align),
        figures_table(quilts, SHORT),
        tuple(_steps(quilts, quilts.first)),
    )


def _suggestion(book: Book, wish: Suggested) -> Iterator[str]:
    """What the author says of an area beside the design, which the table tells, unless it is one
    of her own."""
    if wish.design and wish.design != SAMPLER and wish.design not in by_name:
        apart = f", lines {wording.length(wish.spacing, book.system)} apart" if wish.spacing else ""
        area = "all over" if wish.area == "all over" else f"in {wish.area}"
        yield f"{wording.capital(wish.design)}{apart}, {area}."
    yield from book.said(wish.note)


def _steps(quilts: QuiltBook, plan: QuiltingPlan) -> Iterator[str]:
    """The order in one paragraph, what holds it, and where to find the rest."""
    stages = [f"{ORDER[stage.name]} ({SEWN[stage.foot]})" for stage in plan.stages]
    start = plan.stages[0].walks[0].path[0] if plan.stages else None
    begin = f" Start {where(start, plan.top, quilts.system)}." if start else ""
    yield (
        "Baste, and try needle, thread and tension on a test piece of the same three layers. Then "
        f"sew, in this order: {'; '.join(stages)}.{begin} Match the thread to the top, the same "
        "colour in the bobbin."
    )
    far = told(plan.wishes.limit, quilts.system)
    source = "stated for the batting here" if plan.wishes.limit_stated else "assumed here"
    yield (
        f"No place is wider than the batting allows, {far} ({source}; your packet says what yours "
        "needs); the binding counts as a line."
    )
    yield (
        "The quilting pages, where they come with this booklet, show every step in pictures, each "
        "area close up, what to mark, a practice sheet, and a page for a long-arm quilter."
    )
