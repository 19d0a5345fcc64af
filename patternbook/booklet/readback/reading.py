"""What was read back: numbers in a cell, tables with a column for each size, and differences."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from patternbook.booklet.readback.tagged import Line
from patternbook.exact import Exact, Rational
from patternbook.inch import GLYPH, GLYPHS, PARTS, System, printed

_NUMBER: Final = re.compile(rf"(\d+)?({GLYPH})|(\d+)[ ](\d+)⁄(\d+)|(\d+)⁄(\d+)|(\d+(?:\.\d+)?)")
TOP: Final = "quilt top"


@dataclass(frozen=True)
class Differs:
    """A figure that is printed otherwise than the pattern has it."""

    what: str
    size: str
    page: int
    printed: str
    right: str


def numbers(text: str) -> tuple[Fraction, ...]:
    """Every number of a text, in order."""
    return tuple(_value(found) for found in _NUMBER.finditer(text))


def _value(found: re.Match[str]) -> Fraction:
    whole, glyph, mixed, top, bottom, only_top, only_bottom, plain = found.groups()
    if glyph:
        return Fraction(whole or 0) + PARTS[glyph]
    if mixed:
        return Fraction(mixed) + Fraction(int(top), int(bottom))
    return Fraction(int(only_top), int(only_bottom)) if only_top else Fraction(plain)


def title(name: str) -> str:
    """A name as a heading shows it."""
    words = name.replace("-", " ")
    return words[:1].upper() + words[1:]


def near(value: Exact | Rational, system: System) -> Fraction:
    """What can be printed of a length: itself, or the nearest mark of the ruler."""
    exact = Exact.of(value)
    finest = Fraction(1, 20) if system.unit == "cm" else system.step / 2
    if exact.rational and (exact.fraction % finest == 0 or exact.fraction % 1 in GLYPHS):
        return exact.fraction
    return (exact + system.step / 2).down(system.step)


@dataclass(frozen=True)
class Table:
    """A table: its head, its rows, and the headings that it stands under."""

    head: tuple[str, ...]
    rows: tuple[Line, ...]
    under: str
    chapter: str

    def column(self, size: str) -> int | None:
        """Where a size's figures stand; None where the table has no column of its own for it."""
        wanted = title(size)
        return next((at for at, word in enumerate(self.head) if at and word == wanted), None)

    def row(self, label: str) -> Line | None:
        """The row that begins with these words."""
        return next((row for row in self.rows if row.cells and row.cells[0] == label), None)


def tables(lines: Sequence[Line]) -> Iterator[Table]:
    """All tables; one that goes on over a page is one."""
    chapter = under = ""
    held: dict[int, tuple[list[Line], str, str]] = {}
    for line in lines:
        if line.kind in {"H1", "H2"}:
            chapter, under = line.words, ""
        elif line.kind == "H3":
            under = line.words
        elif line.kind == "TR":
            held.setdefault(line.table, ([], under, chapter))[0].append(line)
    for rows, where, part in held.values():
        yield Table(rows[0].cells, tuple(rows[1:]), where, part)


def compared(
    what: str, size: str, row: Line | None, cell: int | None, right: Sequence[Fraction | None]
) -> Iterator[Differs]:
    """A difference where the cell has other numbers than these, or there is no such row."""
    wanted = tuple(value for value in right if value is not None)
    shown = " and ".join(printed(value) for value in wanted) or "nothing"
    if row is None or cell is None or cell >= len(row.cells):
        if wanted:
            yield Differs(what, size, row.page if row else 0, "nothing", shown)
        return
    if numbers(row.cells[cell]) != wanted:
        yield Differs(what, size, row.page, row.cells[cell], shown)


def strange(
    what: str, size: str, page: int, text: str, known: Iterable[Fraction]
) -> Iterator[Differs]:
    """A difference for every number of a text that is none of these."""
    right = frozenset(known)
    for value in numbers(text):
        if value not in right:
            yield Differs(what, size, page, printed(value), "no figure of the pattern")


def by_name(names: Iterable[str]) -> Mapping[str, str]:
    """Names by the words that a heading shows for them."""
    return {title(name): name for name in names}
