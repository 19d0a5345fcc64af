"""The cloth of one plan: below the block of lengthwise pieces, and beside it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from math import gcd
from typing import NamedTuple

from patternbook.cutting.planner.records import Block, Kind
from patternbook.cutting.planner.zone import Counts, Strip, Zone

BELOW, BESIDE = 0, 1


class Recipe(NamedTuple):
    """A strip, and the zone of the ground that it is cut from."""

    zone: int
    strip: Strip

    @property
    def height(self) -> int:
        return self.strip.height

    @property
    def counts(self) -> Counts:
        return self.strip.counts


# Recipes and how many strips are cut by each.
Plan = tuple[tuple[Recipe, int], ...]


@dataclass(frozen=True)
class Ground:
    """`zones`: the cloth below the block, in the whole width and as long as need be; and, where
    there is any, beside the block, as long as that is."""

    kinds: tuple[Kind, ...]
    zones: tuple[Zone, ...]
    block: Block | None = None

    @cached_property
    def demand(self) -> Counts:
        return tuple(kind.number for kind in self.kinds)

    @property
    def base(self) -> int:
        """What the block takes of the length."""
        return self.block.length if self.block else 0

    def cost(self, recipe: Recipe) -> int:
        """What one strip takes of the length."""
        return recipe.height if recipe.zone == BELOW else 0

    def length(self, plan: Plan) -> int:
        return self.base + sum(self.cost(recipe) * times for recipe, times in plan)

    @cached_property
    def step(self) -> int:
        """All lengths of strips together are multiples of this."""
        return gcd(*self.zones[BELOW].heights) or 1

    def attainable(self, upto: int) -> int:
        """The lengths up to so much that a plan can have, as the ones of a binary number."""
        every = (1 << (upto + 1)) - 1
        lengths = (1 << self.base) & every
        for height in self.zones[BELOW].heights:
            times = height
            while times <= upto:
                lengths |= (lengths << times) & every
                times *= 2
        return lengths

    def raised(self, bound: int, upto: int) -> int:
        """The least length from the bound on that a plan can have; not above `upto`."""
        if bound >= upto:
            return upto
        above = self.attainable(upto) >> bound
        return bound + (above & -above).bit_length() - 1 if above else upto

    def lowered(self, target: int) -> int:
        """The greatest length up to the target that a plan can have; -1 where there is none."""
        return self.attainable(target).bit_length() - 1 if target >= 0 else -1


def plan_of(pairs: Iterable[tuple[Recipe, int]]) -> Plan:
    """The plan of these, like recipes together, in a fixed order."""
    times: dict[Recipe, int] = {}
    for recipe, number in pairs:
        if number:
            times[recipe] = times.get(recipe, 0) + number
    return tuple(sorted(times.items(), key=lambda pair: _in_order(pair[0])))


def _in_order(recipe: Recipe) -> tuple[int, int, list[int]]:
    """Below the block before beside it, the widest first, the fullest first."""
    return recipe.zone, -recipe.height, [-count for count in recipe.counts]


def yields(plan: Plan, kinds: int) -> Counts:
    """How many pieces of each kind the plan cuts."""
    return tuple(
        sum(recipe.counts[place] * times for recipe, times in plan) for place in range(kinds)
    )
