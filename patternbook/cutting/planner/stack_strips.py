"""The best strip of every height when its sub-cuts may hold pieces of several kinds."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from patternbook.cutting.planner.stack_cuts import SubCut, SubCuts
from patternbook.cutting.planner.stack_table import (
    Choice,
    Lay,
    Table,
    offered,
    stacks,
    taken,
)
from patternbook.cutting.planner.zone import Counts


class Cloth(NamedTuple):
    """The ways pieces lie (the shortest along the strip first), the length of a strip in `cells`
    of so many units, the heights, and the unit that these are multiples of."""

    lays: tuple[Lay, ...]
    cell: int
    cells: int
    heights: tuple[int, ...]
    unit: int

    @property
    def together(self) -> tuple[Lay, ...]:
        """What may lie in a stack."""
        return tuple(lay for lay in self.lays if not lay.alone)

    def takes(self, lay: Lay) -> int:
        """The cells that a sub-cut for it takes."""
        return lay.along // self.cell


class _Offer(NamedTuple):
    """A sub-cut to choose, and what it holds: a stack reached in so many steps, or one piece."""

    choice: Choice
    held: int | Lay


class PricedStrips:
    """All strips of a cloth at these prices, with at most so many of each kind in a sub-cut;
    `number`: reckoned in floats, or exactly in whole numbers."""

    def __init__(
        self, cloth: Cloth, prices: Sequence[float], caps: Counts, number: type[int | float]
    ) -> None:
        self._cloth = cloth
        self._prices = prices
        self._caps = caps
        self._number = number
        size = max(cloth.heights, default=0) // cloth.unit + 1
        self._stacks = stacks(cloth.together, prices, caps, size, cloth.unit, number)

    @cached_property
    def values(self) -> Table:
        """What the best strip of each height is worth."""
        table = self._filled(np.array(self._cloth.heights, np.int64))[-1]
        most: Table = table[-1]
        return most

    def by_length(self, height: int) -> list[int]:
        """What each length of a strip of that height is worth."""
        worth: list[int] = self._filled(np.array([height]))[-1][:, 0].tolist()
        return worth

    def cut(self, height: int) -> SubCuts:
        """The sub-cuts of the best strip of that height."""
        offers = self._offers(np.array([height]))
        tables = self._filled(np.array([height]), keep=True)
        here, cuts = self._cloth.cells, []
        for place in reversed(range(len(offers))):
            choice = offers[place].choice
            times = taken(tables[place], tables[place + 1], choice, here)
            if times:
                here -= times * choice.takes
                cuts.append((self._sub_cut(offers[place].held, height), times))
        return tuple(cuts)

    def _sub_cut(self, held: int | Lay, height: int) -> SubCut:
        if isinstance(held, Lay):
            return ((held, 1),)
        return self._stacks.traced(held, height, self._prices)

    def _filled(self, heights: Table, keep: bool = False) -> list[Table]:
        """The worth of each length (row) of each strip (column) after every offer, or the last."""
        tables: list[Table] = [np.zeros((self._cloth.cells + 1, len(heights)), self._number)]
        for offer in self._offers(heights):
            tables = [*(tables if keep else ()), offered(tables[-1], offer.choice)]
        return tables

    def _offers(self, heights: Table) -> list[_Offer]:
        """The sub-cuts to choose from, but none that a shorter one is worth as much as."""
        every = [*self._of_stacks(heights), *self._of_single(heights)]
        better = every[:1]
        for before, now in pairwise(every):
            if isinstance(now.held, Lay) or (before.choice.worth != now.choice.worth).any():
                better.append(now)
        return better

    def _of_stacks(self, heights: Table) -> list[_Offer]:
        rows = heights // self._cloth.unit
        cells, cell = self._cloth.cells, self._cloth.cell
        return [
            _Offer(Choice(along // cell, table[rows], cells * cell // along), steps)
            for along, table, steps in self._stacks.widths
        ]

    def _of_single(self, heights: Table) -> list[_Offer]:
        offers = []
        for lay in self._cloth.lays:
            if lay.alone and self._prices[lay.place] > 0 and self._caps[lay.place] > 0:
                price = self._number(self._prices[lay.place])
                worth: Table = np.where(heights == lay.across, price, self._number(0))
                takes = self._cloth.takes(lay)
                most = min(self._caps[lay.place], self._cloth.cells // takes)
                offers.append(_Offer(Choice(takes, worth, most), lay))
        return offers
