"""The sewing in numbered steps, each with its picture, what it should measure and how many."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Row, Table
from patternbook.booklet.order import Together, together
from patternbook.booklet.pressing_words import press
from patternbook.booklet.step_words import Fact, words

TITLE = "Sewing, step by step"


@dataclass(frozen=True)
class StepShown:
    """One step: what is done, its check line, its figures size by size, and its picture."""

    number: int
    anchor: str
    title: str
    does: tuple[str, ...]
    press: str
    check: str
    tables: tuple[Table, ...]
    note: tuple[str, ...]
    figure: Figure | None


@dataclass(frozen=True)
class Steps:
    """All steps, and what the author says before them."""

    title: str
    words: tuple[str, ...]
    shown: tuple[StepShown, ...]


def steps(book: Book) -> Steps:
    """Every step of the sizes in this booklet, once."""
    said = book.said(book.first.quilt.words.get("sewing"))
    shown = tuple(_shown(book, step) for step in together(book.all))
    return Steps(TITLE, said, shown)


def _shown(book: Book, step: Together) -> StepShown:
    told = words(step, book.all, book.first.quilt.top)
    check, rows = figures(book, step, told.facts)
    head = ("", *book.names)
    tables = [Table("In each size", head, rows)] if rows else []
    if told.orders:
        tables.insert(0, _orders(told.orders))
    return StepShown(
        number=step.number,
        anchor=f"step-{step.number}",
        title=told.title,
        does=told.does,
        press=pressing(book, step),
        check=check,
        tables=tuple(tables),
        note=book.said(step.any.note),
        figure=book.figure(f"step-{step.number}"),
    )


def figures(book: Book, step: Together, facts: Sequence[Fact]) -> tuple[str, tuple[Row, ...]]:
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


def _orders(orders: dict[str, str] | object) -> Table:
    """How the parts lie, a row a size."""
    assert isinstance(orders, dict)
    rows = tuple(Row(wording.title(size), (f"{order}.",)) for size, order in orders.items())
    return Table("The order", ("Size", "In this order"), rows, ("words",))


def pressing(book: Book, step: Together) -> str:
    """The pressing of all sizes; size by size where they differ."""
    told = {size: press(made, book.sizes[size]) for size, made in step.found.items()}
    same = wording.same(tuple(told.values()))
    if same is not None:
        return same
    return " ".join(f"{wording.title(size)}: {words}" for size, words in told.items())
