"""How it may be quilted: the author's suggestions, the lines as planned, and a map of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Table, told_by_size
from patternbook.diagrams.naming import name as drawn
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Quilting as Suggested
from patternbook.quilting.echo import plan
from patternbook.quilting.echo_records import QuiltingMap


@dataclass(frozen=True)
class Quilting:
    """The suggestions, the lines by size, what to mind, and the map."""

    title: str
    words: tuple[str, ...]
    suggestions: tuple[str, ...]
    table: Table
    advice: tuple[str, ...]
    figures: tuple[Figure, ...]


def quilting(book: Book) -> Quilting | None:
    """None where there is no top to quilt."""
    maps = {size: plan(known.quilt, known.patches)[0] for size, known in book.sizes.items()}
    planned = {size: one for size, one in maps.items() if one is not None}
    if not planned:
        return None
    quilt = book.first.quilt
    figure = (
        book.figure("quiltings")
        if len(book.sizes) > 1
        else book.figure(drawn("quilting", quilt.size))
    )
    return Quilting(
        "Quilting",
        book.said(quilt.words.get("quilting")),
        tuple(line for design in quilt.quilting for line in _suggestion(book, design)),
        Table("The lines", ("", *book.names), told_by_size(book, _rows(planned))),
        (_lines(book, planned), *_advice(book, next(iter(planned.values())))),
        (figure,) if figure else (),
    )


def _suggestion(book: Book, design: Suggested) -> Iterator[str]:
    apart = f", {wording.length(design.spacing, book.system)} apart" if design.spacing else ""
    area = "all over" if design.area == "all over" else f"in {design.area}"
    yield f"{wording.capital(design.design)}{apart}, {area}."
    yield from book.said(design.note)


def _rows(
    planned: Mapping[str, QuiltingMap],
) -> tuple[tuple[str, Callable[[Evidence], str]], ...]:
    def of(tell: Callable[[QuiltingMap, Evidence], str]) -> Callable[[Evidence], str]:
        def cell(known: Evidence) -> str:
            one = planned.get(known.quilt.size)
            return tell(one, known) if one else wording.NONE

        return cell

    return (
        ("Lines", of(lambda one, _: str(len(one.lines)))),
        ("Thread on top, about", of(_thread)),
    )


RUN: Final = {"down": "from top to bottom", "across": "from side to side"}


def _lines(book: Book, planned: Mapping[str, QuiltingMap]) -> str:
    """How the lines run and how far apart they come to lie, size by size where that differs."""
    runs = wording.by_size({size: RUN[one.way] for size, one in planned.items()})
    gaps = {size: wording.length(one.gap, book.system) for size, one in planned.items()}
    return f"As drawn, the lines run {runs}, at most {wording.by_size(gaps)} apart."


def _thread(one: QuiltingMap, known: Evidence) -> str:
    """As long as the lines, and a fifth for what the stitches take up (common practice)."""
    system = known.quilt.system
    needed = (one.length * 6 / 5 / system.bolt).up(wording.TEN)
    return wording.amount(needed, system.bolt_unit)


def _advice(book: Book, one: QuiltingMap) -> Iterator[str]:
    far = wording.length(one.limit, book.system)
    source = "stated for the batting here" if one.limit_stated else "assumed here"
    yield (
        f"Lines no more than {far} apart hold most battings ({source}; your packet says what "
        "yours needs)."
    )
    yield (
        "Try thread, needle and tension on a scrap of the same three layers first. Start with the "
        "line in the middle and work outward; then turn the quilt and do the other half. "
        "All lines of one half run the same way, as the arrows of the drawing show."
    )
