"""What a sub-cut of a strip can be worth when pieces of different kinds lie in it one above the
other, and what a strip of such sub-cuts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from patternbook.cutting.planner.zone import Counts

Table = NDArray[Any]


class Lay(NamedTuple):
    """A kind (its place) as it lies in a strip; `alone`: in a strip just as high, with nothing
    above it."""

    along: int
    across: int
    place: int
    alone: bool


class _Step(NamedTuple):
    """One more kind offered to a stack: what each height was worth before and is worth after."""

    lay: Lay
    before: Table
    after: Table


@dataclass(frozen=True)
class Stacks:
    """The best stack for every height, in sub-cuts up to so long (`widths`); after how many steps
    it was reached."""

    widths: tuple[tuple[int, Table, int], ...]
    steps: tuple[_Step, ...]
    unit: int

    def traced(
        self, steps: int, height: int, prices: Sequence[float]
    ) -> tuple[tuple[Lay, int], ...]:
        """The stack that is worth most at that height: how many of each, the widest first."""
        here, found = height // self.unit, []
        for lay, before, after in reversed(self.steps[:steps]):
            if after[here] == before[here]:
                continue
            takes, count = lay.across // self.unit, 1
            while before[here - count * takes] + prices[lay.place] * count != after[here]:
                count += 1
            found.append((lay, count))
            here -= count * takes
        return tuple(found)


def stacks(
    lays: Sequence[Lay],
    prices: Sequence[float],
    caps: Counts,
    size: int,
    unit: int,
    number: type[int | float],
) -> Stacks:
    """Offers the kinds to a sub-cut, the shortest along the strip first."""
    now: Table = np.zeros(size, number)
    steps: list[_Step] = []
    widths: dict[int, tuple[int, Table, int]] = {}
    for lay in lays:
        if prices[lay.place] > 0 and caps[lay.place] > 0:
            before, now = now, with_lay(now, lay.across // unit, prices[lay.place], caps[lay.place])
            steps.append(_Step(lay, before, now))
            widths[lay.along] = (lay.along, now, len(steps))
    return Stacks(tuple(widths.values()), tuple(steps), unit)


def with_lay(before: Table, takes: int, price: float, cap: int) -> Table:
    """What each height is worth once this kind may lie in it too."""
    after, size = before.copy(), len(before)
    for count in range(1, min(cap, (size - 1) // takes) + 1):
        part = after[count * takes :]
        np.maximum(part, before[: size - count * takes] + price * count, out=part)
    return after


class Choice(NamedTuple):
    """Sub-cuts that take so many cells of a strip each: what one is worth in each row, and how
    many there may be."""

    takes: int
    worth: Table
    most: int


def offered(table: Table, choice: Choice) -> Table:
    """What each length (row) of each strip (column) is worth, now that there is this choice too."""
    after = table.copy()
    if choice.most >= (len(table) - 1) // choice.takes:
        _as_often_as_fits(after, choice)
    else:
        _at_most(after, table, choice)
    return after


def taken(before: Table, after: Table, choice: Choice, here: int) -> int:
    """How many of the choice make up what that length of the one strip is worth."""
    count = 0
    if choice.most >= (len(before) - 1) // choice.takes:
        while after[here, 0] != before[here, 0]:
            here -= choice.takes
            count += 1
        return count
    while before[here - count * choice.takes, 0] + choice.worth[0] * count != after[here, 0]:
        count += 1
    return count


def _as_often_as_fits(table: Table, choice: Choice) -> None:
    size, takes = len(table), choice.takes
    for start in range(takes, size, takes):
        part = table[start : start + takes]
        np.maximum(part, table[start - takes : start - takes + len(part)] + choice.worth, out=part)


def _at_most(table: Table, before: Table, choice: Choice) -> None:
    for count in range(1, choice.most + 1):
        part = table[count * choice.takes :]
        more = before[: len(table) - count * choice.takes] + choice.worth * count
        np.maximum(part, more, out=part)
