"""The fewest pre-cut pieces of cloth: quarters, eighths, squares, panels, and strips of a roll,
which are pieces one strip high."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from patternbook.cutting.planner.ground import Ground
from patternbook.cutting.planner.plain_zone import PlainZone
from patternbook.cutting.planner.records import (
    Kind,
    Limits,
    Prices,
    SheetLaid,
    SheetsAnswer,
    SheetsTask,
    StripLaid,
    Task,
)
from patternbook.cutting.planner.search import Incumbent, Search
from patternbook.cutting.planner.sheet_ease import easiest
from patternbook.cutting.planner.sheet_trim import SheetPlan, exact
from patternbook.cutting.planner.sheet_ways import Direction
from patternbook.cutting.planner.sheet_zone import SheetCut, Sheets
from patternbook.cutting.planner.shelves import own_strips
from patternbook.cutting.planner.work import Work


def solve_sheets(task: SheetsTask, limits: Limits = Limits()) -> SheetsAnswer:  # noqa: B008
    """The plan, and a number of pieces of cloth that no plan is below. Every kind must fit the
    piece of cloth in one of the directions its strips can run."""
    kinds = tuple(sorted((kind for kind in task.kinds if kind.number), key=_in_order))
    if not kinds:
        return SheetsAnswer(task, (), 0, 0, Prices(()))
    sheets = Sheets(kinds, directions(task, kinds))
    ground = Ground(kinds, (sheets,))
    # Each sheet counts as one of length: the shortest plan is that of fewest sheets.
    incumbent = Incumbent(Task(task.across, kinds), by_length=True)
    search = Search(ground, incumbent, Work(limits))
    search.begin([own_strips(ground)])
    search.finish()
    plans = [incumbent.plan]
    if limits.easing:
        plans.append(easiest(search, sheets, incumbent.plan))
    trimmed = (
        exact(kinds, ((sheets.cuts[recipe.counts], times) for recipe, times in plan))
        for plan in plans
    )
    cut = min(trimmed, key=_effort)
    number = sum(cut.values())
    bound = min(number, search.bound)
    laid = sorted((_laid(sheet, times) for sheet, times in cut.items()), key=_most_first)
    return SheetsAnswer(task, tuple(laid), number, bound, search.prices, bound < number)


def _in_order(kind: Kind) -> tuple[int, int, bool, bool, int, str]:
    """The order in which kinds are reckoned with, whatever that of the task."""
    return -kind.across, -kind.along, kind.turns, kind.own_width, kind.number, kind.name


def _effort(plan: SheetPlan) -> tuple[int, int, int]:
    """Fewest pieces of cloth, then fewest that differ, then fewest strips."""
    strips = sum(len(sheet.strips) * times for sheet, times in plan.items())
    return sum(plan.values()), len(plan), strips


def _most_first(sheet: SheetLaid) -> tuple[int, SheetLaid]:
    return -sheet.times, sheet


def directions(task: SheetsTask, kinds: tuple[Kind, ...]) -> tuple[Direction, ...]:
    """The ways in which strips can run through one piece."""
    found = []
    if not _is_strip(task.down, task.across):
        zone = PlainZone(kinds, task.across, "shared", cap=task.down)
        found.append(Direction(zone, task.down, turned=False))
    if not _is_strip(task.across, task.down) and not _same_turned(task, kinds):
        lying = tuple(_turned(kind, task.down) for kind in kinds)
        zone = PlainZone(lying, task.down, "shared", cap=task.across)
        found.append(Direction(zone, task.across, turned=True))
    return tuple(way for way in found if way.zone.heights)


def _is_strip(long: int, wide: int) -> bool:
    """A piece more than four times as long as wide is a strip, and never cut across first."""
    return long > 4 * wide


def _same_turned(task: SheetsTask, kinds: Iterable[Kind]) -> bool:
    """Whether turning the piece of cloth gives nothing new."""
    square = all(kind.turns or kind.own_width or kind.along == kind.across for kind in kinds)
    return square and task.across == task.down


def _turned(kind: Kind, run: int) -> Kind:
    """A kind in strips that run the other way through the cloth; pieces that want strips of their
    own width stay with the first way."""
    if kind.own_width:
        return kind._replace(along=run + 1)  # fits no strip
    return kind._replace(along=kind.across, across=kind.along)


def _laid(sheet: SheetCut, times: int) -> SheetLaid:
    strips = Counter(sheet.strips)
    laid = (
        StripLaid(strip.height, sheet.way.zone.layout(strip), number)
        for strip, number in strips.items()
    )
    return SheetLaid(tuple(laid), times, sheet.way.turned)
