"""The tables of strips in the cutting chart, read back: which strip gives what, in what lengths."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import groupby, pairwise
from typing import Final

from patternbook.booklet.readback.chart import SHORT, is_of, logs
from patternbook.booklet.readback.reading import Differs, Table, numbers
from patternbook.booklet.readback.spelled import given
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.records import BINDING, FabricPlan
from patternbook.inch import printed
from patternbook.proof.evidence import Evidence

STRIPS: Final = ("In order", "Strips", "Wide", "Each gives")
LENGTHS: Final = "Strips of "
ALL: Final = "In all"


def shared(found: Sequence[Table], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """Every strip that is told by itself, and every length that strips are cut into."""
    for size, known in sizes.items():
        own = [table for table in found if is_of(table, size, len(sizes))]
        fabrics = {f"From {name.replace('-', ' ')}": name for name in known.cutting.fabrics}
        told: set[str] = set()
        for short, strips in pairwise(own):
            fabric = fabrics.get(short.head[0])
            if short.head[1:] == SHORT and fabric is not None:
                told.add(fabric)
                yield from _strips(fabric, size, strips, known.cutting.fabrics[fabric])
        yield from _lengths(own, size, known, told)


def _strips(fabric: str, size: str, table: Table, plan: FabricPlan) -> Iterator[Differs]:
    """The strips in order with their widths, and all that they give."""
    if table.head != STRIPS:
        yield Differs(f"the strips of {fabric}", size, 0, "nothing", "a table of them")
        return
    page = table.rows[0].page if table.rows else 0
    widths: list[Fraction] = []
    gives: Counter[str] = Counter()
    for row in table.rows:
        times, wide = numbers(row.cells[1])[0], numbers(row.cells[2])[0]
        widths += [wide] * int(times)
        each = 1 if row.cells[3].startswith("joined") else int(times)
        for letter, number in given(row.cells[3]).items():
            gives[letter] += number * each
    right = [strip.width for strip in plan.strips for _ in range(strip.times)]
    yield from _same(f"the strips of {fabric}", size, page, _told(widths), _told(right))
    for letter in dict.fromkeys(letter for strip in plan.strips for letter in strip.letters):
        if letter != BINDING:
            wanted = sum(strip.pieces(letter) for strip in plan.strips)
            what = f"what strips give of {letter}"
            yield from _same(what, size, page, str(gives[letter]), str(wanted))


def _told(widths: Sequence[Fraction]) -> str:
    return ", ".join(f"{len([*same])} × {printed(width)}" for width, same in groupby(widths))


def _same(what: str, size: str, page: int, shown: str, right: str) -> Iterator[Differs]:
    if shown != right:
        yield Differs(what, size, page, shown, right)


def _lengths(own: Sequence[Table], size: str, known: Evidence, told: set[str]) -> Iterator[Differs]:
    """How many of each length the strips of a letter give, row by row and in all."""
    tables = {table.head[0].removeprefix(LENGTHS): table for table in own if _of_lengths(table)}
    for letter, piece in known.quilt.pieces.items():
        plan = known.cutting.letters.get(letter)
        if plan is None or plan.fabric in told or not logs(piece, known):
            continue
        right = _cut(known.cutting.fabrics[plan.fabric], letter)
        if not right:
            continue
        if letter not in tables:
            yield Differs(f"the lengths of {letter}", size, 0, "nothing", "a table of them")
            continue
        for shown in _read(tables[letter]):
            page = tables[letter].rows[0].page
            yield from _same(f"the lengths of {letter}", size, page, _listed(shown), _listed(right))


def _of_lengths(table: Table) -> bool:
    return bool(table.head) and table.head[0].startswith(LENGTHS)


def _cut(plan: FabricPlan, letter: str) -> Mapping[Fraction, int]:
    found: Counter[Fraction] = Counter()
    for strip in plan.strips:
        for cut in strip.cuts if not strip.join else ():
            if cut.letter == letter:
                long = cut.across if strip.along == "length" else cut.along
                found[long] += cut.number * strip.times
    return found


def _read(table: Table) -> Iterator[Mapping[Fraction, int]]:
    """What all strips give by their own rows, and by the row that says it in all."""
    columns = [numbers(head)[0] for head in table.head[1:]]
    summed: Counter[Fraction] = Counter()
    for row in table.rows:
        cells = dict(zip(columns, row.cells[1:], strict=False))
        if row.cells[0] == ALL:
            yield {length: _number(cell) for length, cell in cells.items()}
            continue
        for length, cell in cells.items():
            summed[length] += _number(cell) * _times(row)
    yield summed


def _times(row: Line) -> int:
    found = numbers(row.cells[0])
    return int(found[0]) if found else 0


def _number(cell: str) -> int:
    found = numbers(cell)
    return int(found[0]) if found else 0


def _listed(found: Mapping[Fraction, int]) -> str:
    return ", ".join(f"{found[one]} × {printed(one)}" for one in sorted(found) if found[one])
