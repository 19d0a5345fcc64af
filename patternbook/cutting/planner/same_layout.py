"""The same layout in every pre-cut piece of cloth: how many whole sets of pieces, each enough for
one block, can be cut from one."""

from __future__ import annotations

from typing import NamedTuple

from patternbook.cutting.planner.records import Answer, Kind, Limits, SheetLaid, SheetsTask, Task
from patternbook.cutting.planner.sheets import directions
from patternbook.cutting.planner.solve import solve
from patternbook.cutting.planner.table import lays


class SameLayout(NamedTuple):
    """So many `sets` are cut from each piece of cloth, as `sheet` tells (None: not even one fits).
    No layout of strips gives more than `most`."""

    task: SheetsTask
    sets: int
    most: int
    sheet: SheetLaid | None

    @property
    def proven(self) -> bool:
        """Whether one more set will not fit."""
        return self.sets == self.most


def same_layout(task: SheetsTask, limits: Limits = Limits()) -> SameLayout:  # noqa: B008
    """The layout of most sets. The kinds' numbers are those of one set."""
    areas = sum(kind.along * kind.across * kind.number for kind in task.kinds)
    sets, most, sheet = 0, task.across * task.down // areas if areas else 0, None
    above = most + 1  # so many do not fit, as far as is known
    while sets + 1 < above:
        tried = (sets + above) // 2
        laid, none = _of_sets(task, tried, limits)
        if laid:
            sets, sheet = tried, laid
        else:
            above = tried
        if none:
            most = tried - 1
    return SameLayout(task, sets, most, sheet)


def _of_sets(task: SheetsTask, sets: int, limits: Limits) -> tuple[SheetLaid | None, bool]:
    """A layout of so many sets; whether it is certain that there is none."""
    kinds = tuple(kind._replace(number=kind.number * sets) for kind in task.kinds if kind.number)
    certain = True
    for way in directions(task, kinds):
        width = task.down if way.turned else task.across
        if all(lays(kind, width) for kind in way.zone.kinds):
            answer = _as_one(way.zone.kinds, width, way.deep, limits)
            if answer.bought == 1:
                return SheetLaid(answer.strips, 1, way.turned), False
            certain &= answer.bought_bound > 1
    return None, certain


def _as_one(kinds: tuple[Kind, ...], width: int, deep: int, limits: Limits) -> Answer:
    """Cloth by the piece: whatever is no longer than one piece is deep counts as one."""
    return solve(Task(width, kinds, "shared", step=deep), limits._replace(goal="purchase"))
