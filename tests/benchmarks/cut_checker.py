"""A planner's answer counted again in whole numbers; shares nothing with the planner but records.

The plan: every piece cut as often as asked, inside its strip, the strip inside the cloth. The
prices: no strip of this manner is worth more than it is wide, so no plan is below their bound.
"""

from collections import Counter
from collections.abc import Iterator

from patternbook.cutting.planner.records import Answer, Column, Kind, Manner, StripLaid, Task
from tests.benchmarks.cut_prices import heights, proven, sides


def faults(answer: Answer) -> list[str]:
    """What is wrong with the plan and with what is said of its bound."""
    return [*plan_faults(answer), *bound_faults(answer)]


def plan_faults(answer: Answer) -> Iterator[str]:
    """Pieces that do not fit, that are too few or too many; cloth that is not there."""
    task = answer.task
    for strip in answer.strips:
        block = answer.block.width if answer.block and strip.beside else 0
        yield from strip_faults(strip, task, task.width - block)
    yield from numbers_faults(pieces(answer.strips), task.kinds)
    yield from _block_faults(answer)
    block = answer.block.length if answer.block else 0
    below = sum(strip.height * strip.times for strip in answer.strips if not strip.beside)
    beside = sum(strip.height * strip.times for strip in answer.strips if strip.beside)
    if block + below != answer.length:
        yield f"{block} and {below} of cloth are not {answer.length}"
    if beside > block:
        yield f"{beside} of strips beside a block {block} long"


def _columns(strip: StripLaid) -> Iterator[Column]:
    for column in strip.columns:
        yield column
        yield from column.above


def pieces(strips: tuple[StripLaid, ...]) -> Counter[str]:
    """How many of each kind are cut."""
    cut = Counter[str]()
    for strip in strips:
        for one in _columns(strip):
            cut[one.kind] += one.pieces * strip.times
    return cut


def numbers_faults(cut: Counter[str], kinds: tuple[Kind, ...]) -> Iterator[str]:
    """Each kind is cut exactly as often as it is asked for."""
    asked = {kind.name: kind.number for kind in kinds}
    if cut != asked:
        yield f"{dict(cut)} are cut, {asked} are asked for"


def strip_faults(strip: StripLaid, task: Task, long: int) -> Iterator[str]:
    """What does not fit in strips so `long`, or is not cut as the task's manner is."""
    if (taken := sum(one.along * one.columns for one in strip.columns)) > long:
        yield f"{taken} of a strip {long} long"
    if strip.times < 1 or strip.height not in heights(task, task.width):
        yield f"{strip.times} strips {strip.height} wide"
    kinds = {kind.name: kind for kind in task.kinds}
    for one in _columns(strip):
        yield from _column_faults(one, kinds[one.kind], strip.height, task.manner)
    for one in strip.columns:
        if sum(part.stack * part.across for part in (one, *one.above)) > strip.height:
            yield f"a stack on {one.kind} is higher than {strip.height}"
        if any(on.along > one.along or on.columns > one.columns or on.above for on in one.above):
            yield f"what lies on {one.kind} does not lie on it"
        if one.above and task.manner != "thrifty":
            yield f"something lies on {one.kind}"


def _column_faults(one: Column, kind: Kind, height: int, manner: Manner) -> Iterator[str]:
    if (one.along, one.across) not in sides(kind):
        yield f"{one.kind} is cut {one.along} by {one.across}"
    if not (one.columns - 1) * one.stack < one.pieces <= one.columns * one.stack:
        yield f"{one.pieces} {one.kind} in {one.columns} columns of {one.stack}"
    if one.stack > 1 and (manner in {"even", "trimmed"} or kind.own_width):
        yield f"{one.kind} is stacked"
    if one.across != height and (manner == "even" or kind.own_width):
        yield f"{one.kind} is cut from a strip {height} wide"


def _block_faults(answer: Answer) -> Iterator[str]:
    asked = Counter((k.name, k.along, k.across) for k in answer.task.lengthwise for _ in _of(k))
    columns = answer.block.columns if answer.block else ()
    if asked != Counter(piece for column in columns for piece in column):
        yield f"{asked} are asked for along the cloth"
    if answer.block:
        length = max(sum(along for _, along, _ in column) for column in columns)
        width = sum(max(across for _, _, across in column) for column in columns)
        if (width, length) != (answer.block.width, answer.block.length):
            yield f"the block is {width} by {length}"
        if width > answer.task.width:
            yield f"a block {width} wide"


def _of(kind: Kind) -> range:
    return range(kind.number)


def bound_faults(answer: Answer) -> Iterator[str]:
    """Prices that do not hold, and bounds above what they show."""
    shown = []
    for prices in answer.prices:
        bound = proven(answer.task, prices)
        if bound is None or bound < prices.bound:
            yield f"the prices show {bound}, not {prices.bound}"
        shown.append(prices.bound)
    if not shown or answer.by_prices > min(shown):
        yield f"{shown} do not show {answer.by_prices}"
    if not answer.by_prices <= answer.bound <= answer.length:
        yield f"{answer.by_prices}, {answer.bound}, {answer.length} are not in order"
