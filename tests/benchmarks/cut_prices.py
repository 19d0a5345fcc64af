"""The certificate of a bound, counted again in whole numbers: no strip is worth more than it is
wide, so all pieces together are worth no more than any plan is long.
"""

from fractions import Fraction
from itertools import pairwise

from patternbook.cutting.planner.records import MILLION, Kind, Manner, Prices, Task


def proven(task: Task, prices: Prices) -> int | None:
    """The least length of any plan with such a block, if the prices hold."""
    each = dict(prices.kinds)
    wide, long = prices.block
    rest = task.width - wide
    share = Fraction(*prices.beside)
    fits = _holds(task, each, task.width, Fraction(1))
    if not fits or (long and rest and not _holds(task, each, rest, share, long)):
        return None
    paid = Fraction(sum(each.get(kind.name, 0) * kind.number for kind in task.kinds), MILLION)
    area = sum(k.along * k.across * k.number for k in (*task.kinds, *task.lengthwise))
    least = max(long, -(-area // task.width), -int(-(long + paid - share * long) // 1))
    return _next_sum(heights(task, task.width), least - long) + long


def _holds(
    task: Task, each: dict[str, int], width: int, rate: Fraction, highest: int | None = None
) -> bool:
    """Whether no strip so long holds pieces worth more than `rate` of its width."""
    worth = _stacks_worth if task.manner == "thrifty" else strip_worth
    return all(
        worth(task, each, width, height) <= rate * MILLION * height
        for height in heights(task, width)
        if highest is None or height <= highest
    )


def heights(task: Task, width: int) -> list[int]:
    """How wide strips may be: as a piece is; in thrifty cutting as pieces are together."""
    each = {side for kind in task.kinds for along, side in sides(kind) if along <= width}
    if task.manner != "thrifty" or not each:
        return sorted(each)
    lower = (min(s for a, s in sides(k) if a <= width) for k in task.kinds if _fits(k, width))
    most = max(task.highest or max(each), *lower)
    reached = {0}
    for total in range(1, most + 1):
        if any(total - side in reached for side in each):
            reached.add(total)
    return sorted(reached - {0} | each)


def _fits(kind: Kind, width: int) -> bool:
    return any(along <= width for along, _ in sides(kind))


def sides(kind: Kind) -> set[tuple[int, int]]:
    """Along the strip and across it."""
    way = (kind.along, kind.across)
    return {way, way[::-1]} if kind.turns else {way}


def _next_sum(steps: list[int], least: int) -> int:
    """The least sum of strips that is no less."""
    if not steps or least <= 0:
        return max(least, 0)
    most = least + max(steps)
    reached = 1  # a bit for each sum
    for step in steps:
        by = step
        while by <= most:
            reached |= reached << by
            by *= 2
        reached &= (2 << most) - 1
    above = reached >> least
    return least + (above & -above).bit_length() - 1


def strip_worth(task: Task, each: dict[str, int], width: int, height: int) -> int:
    """The most that the pieces of one strip are worth, none oftener than it is asked for."""
    worth = [0] * (width + 1)
    for kind in task.kinds:
        if price := each.get(kind.name, 0):
            worth = _with_kind(worth, _least_widths(kind, task.manner, width, height), price)
    return worth[width]


def _least_widths(kind: Kind, manner: Manner, width: int, height: int) -> list[int]:
    """What 0, 1, 2 … of a kind take of the strip at least, as many as fit."""
    lanes = []
    for along, across in sides(kind):
        exact = manner == "even" or kind.own_width
        if across == height or (across < height and not exact):
            stacked = manner == "shared" and not kind.own_width
            lanes.append((along, height // across if stacked else 1))
    least = [0]
    while lanes and len(least) <= kind.number:
        now = min(along + least[max(0, len(least) - stack)] for along, stack in lanes)
        if now > width:
            break
        least.append(now)
    return least


def _with_kind(worth: list[int], least: list[int], price: int) -> list[int]:
    """The table of worth by width with so many of one more kind added."""
    more = worth.copy()
    for number, (taken, after) in enumerate(pairwise([*least, len(worth)])):
        if number and after > taken:
            for width in range(taken, len(worth)):
                more[width] = max(more[width], worth[width - taken] + number * price)
    return more


def _stacks_worth(task: Task, each: dict[str, int], width: int, height: int) -> int:
    """The most that sub-cuts are worth which hold stacks of any pieces not longer than they."""
    stack = [0] * (height + 1)
    lanes = sorted((along, across, k) for k in task.kinds for along, across in sides(k))
    tops: dict[int, int] = {}
    for along, across, kind in lanes:
        price = 0 if kind.own_width and across != height else each.get(kind.name, 0)
        if price and across <= height:
            counts = range(0, (min(kind.number, height // across) + 1) * across, across)
            stack = _with_kind(stack, list(counts), price)
        tops[along] = stack[height]
    worth = [0] * (width + 1)
    for place in range(1, width + 1):
        worth[place] = max(
            worth[place - 1],
            *(worth[place - along] + top for along, top in tops.items() if along <= place),
            0,
        )
    return worth[width]
