"""Few recipes that together could cut all: a linear programme in which a recipe costs the less for
each strip, the more strips of it the last answer had."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternbook.cutting.planner.effort import STRIP, WIDTH, minded
from patternbook.cutting.planner.ground import BESIDE, Ground, Recipe
from patternbook.cutting.planner.master import ITERATIONS
from patternbook.cutting.planner.pool import most_times
from patternbook.programme import Linear

_TINY = 1e-6
ROUNDS = 30


def few(ground: Ground, recipes: Sequence[Recipe], longest: int, size: int) -> list[list[Recipe]]:
    """Groups of about so many recipes, those of the last answers first."""
    groups: list[dict[Recipe, None]] = []
    answers = list(dict.fromkeys(_answers(ground, recipes, longest)))
    for answer in reversed(answers):
        used = dict.fromkeys(recipes[column] for column in answer)
        if groups and len(groups[-1] | used) <= size:
            groups[-1].update(used)
        else:
            groups.append(used)
    return [list(group) for group in groups]


def _answers(ground: Ground, recipes: Sequence[Recipe], longest: int) -> Iterator[tuple[int, ...]]:
    """Which recipes are used, round by round."""
    linear = _programme(ground, recipes, longest)
    each = [most_times(ground, recipe) for recipe in recipes]
    costs = [
        STRIP + (minded(recipe) + WIDTH / 2) / times
        for recipe, times in zip(recipes, each, strict=True)
    ]
    for _ in range(ROUNDS):
        linear.recost(costs)
        relaxed = linear.solve()
        if relaxed is None:
            return
        used = tuple(at for at, amount in enumerate(relaxed.amounts) if amount > _TINY)
        yield used
        _recost(costs, recipes, relaxed.amounts, used)


def _recost(
    costs: list[float], recipes: Sequence[Recipe], amounts: Sequence[float], used: Sequence[int]
) -> None:
    """Shares what a recipe costs, and its width, among the strips that there were of them."""
    strips: dict[tuple[int, int], float] = {}
    for at in used:
        width = recipes[at].zone, recipes[at].height
        strips[width] = strips.get(width, 0) + amounts[at]
    for at in used:
        width = recipes[at].zone, recipes[at].height
        own = minded(recipes[at]) / max(amounts[at], 0.5)
        costs[at] = STRIP + own + WIDTH / max(strips[width], 0.5)


def _programme(ground: Ground, recipes: Sequence[Recipe], longest: int) -> Linear:
    """Every piece cut, within the length and beside the block."""
    linear = Linear(ITERATIONS)
    kinds = len(ground.kinds)
    for number in ground.demand:
        linear.row(number, None)
    linear.row(None, longest - ground.base)
    linear.row(None, ground.base)
    for recipe in recipes:
        entries = {place: count for place, count in enumerate(recipe.counts) if count}
        entries[kinds + (recipe.zone == BESIDE)] = recipe.height
        linear.column(0, entries)
    return linear
