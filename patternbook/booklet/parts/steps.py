"""The sewing in numbered steps, each with its picture, what it should measure and how many."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal, NamedTuple

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Row, Table
from patternbook.booklet.order import Together, together
from patternbook.booklet.pressing_words import press
from patternbook.booklet.step_facts import Fact
from patternbook.booklet.step_words import words
from patternbook.diagrams.naming import name as drawn

Pictures = Literal["beside", "half", "above"]
# Pictures up to so many inches wide stand beside words and tables, beside the words, above both.
BESIDE: Final = 2.2
SHARE: Final = 0.92  # letters of 8 points are then read as 7.4
HALF: Final = 3.6
FEW: Final = 3
TITLE: Final = "Sewing, step by step"
PAIRS: Final = "pairs-"
_DRAWN_FOR: Final = re.compile(r"\(drawn for ([^)]+)\)")
# The drawings that a step may show, by what is done in it; each is shown once.
PICTURES: Final[Mapping[str, tuple[str, ...]]] = {
    "strips": ("set",),
    "segments": ("set",),
    "line": ("pairs", "unit", "rows"),
    "lines": ("unit", "rows", "back"),
    "border": ("borders",),
    "piece": ("unit",),
}


@dataclass(frozen=True)
class StepShown:
    """One step: what is done, its check line, its figures size by size, and its pictures."""

    number: str
    anchor: str
    title: str
    does: tuple[str, ...]
    numbered: bool
    press: str
    check: str
    tables: tuple[Table, ...]
    note: tuple[str, ...]
    drawn: str
    elsewhere: str
    pictures: Pictures
    figures: tuple[Figure, ...]


@dataclass(frozen=True)
class Steps:
    """All steps, and what the author says before them."""

    title: str
    words: tuple[str, ...]
    shown: tuple[StepShown, ...]


def steps(book: Book) -> Steps:
    """Every step of the sizes in this booklet, once."""
    said = book.said(book.first.quilt.words.get("sewing"))
    all_steps = together(book.all)
    pictures = _pictures(book, all_steps)
    shown = tuple(_shown(book, step, pictures[step.number]) for step in all_steps)
    return Steps(TITLE, said, shown)


def _only(book: Book, step: Together) -> str:
    """Whom the step is for, where not all sizes have it."""
    if len(step.found) == len(book.sizes):
        return ""
    return f" ({wording.listed(step.found)} only)"


class Pictured(NamedTuple):
    """A step's drawings, or the step at which what it does was drawn already."""

    figures: tuple[Figure, ...]
    at: int | None = None


def _pictures(book: Book, steps: Sequence[Together]) -> Mapping[int, Pictured]:
    """Each step's drawings, each at the first step that it belongs to; pairs of pairs once."""
    shown: dict[str, int] = {}
    found: dict[int, Pictured] = {}
    for step in steps:
        names = _names(book, step)
        new = [name for name in names if name not in shown]
        if any(name.startswith(PAIRS) for name in shown):
            new = [name for name in new if not name.startswith(PAIRS)]
        earlier = None if new else next((shown[name] for name in names if name in shown), None)
        shown.update(dict.fromkeys(new, step.number))
        figures = (book.figure(name) for name in new)
        found[step.number] = Pictured(tuple(figure for figure in figures if figure), earlier)
    return found


def _names(book: Book, step: Together) -> tuple[str, ...]:
    kinds = PICTURES[step.any.kind]
    is_top = step.unit == book.first.quilt.top
    names = [
        kind if kind == "borders" and is_top else drawn(kind, step.unit, *size)
        for kind in kinds
        for size in ((), (book.middle,))
    ]
    return tuple(dict.fromkeys(name for name in names if name in book.drawings))


def _shown(book: Book, step: Together, pictured: Pictured) -> StepShown:
    figures = pictured.figures
    told = words(step, book.all)
    check, rows = figures_told(book, step, told.facts)
    tables = [Table("", ("", *book.names), rows)] if rows else []
    if told.orders:
        tables.insert(0, _orders(told.orders, told.start))
    return StepShown(
        number=str(step.number),
        anchor=f"step-{step.number}",
        title=f"{told.title}{_only(book, step)}",
        does=told.does,
        numbered=told.numbered,
        press=pressing(book, step),
        check=check,
        tables=tuple(tables),
        note=book.said(step.any.note),
        drawn=_drawn(book, pictured),
        elsewhere="glance" if told.orders and book.figure("tops") else "",
        pictures=_placed(book, figures, orders=bool(told.orders)),
        figures=tuple(_small(figure) for figure in figures),
    )


def _small(figure: Figure) -> Figure:
    """A little smaller than drawn, so that two steps stand on one page; the words name it."""
    return replace(figure, caption="", inches=figure.inches * SHARE)


def _placed(book: Book, figures: Sequence[Figure], *, orders: bool) -> Pictures:
    """Where the pictures stand; a table of few sizes finds room beside a wider one."""
    wide = sum(figure.inches for figure in figures) * SHARE
    narrow = not orders and len(book.sizes) <= FEW
    if wide <= BESIDE or (narrow and wide <= HALF):
        return "beside"
    return "half" if wide <= HALF else "above"


def _drawn(book: Book, pictured: Pictured) -> str:
    """Which size the pictures are of, where sizes differ; or where the picture stands."""
    if pictured.at is not None:
        return f"The picture stands at step {pictured.at}."
    for figure in pictured.figures:
        noted = _DRAWN_FOR.search(figure.caption)
        if noted:
            return f"The picture is drawn for {noted.group(1)}."
        if len(book.sizes) > 1 and figure.name.endswith(f"-{book.middle}"):
            return f"The picture is drawn for {book.middle}."
    return ""


def figures_told(book: Book, step: Together, facts: Sequence[Fact]) -> tuple[str, tuple[Row, ...]]:
    """Figures that all sizes share as one line of sentences; the others as rows by size."""
    line: list[str] = []
    rows: list[Row] = []
    for fact in facts:
        cells = tuple(
            fact.tell(step.found[size], known) if size in step.found else wording.NONE
            for size, known in book.sizes.items()
        )
        told = wording.same(cells)
        if told is not None:
            line.append(fact.line.format(told))
        else:
            rows.append(Row(fact.head, cells))
    return " ".join(line), tuple(rows)


def _orders(orders: Mapping[str, str], start: str) -> Table:
    """How the parts lie, a row a size."""
    rows = tuple(Row(wording.title(size), (f"{order}.",)) for size, order in orders.items())
    return Table("", ("Size", start), rows, ("words",))


def pressing(book: Book, step: Together) -> str:
    """The pressing of all sizes; size by size where they differ."""
    told = {size: press(made, book.sizes[size]) for size, made in step.found.items()}
    same = wording.same(tuple(told.values()))
    if same is not None:
        return same
    return " ".join(f"{wording.title(size)}: {words}" for size, words in told.items())
