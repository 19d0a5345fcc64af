"""The figures beside the main ones, read back: what is over, needed, joined and taken in each."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction
from functools import partial
from typing import Final

from patternbook.booklet.readback.reading import Differs, Table, near, numbers, title
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.records import Buy, Panels
from patternbook.exact import Exact
from patternbook.inch import printed
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Quilt

Values = tuple[Fraction, ...]
Tell = Callable[[Evidence], Values | None]
CENTIMETRES_AN_INCH: Final = Fraction(254, 100)
TEN: Final = Fraction(10)


def beside(found: Sequence[Table], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """Every row of the tables of cloth and of finishing, and the columns of the table of sizes."""
    for table in found:
        if table.chapter == "What you need":
            yield from _rows(table, sizes, dict(_needs(table, sizes)))
        elif table.chapter == "Finishing":
            yield from _rows(table, sizes, FINISHING)
        elif table.head[:1] == ("Size",) and "Pieces" in table.head:
            yield from _glance(table, sizes)


def _rows(
    table: Table, sizes: Mapping[str, Evidence], told: Mapping[str, Tell]
) -> Iterator[Differs]:
    for row in table.rows:
        tell = told.get(row.cells[0])
        for size, known in sizes.items() if tell else ():
            column = table.column(size)
            if tell and column is not None:
                yield from _exactly(row.cells[0].lower(), size, row, column, tell(known))


def _exactly(
    what: str, size: str, row: Line, column: int, right: Values | None
) -> Iterator[Differs]:
    """A difference where the cell has any other numbers than just these; None: no figure known."""
    if right is None:
        return
    cell = row.cells[column] if column < len(row.cells) else "nothing"
    if numbers(cell) != right:
        shown = " and ".join(printed(value) for value in right) or "nothing"
        yield Differs(what, size, row.page, cell, shown)


def _needs(table: Table, sizes: Mapping[str, Evidence]) -> Iterator[tuple[str, Tell]]:
    spare = not any(row.cells[0].startswith("Batting") for row in table.rows)
    names = {name for known in sizes.values() for name in known.cutting.fabrics}
    webs = {name for known in sizes.values() for name in known.cutting.webs}
    for row in table.rows:
        label = row.cells[0]
        name = _called(label, {*names, *webs})
        if label.startswith("Batting, a package"):
            yield label, _pack
        elif label.startswith("Thread"):
            yield label, _thread
        elif label.endswith(" over each side"):
            yield label, _of_backing(frame=False)
        elif label.endswith(", quilted on a frame"):
            yield label, _of_backing(frame=True)
        elif name and label.endswith(", needed"):
            yield label, _of(name, partial(_precut, name))
        elif name and spare:
            yield label, _of(name, _spare)


def _called(label: str, names: set[str]) -> str | None:
    """The fabric that a row is of: the longest name that it begins with."""
    ends = (" (", ":", ",")
    fits = (
        name
        for name in names
        if name and (label == title(name) or label.startswith(tuple(title(name) + e for e in ends)))
    )
    return max(fits, key=len, default=None)


def _of(name: str, tell: Callable[[Buy, Quilt], Values]) -> Tell:
    def told(known: Evidence) -> Values | None:
        plan = known.cutting.fabrics.get(name) or known.cutting.webs.get(name)
        return tell(plan.buy, known.quilt) if plan else ()

    return told


def _spare(buy: Buy, quilt: Quilt) -> Values:
    if buy.number is not None and buy.spare_precuts is not None:
        return (Fraction(buy.spare_precuts),) if buy.spare_precuts else ()
    if not buy.amount:
        return ()
    gives = sorted((number for number in buy.more.values() if number), reverse=True)
    return near(buy.spare, quilt.system), *(Fraction(number) for number in gives[:2])


def _precut(name: str, buy: Buy, quilt: Quilt) -> Values:
    fabric = quilt.fabrics[name]
    if buy.number is None:
        return ()
    sides = fabric.size or ()
    return (Fraction(buy.number), *(side for side in sides if side is not None))


def _of_backing(*, frame: bool) -> Tell:
    def told(known: Evidence) -> Values:
        plan = known.cutting.backing
        if plan is None:
            return ()
        return _cloth(plan.frame.best if frame else plan.best, inches=plan.unit == "yd")

    return told


def _cloth(best: Panels, *, inches: bool) -> Values:
    return (best.amount, best.metres) if inches else (best.amount,)


def _pack(known: Evidence) -> Values:
    plan = known.cutting.batting
    if plan is None or plan.pack is None:
        return ()
    whole = ((side + Fraction(1, 2)) // 1 * Fraction(1) for side in plan.pack if side is not None)
    return (*(() if plan.packs == 1 else (Fraction(plan.packs),)), *whole)


def _roll(known: Evidence) -> Values:
    plan = known.cutting.batting
    if plan is None or plan.roll is None or plan.roll_width is None:
        return ()
    bought = _cloth(plan.roll, inches=known.quilt.system.unit == "in")
    return (*bought, near(plan.roll_width, known.quilt.system))


def _thread(known: Evidence) -> Values:
    thread = known.sewing.totals.thread
    return ((thread / known.quilt.system.bolt).up(TEN),) if thread.sign() else ()


def _lengths(known: Evidence) -> Values:
    plan = known.cutting.backing
    if plan is None:
        return ()
    return Fraction(plan.best.panels), near(plan.best.each, known.quilt.system)


def _joined(known: Evidence) -> Values:
    plan = known.cutting.binding
    return (near(plan.made, known.quilt.system),) if plan else ()


def _left(known: Evidence) -> Values:
    plan = known.cutting.binding
    return (near(plan.left, known.quilt.system),) if plan and plan.left > 0 else ()


def _strip(known: Evidence) -> Values:
    plan = known.cutting.backing
    strip = plan.best.insert if plan else None
    return (
        tuple(near(side, known.quilt.system) for side in (strip.width, strip.length))
        if strip
        else ()
    )


def _instead(*, frame: bool) -> Tell:
    """Size and amount for the other way of quilting."""

    def told(known: Evidence) -> Values | None:
        plan = known.cutting.backing
        if plan is None or plan.stated:
            return ()
        way = plan.frame if frame else plan.home
        if way.over == plan.over:
            return ()
        sides = (near(side, known.quilt.system) for side in way.size if side is not None)
        return (*sides, way.best.amount)

    return told


def _batting_lengths(known: Evidence) -> Values:
    plan = known.cutting.batting
    if plan is None or plan.roll is None or plan.roll_width is None:
        return ()
    each, wide = (near(one, known.quilt.system) for one in (plan.roll.each, plan.roll_width))
    return Fraction(plan.roll.panels), each, wide


def _squares(known: Evidence) -> Values:
    plan = known.cutting.binding
    if plan is None or plan.square is None:
        return ()
    strips = (Fraction(plan.bias_strips),) if plan.bias_strips else ()
    return (Fraction(plan.squares), plan.square, plan.square, *strips)


def _joins(known: Evidence) -> Values:
    plan = known.cutting.binding
    return (Fraction(plan.joins),) if plan and plan.joins else ()


def _label(known: Evidence) -> Values:
    plan, system = known.cutting.label, known.quilt.system
    return tuple(near(side, system) for side in plan.cut if side is not None) if plan else ()


FINISHING: Final[Mapping[str, Tell]] = {
    "Backing lengths": _lengths,
    "Strip let in, cut": _strip,
    "At home instead": _instead(frame=False),
    "On a frame instead": _instead(frame=True),
    "Batting lengths": _batting_lengths,
    "Binding squares": _squares,
    "Binding joins": _joins,
    "Binding once joined": _joined,
    "Binding left over": _left,
    "Label, cut": _label,
}


def _glance(table: Table, sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    columns: Mapping[str, Tell] = {
        "In centimetres": _centimetres,
        "Places where seams must meet": lambda known: (Fraction(known.sewing.totals.matches),),
        "Smallest piece, finished": _smallest,
    }
    for size, known in sizes.items():
        row = table.row(title(size))
        for head, tell in columns.items():
            if row is not None and head in table.head:
                right = tell(known)
                yield from _exactly(head.lower(), size, row, table.head.index(head), right)


def _centimetres(known: Evidence) -> Values | None:
    """To the nearest whole one, a half upward, of what the ruler shows."""
    top = known.quilt.finished
    if top is None:
        return None
    shown = (Exact.of(side).up(known.quilt.system.step) * CENTIMETRES_AN_INCH for side in top)
    return tuple(Fraction((side * 2 + 1) // 2) for side in shown)


def _smallest(known: Evidence) -> Values:
    patch = min(known.patches, key=lambda one: (one.across * one.down, one.letter))
    named = numbers(patch.letter)  # a letter may be told apart by a number: `A2`
    sides = (near(side, known.quilt.system) for side in (patch.across, patch.down))
    return (*named, *sides)
