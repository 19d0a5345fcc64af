"""What to buy, read back: yards, metres, packs, batting and backing of every size."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from patternbook.booklet.readback.reading import Differs, Table, compared, numbers, title
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.records import Buy
from patternbook.forms import by_name
from patternbook.inch import printed
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import CutSize


def cloth(found: Sequence[Table], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """Every fabric's amount, and what lies behind the top."""
    for table in found:
        if table.chapter == "What you need" and table.column(next(iter(sizes))):
            if any(row.cells[0].startswith("Batting, at least") for row in table.rows):
                yield from _amounts(table, sizes)
        elif table.chapter == "Finishing":
            yield from _finishing(table, sizes)


def _amounts(table: Table, sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    for size, known in sizes.items():
        column = table.column(size)
        for name, plan in known.cutting.fabrics.items():
            if plan.strips and name:
                row = row_of(table, name)
                yield from compared(name, size, row, column, _bought(plan.buy, known))
                yield from each_at_least(name, size, row, known)
        for name, web in known.cutting.webs.items():
            yield from compared(name, size, row_of(table, name), column, _bought(web.buy, known))
        yield from _batting(table, size, known, column)


def row_of(table: Table, name: str) -> Line | None:
    """The first row of a fabric: its name, its use in brackets, its letters."""
    starts = tuple(f"{title(name)}{sign}" for sign in (" (", ":", ",", ""))
    rows = (row for row in table.rows if row.cells[0].startswith(starts[:3]))
    return next(rows, None) or table.row(starts[3])


def each_at_least(name: str, size: str, row: Line | None, known: Evidence) -> Iterator[Differs]:
    """How large each pre-cut piece must be, where the row says it."""
    label, said, sides = row.cells[0].partition(", each at least ") if row else ("", "", "")
    fabric = known.quilt.fabrics.get(name)
    if said and row and fabric:
        right = by_name[fabric.form].size(fabric.size, known.quilt.system) or ()
        if numbers(sides) != right:
            best = " × ".join(printed(side) for side in right if side is not None)
            yield Differs(f"the size of {label}", size, row.page, sides, best)


def _bought(buy: Buy, known: Evidence) -> tuple[Fraction | None, ...]:
    if buy.number is not None:
        return (Fraction(buy.packs),) if buy.packs else ()
    metres = buy.metres if known.quilt.system.unit == "in" else None
    return buy.amount, metres, buy.each_print


def _batting(table: Table, size: str, known: Evidence, column: int | None) -> Iterator[Differs]:
    batting = known.cutting.batting
    if batting is not None:
        row = table.row("Batting, at least")
        yield from compared("batting", size, row, column, _sides(batting.size))


def _sides(cut: CutSize) -> tuple[Fraction | None, ...]:
    return cut.across, cut.down


def _finishing(table: Table, sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    for size, known in sizes.items():
        column, plan = table.column(size), known.cutting
        if column is None:
            continue
        rows: list[tuple[str, tuple[Fraction | None, ...]]] = []
        if plan.backing is not None:
            rows.append(("Backing, at least", _sides(plan.backing.size)))
        if plan.batting is not None:
            rows.append(("Batting, at least", _sides(plan.batting.size)))
        if plan.binding is not None and plan.binding.square is None:
            strips = (Fraction(plan.binding.strips), plan.binding.cut)
            rows += [("Binding strips", strips), ("Binding needed", (plan.binding.length,))]
        for label, right in rows:
            yield from compared(label.lower(), size, table.row(label), column, right)
