"""A whole plan from parts of strips: what is clear is cut, the rest is priced anew, until all is
cut."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from patternbook.cutting.planner.ground import BESIDE, Plan, Recipe, plan_of
from patternbook.cutting.planner.master import Master
from patternbook.cutting.planner.zone import Wholes

_TINY = 1e-6


class Chances:
    """A row of numbers that looks like chance and is the same for everyone."""

    def __init__(self, seed: int) -> None:
        self._state = seed * 2_654_435_761 % 2**32

    def place(self, number: int) -> int:
        """One of so many places, the first most often, each next about a third as often."""
        self._state = (self._state * 1_664_525 + 1_013_904_223) % 2**32
        part, place = (self._state >> 8) / 2**24, 0
        while part >= 0.7 and place + 1 < number:
            part, place = (part - 0.7) / 0.3, place + 1
        return place


@dataclass
class _Left:
    """What is still to be cut, and the length that is left beside the block."""

    counts: Wholes
    beside: int
    cut: list[tuple[Recipe, int]] = field(default_factory=list)

    def allows(self, recipe: Recipe) -> int:
        """How many such strips could be cut without a piece too many."""
        pairs = zip(self.counts.tolist(), recipe.counts, strict=True)
        most = [left // count for left, count in pairs if count]
        if recipe.zone == BESIDE:
            most.append(self.beside // recipe.height)
        return min(most, default=0)

    def take(self, recipe: Recipe, times: int) -> None:
        self.cut.append((recipe, times))
        self.counts = self.counts - times * np.array(recipe.counts, np.int64)
        if recipe.zone == BESIDE:
            self.beside -= times * recipe.height


def dive(master: Master, chances: Chances | None) -> Plan | None:
    """A plan that cuts nothing in vain; None when work ran out. Where nothing is clear, the first
    in line is cut, or one that `chances` names."""
    ground = master.ground
    master.work.dives += 1
    left = _Left(np.array(ground.demand, np.int64), ground.base)
    shut: set[int] = set()
    while left.counts.any() and _one_step(master, left, shut, chances):
        pass
    master.reopen(sorted(shut))
    master.ask(ground.demand, ground.base)
    return None if left.counts.any() else plan_of(left.cut)


def _one_step(master: Master, left: _Left, shut: set[int], chances: Chances | None) -> bool:
    """Prices what is left and cuts some of it; whether it could."""
    caps = tuple(left.counts.tolist())
    master.start(caps)
    fresh = sorted(set(_too_much(master.matrix(), left)) - shut)
    master.shut(fresh)
    shut.update(fresh)
    master.ask(caps, left.beside)
    priced = master.price(caps)
    if priced is None:
        return False
    offered = [column for column, amount in enumerate(priced.amounts) if amount > _TINY]
    offered.sort(key=lambda column: (-priced.amounts[column], column))
    return _whole(master, left, priced.amounts, offered) or _one(
        master, left, priced.amounts, offered, chances
    )


def _too_much(matrix: Wholes, left: _Left) -> list[int]:
    """The recipes that cut a piece too many, or are too high for what is left beside the block."""
    over = (matrix[:, 2:] > left.counts).any(axis=1)
    over |= (matrix[:, 0] == BESIDE) & (matrix[:, 1] > left.beside)
    return [int(column) for column in over.nonzero()[0]]


def _whole(master: Master, left: _Left, amounts: list[float], offered: list[int]) -> bool:
    """Cuts the whole strips there are; whether there were any."""
    any_cut = False
    for column in offered:
        recipe = master.recipes[column]
        times = min(int(amounts[column] + _TINY), left.allows(recipe))
        if times:
            left.take(recipe, times)
            any_cut = True
    return any_cut


def _one(
    master: Master,
    left: _Left,
    amounts: list[float],
    offered: list[int],
    chances: Chances | None,
) -> bool:
    """Cuts one strip of which there is a part; whether there was any."""
    fit = [column for column in offered if left.allows(master.recipes[column])]
    if not fit:
        return False
    heights = [recipe.height for recipe in master.recipes]
    fit.sort(key=lambda column: (-round(amounts[column], 3), -heights[column], column))
    left.take(master.recipes[fit[chances.place(len(fit)) if chances else 0]], 1)
    return True
