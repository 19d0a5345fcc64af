"""The best plan that can be made of a pool of strips, as an integer programme."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from patternbook.cutting.planner.ground import BELOW, BESIDE, Ground, Plan, Recipe, plan_of
from patternbook.cutting.planner.work import Work
from patternbook.programme import SEEDS, Found, Whole

# So many columns are the measure of a node; and no programme is worth solving for fewer nodes.
COLUMNS: Final = 400
LEAST_NODES: Final = 5


def most_times(ground: Ground, recipe: Recipe) -> int:
    """More strips like this than so many are never of use."""
    pairs = zip(ground.demand, recipe.counts, strict=True)
    times = max(-(-number // count) for number, count in pairs if count)
    return min(times, ground.base // recipe.height) if recipe.zone == BESIDE else times


def asking(ground: Ground, recipes: Sequence[Recipe], longest: int | None) -> Whole:
    """A programme with a column for each recipe: every piece cut, no plan longer than that."""
    whole = Whole()
    for recipe in recipes:
        whole.column(most_times(ground, recipe))
    for place, number in enumerate(ground.demand):
        counts = {at: r.counts[place] for at, r in enumerate(recipes) if r.counts[place]}
        whole.row(number, None, counts)
    beside = {at: r.height for at, r in enumerate(recipes) if r.zone == BESIDE}
    whole.row(None, ground.base, beside)
    if longest is not None:
        below = {at: r.height for at, r in enumerate(recipes) if r.zone == BELOW}
        whole.row(None, longest - ground.base, below)
    return whole


@dataclass(frozen=True)
class Shortest:
    """The shortest plan of these recipes that is no longer than `longest`; one of length `enough`
    will do."""

    ground: Ground
    recipes: Sequence[Recipe]
    longest: int | None
    enough: int | None = None

    def found(self, work: Work, nodes: int, seed: int = SEEDS[0]) -> tuple[Plan | None, Found]:
        # A node of many columns is more work than one of few.
        nodes = max(LEAST_NODES, min(nodes, nodes * COLUMNS // len(self.recipes)))
        whole = asking(self.ground, self.recipes, self.longest)
        costs = [self.ground.cost(recipe) for recipe in self.recipes]
        enough = None if self.enough is None else self.enough - self.ground.base
        found = whole.solve(costs, nodes, step=self.ground.step, enough=enough, seed=seed)
        work.nodes += found.nodes
        work.programmes += 1
        if found.amounts is None:
            return None, found
        return plan_of(zip(self.recipes, found.amounts, strict=True)), found
