"""Invented cut lists for pre-cut cloth, and their plans counted again in whole numbers."""

from collections import Counter
from collections.abc import Iterator
from typing import Final

from patternbook.cutting.planner.records import (
    MILLION,
    Kind,
    SheetLaid,
    SheetsAnswer,
    SheetsTask,
    Task,
)
from tests.benchmarks.cut_checker import numbers_faults, pieces, strip_faults
from tests.benchmarks.cut_prices import heights, strip_worth

Piece = tuple[float, float, int]  # inches along, across, number

EIGHTHS: Final = 8
QUARTER: Final = (17.5, 20.5)
SQUARE: Final = (10.0, 10.0)
STRIP: Final = (40.0, 2.5)
LISTS: Final[dict[str, tuple[tuple[float, float], tuple[Piece, ...]]]] = {
    "fq1": (QUARTER, ((4.5, 8.5, 60), (4.5, 4.5, 60))),
    "fq2": (QUARTER, ((4.875, 4.875, 60), (2.5, 4.5, 80), (4.5, 4.5, 20))),
    "fq3": (QUARTER, ((6.5, 6.5, 48), (3.5, 6.5, 48), (3.5, 3.5, 96))),
    "fq4": (QUARTER, ((8.5, 8.5, 20), (4.5, 8.5, 30), (2.5, 8.5, 60))),
    "fq5": (
        QUARTER,
        ((10.5, 5.5, 12), (7.5, 3.5, 25), (5.25, 5.25, 18), (2.875, 2.875, 72), (2, 9, 31)),
    ),
    "fq6": (QUARTER, ((12, 7, 10), (5, 5, 33), (3, 9, 27), (2.5, 2.5, 90))),
    "ten1": (SQUARE, ((5, 5, 90), (2.5, 5, 90))),
    "ten2": (SQUARE, ((6.5, 6.5, 24), (3.5, 6.5, 40), (3, 3, 50))),
    "ten3": (SQUARE, ((4.875, 4.875, 50), (2.5, 4.5, 44), (2, 2, 64))),
    "ten4": (SQUARE, ((8, 4, 21), (4, 4, 37), (1.25, 8, 30), (6, 3.5, 18))),
    "st1": (STRIP, ((2.5, 2.5, 80), (4.5, 2.5, 80), (8.5, 2.5, 40))),
    "st2": (
        STRIP,
        ((2.5, 2.5, 40), (4.5, 2.5, 36), (6.5, 2.5, 44), (8.5, 2.5, 28), (10.5, 2.5, 24),
         (12.5, 2.5, 20)),
    ),
    "st3": (
        STRIP,
        ((3, 2.5, 31), (5.75, 2.5, 27), (8.75, 2.5, 22), (14.5, 2.5, 19), (20.5, 2.5, 13)),
    ),
}  # fmt: skip


def pack_lists() -> dict[str, SheetsTask]:
    """Thirteen lists, each once, twice and four times over."""
    return {f"{name}x{times}": _task(name, times) for name in LISTS for times in (1, 2, 4)}


def _task(name: str, times: int) -> SheetsTask:
    (across, down), rows = LISTS[name]
    turns = not name.startswith("st")
    kinds = (
        Kind(f"p{place}", _eighths(along), _eighths(high), number * times, turns)
        for place, (along, high, number) in enumerate(rows)
    )
    return SheetsTask(_eighths(across), _eighths(down), tuple(kinds))


def _eighths(inches: float) -> int:
    return int(inches * EIGHTHS)


def own_sheets(task: SheetsTask) -> int:
    """The usual way by hand: each kind from pre-cuts of its own."""
    total = 0
    for kind in task.kinds:
        turned = (kind.across, kind.along) if kind.turns else (kind.along, kind.across)
        ways = ((kind.along, kind.across), turned)
        most = max((task.across // along) * (task.down // high) for along, high in ways)
        total += -(-kind.number // most)
    return total


def sheet_faults(answer: SheetsAnswer) -> list[str]:
    """What is wrong with the plan and with its bound."""
    return [*_plan_faults(answer), *_bound_faults(answer)]


def _plan_faults(answer: SheetsAnswer) -> Iterator[str]:
    cut = Counter[str]()
    for sheet in answer.sheets:
        yield from _sheet_faults(sheet, answer.task)
        for kind, number in pieces(sheet.strips).items():
            cut[kind] += number * sheet.times
    yield from numbers_faults(cut, answer.task.kinds)
    if (number := sum(sheet.times for sheet in answer.sheets)) != answer.number:
        yield f"{number} are cut, not {answer.number}"


def _sheet_faults(sheet: SheetLaid, task: SheetsTask) -> Iterator[str]:
    long, wide = (task.down, task.across) if sheet.turned else (task.across, task.down)
    for strip in sheet.strips:
        yield from strip_faults(strip, _as_cloth(task, turned=sheet.turned), long)
    if (taken := sum(strip.height * strip.times for strip in sheet.strips)) > wide:
        yield f"{taken} of {wide}"
    if sheet.times < 1:
        yield f"{sheet.times} cut alike"


def _as_cloth(task: SheetsTask, *, turned: bool) -> Task:
    """Its strips as those of a cloth, which run along the other side where it is turned."""
    if not turned:
        return Task(task.across, task.kinds, "shared")
    lying = (kind._replace(along=kind.across, across=kind.along) for kind in task.kinds)
    return Task(task.down, tuple(lying), "shared")


def _bound_faults(answer: SheetsAnswer) -> Iterator[str]:
    task = answer.task
    each = dict(answer.prices.kinds)
    for wide, turned in ((task.down, False), (task.across, True)):
        if (worth := _sheet_worth(_as_cloth(task, turned=turned), each, wide)) > MILLION:
            yield f"a piece of cloth is worth {worth}"
    paid = sum(each.get(kind.name, 0) * kind.number for kind in task.kinds)
    area = sum(kind.along * kind.across * kind.number for kind in task.kinds)
    shown = max(-(-paid // MILLION), -(-area // (task.across * task.down)))
    if answer.prices.bound > shown:
        yield f"the prices show {shown}, not {answer.prices.bound}"
    if not answer.prices.bound <= answer.bound <= answer.number:
        yield f"{answer.prices.bound}, {answer.bound}, {answer.number} are not in order"


def _sheet_worth(cloth: Task, each: dict[str, int], wide: int) -> int:
    """The most that the pieces of one piece of cloth are worth, all strips running one way."""
    long = cloth.width
    strips = {height: strip_worth(cloth, each, long, height) for height in heights(cloth, long)}
    worth = [0] * (wide + 1)
    for place in range(1, wide + 1):
        tops = (worth[place - high] + top for high, top in strips.items() if high <= place)
        worth[place] = max(worth[place - 1], *tops, 0)
    return worth[wide]
