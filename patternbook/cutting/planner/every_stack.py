"""All the stacks of pieces that a sub-cut can hold and that are worth enough."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import numpy as np

from patternbook.cutting.planner.stack_cuts import SubCut
from patternbook.cutting.planner.stack_table import Lay, Table, with_lay
from patternbook.cutting.planner.zone import Counts


class EveryStack:
    """Stacks of these lays (the shortest along the strip first) at these prices. After so many
    `steps` no more are found: `whole` tells whether there was need of more."""

    def __init__(
        self, lays: Sequence[Lay], asked: Counts, prices: Sequence[int], size: int, unit: int
    ) -> None:
        self._lays = lays
        self._asked = asked
        self._prices = prices
        self._unit = unit
        self._best: list[Table] = [np.zeros(size, np.int64)]
        for lay in lays:
            price, cap = prices[lay.place], asked[lay.place]
            self._best.append(with_lay(self._best[-1], lay.across // unit, price, cap))
        self._steps = 0
        self.whole = True

    def of(self, height: int, need: Callable[[Lay], int], steps: int) -> Iterator[SubCut]:
        """The stacks of that height that are worth what sub-cuts as long as their base need be,
        without those to which another piece could be added."""
        self._steps, self.whole = steps, True
        for base in range(len(self._lays)):
            yield from self._down(base, height, need(self._lays[base]), (), base)

    def _down(self, place: int, left: int, need: int, held: SubCut, base: int) -> Iterator[SubCut]:
        """The stacks that begin with what is held, with pieces of the lays up to that place."""
        self._steps -= 1
        if self._steps < 0:
            self.whole = False
            return
        if place < 0:
            if not self._more(held, left, base):
                yield held
            return
        lay = self._lays[place]
        most = min(left // lay.across, self._asked[lay.place] - _count(held, lay.place))
        for count in range(int(not held), most + 1):
            rest = left - count * lay.across
            after = need - count * self._prices[lay.place]
            if self._best[place][rest // self._unit] >= after:
                more = (*held, (lay, count)) if count else held
                yield from self._down(place - 1, rest, after, more, base)

    def _more(self, held: SubCut, left: int, base: int) -> bool:
        """Whether another piece could be added."""
        return any(
            lay.across <= left and _count(held, lay.place) < self._asked[lay.place]
            for lay in self._lays
            if lay.along <= self._lays[base].along
        )


def _count(held: SubCut, place: int) -> int:
    return sum(number for lay, number in held if lay.place == place)
