"""What a plan cuts beyond what is asked is left out, from as few strips as possible."""

from __future__ import annotations

from patternbook.cutting.planner.ground import Plan, Recipe, plan_of, yields
from patternbook.cutting.planner.zone import Counts, Strip


def exactly(plan: Plan, demand: Counts) -> Plan:
    """The same plan, where some strips hold fewer pieces, so that none is cut in vain."""
    extra = list(map(int.__sub__, yields(plan, len(demand)), demand))
    untouched = dict(plan)
    changed: list[Recipe] = []
    while any(extra):
        place = extra.index(max(extra))
        recipe = _pick(untouched, changed, place, extra)
        if recipe in changed:
            changed.remove(recipe)
        else:
            untouched[recipe] -= 1
        fewer = tuple(
            count - min(count, more) for count, more in zip(recipe.counts, extra, strict=True)
        )
        taken = map(int.__sub__, recipe.counts, fewer)
        extra = [more - less for more, less in zip(extra, taken, strict=True)]
        if any(fewer):
            changed.append(Recipe(recipe.zone, Strip(recipe.height, fewer)))
    return plan_of([*untouched.items(), *((recipe, 1) for recipe in changed)])


def _pick(
    untouched: dict[Recipe, int], changed: list[Recipe], place: int, extra: list[int]
) -> Recipe:
    """A strip with pieces of that kind: the one that loses most of what is too much, and of such a
    changed or a single one."""
    single = [(recipe, times == 1) for recipe, times in untouched.items() if times]
    offered = [*((recipe, True) for recipe in changed), *single]
    fit = [(recipe, first) for recipe, first in offered if recipe.counts[place]]
    return max(fit, key=lambda pair: (sum(map(min, pair[0].counts, extra)), pair[1], pair[0]))[0]
