"""Of plans with equally many pre-cuts the one that is easiest to follow."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from patternbook.cutting.planner.every_filling import whole_worth, within
from patternbook.cutting.planner.ground import Plan, Recipe, plan_of
from patternbook.cutting.planner.pool import asking, most_times
from patternbook.cutting.planner.records import MILLION
from patternbook.cutting.planner.search import Search
from patternbook.cutting.planner.sheet_zone import Sheets

# Easy sheets that are tried beside those of the search; sheets looked at; and chosen from.
EASY: Final = 600
LOOKED_AT: Final = 100
POOL: Final = 24


def easiest(search: Search, sheets: Sheets, plan: Plan) -> Plan:
    """As many sheets as the plan has: fewest that differ, then fewest strips."""
    ground = search.ground
    pool = _pool(search, sheets, plan)
    strips = [len(sheets.cuts[recipe.counts].strips) for recipe in pool]
    whole = asking(ground, pool, ground.length(plan))
    many = 1 + max(strips) * ground.length(plan)
    for place, recipe in enumerate(pool):
        used = whole.column(1)
        whole.row(None, 0, {place: 1, used: -most_times(ground, recipe)})
    chosen = dict(plan)
    start = [chosen.get(recipe, 0) for recipe in pool]
    start += [int(times > 0) for times in start]
    costs = [*strips, *[many] * len(pool)]
    outcome = whole.solve(costs, search.work.limits.easing, start=start, guess=False)
    search.work.nodes += outcome.nodes
    search.work.programmes += 1
    if outcome.amounts is None:
        return plan
    return plan_of(zip(pool, outcome.amounts[: len(pool)], strict=True))


def _pool(search: Search, sheets: Sheets, plan: Plan) -> list[Recipe]:
    """The sheets of the plan, and of the others those that lose least at the certified prices;
    none that loses more than such a plan loses in all."""
    prices = [price for _, price in search.prices.kinds]
    slack = (search.ground.length(plan) - search.exact_bound) * MILLION
    easy = (Recipe(0, strip) for strip in sheets.easy(EASY))
    others = list(dict.fromkeys([*search.master.recipes, *easy]))
    useful = [one for one in others if _loss(one, prices) <= slack]
    useful.sort(key=lambda one: (_loss(one, prices), len(sheets.cuts[one.counts].strips), one))
    own = [recipe for recipe, _ in plan]
    return list(dict.fromkeys([*own, *_undominated(useful[:LOOKED_AT])]))[:POOL]


def _loss(recipe: Recipe, prices: Sequence[int]) -> Fraction:
    return Fraction(MILLION - whole_worth(recipe.counts, prices))


def _undominated(recipes: Sequence[Recipe]) -> Iterator[Recipe]:
    """Those that no other yields as much as."""
    for recipe in recipes:
        others = (other for other in recipes if other != recipe)
        if not any(within(recipe.counts, one.counts) == recipe.counts for one in others):
            yield recipe
