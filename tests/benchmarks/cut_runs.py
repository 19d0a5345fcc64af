"""Cut lists planned one after the other (or on several cores), with the seconds of each
(the processor's own, which a busy machine does not lengthen).
"""

import time
from collections.abc import Iterable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from statistics import median
from typing import Any, Final, NamedTuple

from patternbook.cutting.planner.records import (
    Answer,
    Kind,
    Limits,
    Manner,
    SheetsAnswer,
    SheetsTask,
    Task,
)
from patternbook.cutting.planner.sheets import solve_sheets
from patternbook.cutting.planner.solve import solve
from tests.benchmarks.cut_lists import cut_lists

MANNERS: Final[tuple[Manner, ...]] = ("even", "trimmed", "shared", "thrifty")


class Ran(NamedTuple):
    """An answer, and how long it took."""

    name: str
    seconds: float
    answer: Answer


class RanSheets(NamedTuple):
    """An answer for pre-cuts, and how long it took."""

    name: str
    seconds: float
    answer: SheetsAnswer


def asked(task: Task, manner: Manner) -> Task:
    """The list in this manner; only thrifty cutting needs a highest strip."""
    return replace(task, manner=manner, highest=task.highest if manner == "thrifty" else None)


def lists(manner: Manner) -> dict[str, Task]:
    """All cut lists in one manner."""
    return {name: asked(task, manner) for name, task in cut_lists().items()}


def times(task: Task, number: int) -> Task:
    """So many kits of it."""
    return replace(
        task, kinds=_times(task.kinds, number), lengthwise=_times(task.lengthwise, number)
    )


def _times(kinds: tuple[Kind, ...], number: int) -> tuple[Kind, ...]:
    return tuple(kind._replace(number=kind.number * number) for kind in kinds)


def run(tasks: dict[str, Task], limits: Limits, jobs: int = 1) -> list[Ran]:
    """Every one's answer, in the order of the tasks."""
    return [Ran(*one) for one in _each(_solved, ((n, t, limits) for n, t in tasks.items()), jobs)]


def run_sheets(tasks: dict[str, SheetsTask], jobs: int = 1) -> list[RanSheets]:
    """Every one's answer, in the order of the tasks."""
    each = ((name, task, Limits()) for name, task in tasks.items())
    return [RanSheets(*one) for one in _each(_sheets_solved, each, jobs)]


def _each(work: Any, given: Iterable[Any], jobs: int) -> list[Any]:
    if jobs == 1:
        return [work(one) for one in given]
    with ProcessPoolExecutor(jobs) as pool:
        return list(pool.map(work, given))


def _solved(given: tuple[str, Task, Limits]) -> tuple[str, float, Answer]:
    name, task, limits = given
    begun = time.process_time()
    answer = solve(task, limits)
    return name, time.process_time() - begun, answer


def _sheets_solved(given: tuple[str, SheetsTask, Limits]) -> tuple[str, float, SheetsAnswer]:
    name, task, limits = given
    begun = time.process_time()
    answer = solve_sheets(task, limits)
    return name, time.process_time() - begun, answer


class Spent(NamedTuple):
    """Seconds: the usual, what one in twenty takes longer than, the longest, all together."""

    usual: float
    most: float
    worst: float
    all: float


def spent(seconds: Iterable[float]) -> Spent:
    """The seconds of many runs in short."""
    each = sorted(seconds)
    return Spent(median(each), each[-(-len(each) * 95 // 100) - 1], each[-1], sum(each))
