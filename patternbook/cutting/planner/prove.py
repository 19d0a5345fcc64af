"""The strips that could be in a better plan: those whose loss at the certified prices is no more
than what such a plan may lose in all."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from patternbook.cutting.planner.ground import BELOW, Ground, Recipe
from patternbook.cutting.planner.pool import Shortest
from patternbook.cutting.planner.records import MILLION, Prices
from patternbook.cutting.planner.work import Work
from patternbook.programme import SEEDS


def better_strips(
    ground: Ground, prices: Prices, bound: Fraction, target: int, work: Work
) -> tuple[list[Recipe], bool]:
    """The strips that a plan no longer than the target can hold, and whether they are all."""
    gap = target - bound
    whole = [price for _, price in prices.kinds]
    found: list[Recipe] = []
    for place, zone in enumerate(ground.zones):
        worth = Fraction(1) if place == BELOW else Fraction(*prices.beside)
        for height in reversed(zone.heights):
            floor = ceil((height * worth - gap) * MILLION)
            room = work.limits.patterns - len(found)
            strips, all_of_them = zone.every(height, whole, floor, room)
            found += [Recipe(place, strip) for strip in strips if any(strip.counts)]
            work.patterns += len(strips)
            if not all_of_them:
                return found, False
    return found, True


def loss(prices: Prices, recipe: Recipe) -> int:
    """By how much, at the certified prices, a strip takes more cloth than its pieces are worth; in
    millionths, and these in as many parts as the price of the cloth beside the block is told in."""
    over, under = prices.beside
    pairs = zip(prices.kinds, recipe.counts, strict=True)
    worth = sum(price * count for (_, price), count in pairs)
    share = under if recipe.zone == BELOW else over
    return recipe.height * share * MILLION - worth * under


def surely_none(shortest: Shortest, work: Work) -> bool:
    """Whether the solver, begun from another seed, finds again that there is no such plan: it
    reckons in floating point, and is believed only the second time."""
    _, found = shortest.found(work, work.limits.nodes, SEEDS[1])
    return found.none
