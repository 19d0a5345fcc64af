"""The second goal: of the plans that take no more cloth, one that is easy to cut."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from math import ceil
from typing import Final, NamedTuple

from patternbook.cutting.planner.effort import STRIP, WIDTH, effort, minded, saved
from patternbook.cutting.planner.exactly import exactly
from patternbook.cutting.planner.ground import Ground, Plan, Recipe, plan_of
from patternbook.cutting.planner.pool import asking, most_times
from patternbook.cutting.planner.prove import loss
from patternbook.cutting.planner.records import MILLION
from patternbook.cutting.planner.search import Search
from patternbook.cutting.planner.shelves import own_strips
from patternbook.cutting.planner.slopes import few
from patternbook.programme import Whole

# Easy strips that are looked at beside those of the search; how many recipes one programme chooses
# from, and how many such programmes there are.
EASY: Final = 1_500
GROUP: Final = 8
GROUPS: Final = 2
# Strips that a programme of the tidiest plan chooses from.
TIDY: Final = 40


def easiest(search: Search, plan: Plan, longest: int) -> Plan:
    """The plan of least effort that is no longer than that; of such the shortest, of the fewest
    strips, widths and cuts."""
    ground = search.ground
    found = [plan]
    own = own_strips(ground)
    if ground.length(own) <= longest and effort(own) < effort(plan):
        found.append(own)
    pool = _pool(search, plan, longest)
    for group in few(ground, pool, longest, GROUP)[:GROUPS]:
        columns = _columns(ground, found[-1], group, longest)
        found.append(_in_turn(search, columns, found[-1], [columns.efforts()]))
    # The recipes that came out are enough for the goals that come after.
    columns = _columns(ground, found[-1], (), longest)
    efforts = columns.efforts()
    hard = _total(efforts, columns.amounts(found[-1]))
    columns.whole.row(None, hard, columns.entries(efforts))
    goals = [columns.costs(ground.cost), *columns.fewest()]
    found.append(_in_turn(search, columns, found[-1], goals))
    # What strips that hold fewer add is not in the programme.
    told = [like for plan in reversed(found) for like in (_fuller(plan, pool), plan)]
    return min(told, key=lambda plan: effort(exactly(plan, ground.demand)))


def tidiest(search: Search, plan: Plan) -> Plan:
    """Of the plans as short as this one, that of the fewest strips, widths and cuts."""
    length = search.ground.length(plan)
    pool = _pool(search, plan, length)
    columns = _columns(search.ground, plan, pool[:TIDY], length)
    return _fuller(_in_turn(search, columns, plan, columns.fewest()), pool)


def _fuller(plan: Plan, pool: Sequence[Recipe]) -> Plan:
    """The same plan with its strips as full as strips of the same kinds are in the pool: what is
    too much is left out of the last ones (`exactly`)."""
    return plan_of((max(_as_full(recipe, pool), key=_pieces), times) for recipe, times in plan)


def _as_full(recipe: Recipe, pool: Sequence[Recipe]) -> Iterator[Recipe]:
    yield recipe
    for other in pool:
        if (other.zone, other.height) == (recipe.zone, recipe.height):
            pairs = zip(other.counts, recipe.counts, strict=True)
            if all(more >= count and bool(more) == bool(count) for more, count in pairs):
                yield other


def _pieces(recipe: Recipe) -> int:
    return sum(recipe.counts)


class _Columns(NamedTuple):
    """A programme with three kinds of column: strips of each recipe, whether it is used at all, and
    whether any of its height is."""

    ground: Ground
    recipes: list[Recipe]
    widths: list[tuple[int, int]]
    whole: Whole

    def costs(
        self,
        strip: Callable[[Recipe], int] = lambda _: 0,
        recipe: Callable[[Recipe], int] = lambda _: 0,
        width: int = 0,
    ) -> list[int]:
        """What each column costs."""
        used = [width] * len(self.widths)
        return [*map(strip, self.recipes), *map(recipe, self.recipes), *used]

    def efforts(self) -> list[int]:
        return self.costs(lambda _: STRIP, minded, WIDTH)

    def fewest(self) -> list[list[int]]:
        """Strips, widths, cuts."""
        return [
            self.costs(lambda _: 1),
            self.costs(width=1),
            self.costs(lambda recipe: -saved(self.ground, recipe)),
        ]

    def entries(self, costs: Sequence[int]) -> dict[int, int]:
        return {at: cost for at, cost in enumerate(costs) if cost}

    def amounts(self, plan: Plan) -> list[int]:
        times = dict(plan)
        used = {(recipe.zone, recipe.height) for recipe in times}
        return [
            *(times.get(recipe, 0) for recipe in self.recipes),
            *(int(recipe in times) for recipe in self.recipes),
            *(int(width in used) for width in self.widths),
        ]

    def plan(self, amounts: Sequence[int]) -> Plan:
        return plan_of(zip(self.recipes, amounts[: len(self.recipes)], strict=True))


def _columns(ground: Ground, plan: Plan, others: Iterable[Recipe], longest: int) -> _Columns:
    """A programme of the recipes of the plan and others."""
    recipes = list(dict.fromkeys([*(recipe for recipe, _ in plan), *others]))
    whole = asking(ground, recipes, longest)
    widths = sorted({(recipe.zone, recipe.height) for recipe in recipes})
    uses = [whole.column(1) for _ in recipes]
    wide = {width: whole.column(1) for width in widths}
    for at, (recipe, use) in enumerate(zip(recipes, uses, strict=True)):
        whole.row(None, 0, {at: 1, use: -most_times(ground, recipe)})
        whole.row(None, 0, {use: 1, wide[recipe.zone, recipe.height]: -1})
    for place in range(len(ground.kinds)):
        yielding = (use for recipe, use in zip(recipes, uses, strict=True) if recipe.counts[place])
        whole.row(1, None, dict.fromkeys(yielding, 1))
    return _Columns(ground, recipes, widths, whole)


def _pool(search: Search, plan: Plan, longest: int) -> list[Recipe]:
    """The strips that a plan no longer than that may hold, those that lose least first; without
    those that a lower strip could yield."""
    ground = search.ground
    kept = dict.fromkeys(recipe for recipe, _ in plan)
    offered = dict.fromkeys(search.master.recipes)
    for place, zone in enumerate(ground.zones):
        offered.update((Recipe(place, strip), None) for strip in zone.easy(EASY))
    gap = _parts(search, longest - search.exact_bound)
    losses = [(loss(search.prices, recipe), recipe) for recipe in offered if recipe not in kept]
    for lost, recipe in sorted(losses):
        if lost <= gap and not ground.zones[recipe.zone].lower(recipe.strip):
            kept[recipe] = None
    return list(kept)


def _parts(search: Search, length: Fraction) -> int:
    """A length in the parts that losses are told in."""
    return ceil(length * MILLION * search.prices.beside[1])


def _in_turn(search: Search, columns: _Columns, plan: Plan, goals: list[list[int]]) -> Plan:
    """Serves one goal after the other; none at the cost of one before it."""
    amounts: Sequence[int] = columns.amounts(plan)
    work = search.work
    for costs in goals:
        found = columns.whole.solve(costs, work.limits.easing, start=amounts, polish=False)
        work.nodes += found.nodes
        work.programmes += 1
        amounts = min(found.amounts or amounts, amounts, key=lambda a: _total(costs, a))
        columns.whole.row(None, _total(costs, amounts), columns.entries(costs))
    return columns.plan(amounts)


def _total(costs: Sequence[int], amounts: Sequence[int]) -> int:
    return sum(map(int.__mul__, costs, amounts))
