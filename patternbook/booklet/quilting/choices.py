"""The card of choices: for each letter, what it would be in another way of sewing."""

from __future__ import annotations

from itertools import groupby
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Row, Table
from patternbook.quilting.records import Foot, QuiltingPlan

FEET: Final[tuple[Foot, ...]] = ("walking foot", "ruler", "free motion")
HEAD: Final = ("Letter", "Walking foot", "Ruler", "Free motion")
ONE: Final = (
    "Or send it out: a long-arm quilter sews one design over all of it, or the designs that you "
    "name. The last page is for her."
)


def choices(plan: QuiltingPlan) -> Table:
    """A row for the letters that have the same choices."""
    quilted = [letter for letter in plan.letters if letter in plan.others]
    ordered = sorted(quilted, key=lambda letter: quilted.index(_first(plan, quilted, letter)))
    rows = (
        Row(", ".join(alike), cells)
        for cells, alike in groupby(ordered, key=lambda letter: _cells(plan, letter))
    )
    return Table("", HEAD, tuple(rows), ("words",) * 3)


def _first(plan: QuiltingPlan, letters: list[str], letter: str) -> str:
    """The first letter that has the choices of this one."""
    return next(one for one in letters if _cells(plan, one) == _cells(plan, letter))


def _cells(plan: QuiltingPlan, letter: str) -> tuple[str, ...]:
    return tuple(plan.others[letter].get(foot, wording.NONE) for foot in FEET)
