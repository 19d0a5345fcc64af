"""The quilting pages, read back: the areas of each size, and the figures of its plan."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final

from patternbook.booklet.readback.reading import Differs, Table, compared, tables, title
from patternbook.booklet.readback.tagged import Line
from patternbook.inch import System
from patternbook.quilting.records import Path, QuiltingPlan

AREAS: Final = "Letter"
SURE: Final = 2e-3  # a certified gap may be told so much less than it is
Right = tuple[Fraction, ...]


def quilting(
    lines: Sequence[Line], plans: Mapping[str, QuiltingPlan], system: System
) -> Iterator[Differs]:
    """Every area and every figure of every size, and no size left out."""
    found = tuple(tables(lines))
    for size, plan in plans.items():
        yield from _areas(found, size, plan, system)
        yield from _figures(found, size, plan, system)


def _areas(
    found: Sequence[Table], size: str, plan: QuiltingPlan, system: System
) -> Iterator[Differs]:
    """How many of each letter, and how far apart its lines lie."""
    own = next(
        (
            table
            for table in found
            if table.head[:2] == (AREAS, "How many") and table.chapter.startswith(f"{title(size)},")
        ),
        None,
    )
    if own is None:
        yield Differs("the areas", size, 0, "nothing", "a table of them")
        return
    letters = [row.cells[0] for row in own.rows]
    wanted = sorted({area.letter for area in plan.divided.areas})
    if sorted(letters) != wanted:
        yield Differs("the areas", size, own.rows[0].page, ", ".join(letters), ", ".join(wanted))
    for letter in wanted:
        row = own.row(letter)
        number = sum(area.letter == letter for area in plan.divided.areas)
        yield from compared(f"areas of {letter}", size, row, 1, (Fraction(number),))
        fills = [one for one in plan.fills if one.area.letter == letter]
        apart = sorted({_near(one.drawn.spacing, system) for one in fills if one.drawn.paths})
        shown = (apart[0], apart[-1]) if len(apart) > 1 else tuple(apart)
        yield from compared(f"lines of {letter}", size, row, 4, shown)
        designs = {one.design for one in fills} or {"left open"}
        if row is not None and row.cells[3] not in designs:
            right = ", ".join(sorted(designs))
            yield Differs(f"the design of {letter}", size, row.page, row.cells[3], right)


def _figures(
    found: Sequence[Table], size: str, plan: QuiltingPlan, system: System
) -> Iterator[Differs]:
    right = dict(_right(plan, system))
    own = [table for table in found if table.row("Planned starts") and table.column(size)]
    if not own:
        yield Differs("the figures", size, 0, "nothing", "a table of them")
    for table in own:
        for row in table.rows:
            if row.cells[0] not in right:
                yield Differs("a figure", size, row.page, row.cells[0], "no figure of the plan")
                continue
            yield from compared(row.cells[0], size, row, table.column(size), right[row.cells[0]])


def _right(plan: QuiltingPlan, system: System) -> Iterator[tuple[str, Right]]:
    """What each row must say; lengths and starts are counted from the walks themselves."""
    sums = plan.sums
    walks = [walk for stage in plan.stages for walk in stage.walks]
    stitched = sum(_length(leg.path) for walk in walks for leg in walk.legs)
    changes = len(sums.changes)
    yield "Stitching, about", (_in_shop(stitched / system.bolt),)
    yield "Thread on top, about", (_up(sums.thread_top, Fraction(10)),)
    yield "Thread in the bobbins, about", (_up(sums.thread_bobbin, Fraction(10)),)
    yield "Bobbins", (Fraction(sums.bobbins),)
    yield "Planned starts", (Fraction(len(walks)),)
    yield "Bobbin changes on the way", (Fraction(changes),)
    yield "Hours at the machine", _hours(*sums.hours)
    yield "Widest place without stitches", _gap(plan.gap.high, system)
    yield "The same, binding not counted", _gap(plan.gap_bare.high, system)
    yield "The batting allows", (_near(plan.wishes.limit, system),)
    yield "Spread of the density", (_up(sums.evenness * 100, Fraction(1)),)
    yield "Stitched again", (_up(sums.retraced * 100, Fraction(1)),)
    most = max((times for times, long in sums.passes.items() if long > 1e-6), default=0)
    yield "Most threads over one another", (Fraction(most),)


def _length(path: Path) -> float:
    return sum(math.dist(one, other) for one, other in pairwise(path))


def _near(value: float, system: System) -> Fraction:
    return round(Fraction(value) / system.step) * system.step


def _up(value: float, step: Fraction) -> Fraction:
    """The next step above, floats' own dust aside."""
    return math.ceil(value / float(step) - 1e-6) * step


def _in_shop(length: float) -> Fraction:
    return _up(length, Fraction(1, 2) if length < 10 else Fraction(1))


def _gap(high: float, system: System) -> Right:
    return (_up(high - SURE, system.step),) if math.isfinite(high) else ()


def _hours(least: float, most: float) -> Right:
    quarter = Fraction(1, 4)
    low = max(quarter, math.floor(least / 0.25 + 1e-6) * quarter)
    high = max(low, _up(most, quarter))
    if low >= 10:
        low, high = Fraction(int(low)), Fraction(math.ceil(high))
    return (low,) if low == high else (low, high)
