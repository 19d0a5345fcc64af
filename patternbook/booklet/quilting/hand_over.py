"""The page for a long-arm quilter: what is known of the quilt, and what is to be filled in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Align, Row, Table, finished
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.measures import limit, spread
from patternbook.proof.evidence import Evidence
from patternbook.quilting.records import QuiltingPlan

_Told = Callable[[QuiltBook, Evidence, QuiltingPlan], str]
BLANKS: Final = (
    "Which size it is",
    "Top edge, marked with a pin and a note at",
    "Batting: fibre and maker's limit",
    "Batting and backing brought or bought",
    "All-over or custom, and which design",
    "Thread colour, top and bobbin",
    "Trimmed, or left as it comes off",
    "Loose threads cut, top pressed, seams at the edge held",
    "Wanted by",
    "Price agreed",
    "Name and how to reach you",
)


@dataclass(frozen=True)
class HandOver:
    """What is known by size, and lines to write on."""

    title: str
    intro: str
    table: Table
    blanks_title: str
    blanks: tuple[str, ...]


def hand_over(quilts: QuiltBook) -> HandOver:
    """One page for all sizes."""
    rows = tuple(
        Row(
            head,
            tuple(tell(quilts, quilts.known(size), plan) for size, plan in quilts.plans.items()),
        )
        for head, tell in _ROWS
    )
    heads = tuple(wording.title(size) for size in quilts.plans)
    align: tuple[Align, ...] = tuple("words" for _ in heads)
    shown = tuple(row for row in rows if set(row.cells) != {wording.NONE})
    blanks = BLANKS if len(heads) > 1 else BLANKS[1:]
    return HandOver(
        "To hand over to a long-arm quilter",
        "Fill in this page and give it over with top, backing and batting. Do not baste.",
        Table("", ("", *heads), shown, align),
        "To fill in",
        blanks,
    )


def _size(quilts: QuiltBook, known: Evidence, _plan: QuiltingPlan) -> str:
    return wording.sides(finished(known), quilts.system)


def _backing(quilts: QuiltBook, known: Evidence, _plan: QuiltingPlan) -> str:
    plan = known.cutting.backing
    return wording.cut_size(plan.size, quilts.system) if plan else wording.NONE


def _batting(quilts: QuiltBook, known: Evidence, _plan: QuiltingPlan) -> str:
    plan = known.cutting.batting
    return wording.cut_size(plan.size, quilts.system) if plan else wording.NONE


def _limit(quilts: QuiltBook, _known: Evidence, plan: QuiltingPlan) -> str:
    return limit(plan, quilts.system)


def _density(quilts: QuiltBook, _known: Evidence, plan: QuiltingPlan) -> str:
    found = spread([one.drawn.spacing for one in plan.fills if one.drawn.paths], quilts.system)
    return found if found == wording.NONE else f"{found} apart"


def _designs(_quilts: QuiltBook, _known: Evidence, plan: QuiltingPlan) -> str:
    designs = dict.fromkeys(one.design for one in plan.fills if one.drawn.paths)
    if len(designs) == 1:
        return f"all over: {next(iter(designs))}"
    return f"custom: {wording.listed(designs)}; or one design all over"


_ROWS: Final[tuple[tuple[str, _Told], ...]] = (
    ("Top, finished", _size),
    ("Backing, at least", _backing),
    ("Batting, at least", _batting),
    ("Lines no farther apart than", _limit),
    ("Planned here", _designs),
    ("Density: lines about", _density),
)
