"""Which strips at all: a linear programme that is given ever better strips until none is better."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import numpy as np

from patternbook.cutting.planner.ground import BESIDE, Ground, Recipe
from patternbook.cutting.planner.work import Work
from patternbook.cutting.planner.zone import Counts, Floats, Strip, Wholes
from patternbook.programme import Linear

_TINY = 1e-7
ITERATIONS = 200_000


class Priced(NamedTuple):
    """The price of one piece of each kind, and of one unit of length beside the block; how many
    strips (of the master's recipes) to cut, in parts. `settled`: no strip would make it less."""

    kinds: list[float]
    beside: float
    amounts: list[float]
    settled: bool


class Master:
    def __init__(self, ground: Ground, work: Work) -> None:
        self.ground = ground
        self.work = work
        self.recipes: list[Recipe] = []
        self._known: set[Recipe] = set()
        self._linear = Linear(ITERATIONS)
        self._heights = [np.array(zone.heights, np.float64) for zone in ground.zones]
        for number in ground.demand:
            self._linear.row(number, None)
        if len(ground.zones) > 1:
            self._linear.row(None, ground.base)
        self.start(ground.demand)

    def add(self, recipe: Recipe) -> bool:
        """Whether it is new."""
        if recipe in self._known:
            return False
        self._known.add(recipe)
        entries = {place: count for place, count in enumerate(recipe.counts) if count}
        if recipe.zone == BESIDE:
            entries[len(self.ground.kinds)] = recipe.height
        self._linear.column(self.ground.cost(recipe), entries)
        self.recipes.append(recipe)
        self.work.columns += 1
        return True

    def add_all(self, zone: int, strips: Iterable[Strip]) -> int:
        return sum(self.add(Recipe(zone, strip)) for strip in strips)

    def start(self, caps: Counts) -> None:
        """Adds strips of one kind each that could cut all."""
        for place, zone in enumerate(self.ground.zones):
            self.add_all(place, zone.starters(caps))

    def ask(self, demand: Counts, beside: int) -> None:
        """Sets what is to be cut, and how long the cloth beside the block is."""
        for row, number in enumerate(demand):
            self._linear.bound_row(row, number, None)
        if len(self.ground.zones) > 1:
            self._linear.bound_row(len(demand), None, beside)

    def shut(self, columns: list[int]) -> None:
        """None of these recipes is to be used."""
        self._linear.cap(columns, 0)

    def reopen(self, columns: list[int]) -> None:
        self._linear.cap(columns, None)

    def matrix(self) -> Wholes:
        """A row for each recipe: zone, height, counts."""
        return np.array([(r.zone, r.height, *r.counts) for r in self.recipes], np.int64)

    def price(self, caps: Counts) -> Priced | None:
        """Adds strips until none is worth more than it costs. None where work ran out before there
        was any price."""
        priced = None
        while self.work.round():
            priced = self._solved()
            if priced is None or not self._add_better(priced, caps):
                return priced and priced._replace(settled=True)
        return priced

    def _solved(self) -> Priced | None:
        relaxed = self._linear.solve()
        if relaxed is None:
            return None
        kinds = len(self.ground.kinds)
        prices = [max(0.0, price) for price in relaxed.prices[:kinds]]
        beside = max(0.0, -relaxed.prices[kinds]) if len(self.ground.zones) > 1 else 0.0
        return Priced(prices, beside, relaxed.amounts, settled=False)

    def _add_better(self, priced: Priced, caps: Counts) -> int:
        """How many strips were added that are worth more than they cost."""
        added = 0
        for place, zone in enumerate(self.ground.zones):
            cost = priced.beside if place == BESIDE else 1.0
            floors: Floats = self._heights[place] * cost + _TINY * self._heights[place]
            added += self.add_all(place, zone.best(priced.kinds, caps, floors))
        return added
