"""The search on one ground: price, bound, programme, dive, and at last the proof."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from patternbook.cutting.planner.certificate import certified, exact_bound
from patternbook.cutting.planner.dive import Chances, dive
from patternbook.cutting.planner.ground import Ground, Plan, Recipe
from patternbook.cutting.planner.master import Master
from patternbook.cutting.planner.pool import Shortest
from patternbook.cutting.planner.prove import better_strips, loss, surely_none
from patternbook.cutting.planner.records import Prices, Task
from patternbook.cutting.planner.work import Work

# Dives before the proof is tried, and those after which the strips found are programmed anew.
EARLY = 3
PROGRAMMED = (1, 4, 12)
# Of too many strips that could be in a better plan so many are programmed.
SOME = 300


@dataclass
class Incumbent:
    """The best plan so far, of whatever ground, and what would be better."""

    task: Task
    by_length: bool
    ground: Ground | None = None
    plan: Plan = ()
    length: int | None = None

    def offer(self, ground: Ground, plan: Plan) -> None:
        length = ground.length(plan)
        if self.length is None or length < self.length:
            self.ground, self.plan, self.length = ground, plan, length

    @property
    def target(self) -> int:
        """No plan longer than this is better: it is no shorter, or buys no less."""
        if self.length is None:
            return -1
        return self.length - 1 if self.by_length else self.as_good - self.task.step

    @property
    def as_good(self) -> int:
        """A plan as long as this buys the same."""
        step, spare = self.task.step, self.task.allowance
        return -(-((self.length or 0) + spare) // step) * step - spare


class Search:
    """One ground. `bound`: no plan on it is shorter; `prices` are the certificate."""

    def __init__(self, ground: Ground, incumbent: Incumbent, work: Work) -> None:
        self.ground = ground
        self.incumbent = incumbent
        self.work = work
        self.master = Master(ground, work)
        self.prices: Prices
        self.exact_bound = Fraction(0)
        self.bound = 0
        self._dives = 0

    def begin(self, plans: Iterable[Plan]) -> None:
        """Prices, and a bound that anyone can check."""
        for plan in plans:
            self.incumbent.offer(self.ground, plan)
            for recipe, _ in plan:
                self.master.add(recipe)
        priced = self.master.price(self.ground.demand)
        prices = priced.kinds if priced else [0.0] * len(self.ground.kinds)
        self.prices = certified(self.ground, prices)
        self.exact_bound = exact_bound(self.ground, self.prices)
        self._raise(self.prices.bound)

    @property
    def target(self) -> int:
        """The longest plan on this ground that would be better than the best so far."""
        return self.ground.lowered(self.incumbent.target)

    @property
    def closed(self) -> bool:
        return self.bound > self.target

    def finish(self) -> None:
        """Searches until no better plan is left on this ground, or work is out."""
        if not self.closed:
            self._programme()
        self._dive(EARLY)
        if not self.closed:
            self._prove()
        self._dive(self.work.limits.dives)

    def _raise(self, bound: int) -> None:
        upto = self.incumbent.length or bound
        self.bound = max(self.bound, self.ground.raised(bound, max(upto, bound)))

    def _programme(self, others: Sequence[Recipe] = ()) -> None:
        target = self.target
        enough = None if self.incumbent.by_length else target
        pool = list(dict.fromkeys([*self.master.recipes, *others]))
        shortest = Shortest(self.ground, pool, target, enough)
        plan, _ = shortest.found(self.work, self.work.limits.nodes // 4)
        if plan is not None:
            self.incumbent.offer(self.ground, plan)

    def _dive(self, upto: int) -> None:
        while not self.closed and self._dives < upto:
            before = len(self.master.recipes)
            plan = dive(self.master, Chances(self._dives) if self._dives else None)
            self._dives += 1
            if plan is None:
                return
            self.incumbent.offer(self.ground, plan)
            fresh = len(self.master.recipes) > before
            if fresh and self._dives in PROGRAMMED and not self.closed:
                self._programme()

    def _prove(self) -> None:
        """Programmes all strips that could be in a better plan, until none is left. Where they are
        too many to be told, some that lose least may do better once."""
        strips, all_of_them = better_strips(
            self.ground, self.prices, self.exact_bound, self.target, self.work
        )
        if not all_of_them:
            strips.sort(key=lambda recipe: (loss(self.prices, recipe), recipe))
            self._programme(strips[:SOME])
        pool = list(dict.fromkeys([*self.master.recipes, *strips]))
        while all_of_them and not self.closed:
            target = self.target
            enough = None if self.incumbent.by_length else target
            shortest = Shortest(self.ground, pool, target, enough)
            plan, found = shortest.found(self.work, self.work.limits.nodes)
            if plan is not None:
                self.incumbent.offer(self.ground, plan)
            elif found.none and surely_none(shortest, self.work):
                self._raise(target + 1)
            else:
                return

    def use(self, recipes: Iterable[Recipe]) -> None:
        """Adds strips found elsewhere."""
        for recipe in recipes:
            self.master.add(recipe)
