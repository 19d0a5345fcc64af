"""How hard a plan is to cut, and what of it is the easiest to count: strips, widths, cuts."""

from __future__ import annotations

from patternbook.cutting.planner.ground import Ground, Plan, Recipe

# What a cutter has to mind: each recipe, the more so of several kinds; each width of strip that the
# ruler is set to; each strip.
RECIPE, MIXED, WIDTH, STRIP = 10, 4, 5, 2


def mixed(recipe: Recipe) -> bool:
    """Whether it yields pieces of several kinds."""
    return sum(map(bool, recipe.counts)) > 1


def minded(recipe: Recipe) -> int:
    """What the recipe itself costs, however often it is cut."""
    return RECIPE + MIXED * mixed(recipe)


def effort(plan: Plan) -> int:
    """How hard a plan is to cut. Strips that hold less of the same, as the last ones do, are no
    recipe of their own."""
    recipes = [recipe for recipe, _ in plan]
    own = (one for one in recipes if not any(_holds_less(one, other) for other in recipes))
    widths = len({(recipe.zone, recipe.height) for recipe in recipes})
    return sum(map(minded, own)) + WIDTH * widths + STRIP * sum(times for _, times in plan)


def _holds_less(one: Recipe, other: Recipe) -> bool:
    same = (one.zone, one.height) == (other.zone, other.height) and one != other
    return same and all(few <= more for few, more in zip(one.counts, other.counts, strict=True))


def saved(ground: Ground, recipe: Recipe) -> int:
    """How many cuts a strip saves, where a sub-cut yields several pieces."""
    columns = ground.zones[recipe.zone].layout(recipe.strip)
    return sum(recipe.counts) - sum(column.columns for column in columns)
