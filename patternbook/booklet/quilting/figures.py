"""The figures of the quilting, a column for each size."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Row, Table
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.measures import (
    at_most,
    hours,
    in_shop,
    limit,
    percent,
    thread,
)
from patternbook.inch import System
from patternbook.quilting.records import QuiltingPlan

STITCHED: Final = "Stitching, about"
TOP: Final = "Thread on top, about"
BOBBIN: Final = "Thread in the bobbins, about"
BOBBINS: Final = "Bobbins"
STARTS: Final = "Planned starts"
CHANGES: Final = "Bobbin changes on the way"
HOURS: Final = "Hours at the machine"
GAP: Final = "Widest place without stitches"
BARE: Final = "The same, binding not counted"
LIMIT: Final = "The batting allows"
EVEN: Final = "Spread of the density"
AGAIN: Final = "Stitched again"
PASSES: Final = "Most threads over one another"
_Told = Callable[[QuiltingPlan, System], str]
ROWS: Final[tuple[tuple[str, _Told], ...]] = (
    (STITCHED, lambda plan, system: in_shop(plan.sums.stitched, system)),
    (TOP, lambda plan, system: thread(plan.sums.thread_top, system)),
    (BOBBIN, lambda plan, system: thread(plan.sums.thread_bobbin, system)),
    (BOBBINS, lambda plan, _: str(plan.sums.bobbins)),
    (STARTS, lambda plan, _: str(plan.sums.starts)),
    (CHANGES, lambda plan, _: str(len(plan.sums.changes))),
    (HOURS, lambda plan, _: hours(*plan.sums.hours)),
    (GAP, lambda plan, system: at_most(plan.gap.high, system)),
    (BARE, lambda plan, system: at_most(plan.gap_bare.high, system)),
    (LIMIT, limit),
    (EVEN, lambda plan, _: percent(plan.sums.evenness)),
    (AGAIN, lambda plan, _: percent(plan.sums.retraced)),
    (PASSES, lambda plan, _: str(most_passes(plan))),
)
SHORT: Final = (STITCHED, TOP, BOBBIN, BOBBINS, STARTS, HOURS, GAP)


def most_passes(plan: QuiltingPlan) -> int:
    """How often the needle goes over the place that it goes over most."""
    return max((times for times, long in plan.sums.passes.items() if long > 1e-6), default=0)


def figures_table(quilts: QuiltBook, only: tuple[str, ...] = ()) -> Table:
    """All figures, or these alone."""
    rows = tuple(
        Row(head, tuple(tell(plan, quilts.system) for plan in quilts.plans.values()))
        for head, tell in ROWS
        if not only or head in only
    )
    heads = tuple(wording.title(size) for size in quilts.plans)
    return Table("The figures", ("", *heads), rows)
