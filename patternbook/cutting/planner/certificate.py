"""A bound that anyone can check in whole numbers: prices at which no strip is worth more than it
is wide."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from patternbook.cutting.planner.ground import BELOW, BESIDE, Ground
from patternbook.cutting.planner.records import MILLION, Kind, Prices
from patternbook.cutting.planner.zone import Zone


def certified(ground: Ground, prices: Sequence[float]) -> Prices:
    """The prices, lowered until they keep the rule, in whole millionths."""
    whole = [int(max(0.0, price) * MILLION) for price in prices]
    while True:
        over = _dearest(ground.zones[BELOW], whole)
        if over <= 1:
            break
        whole = [int(price / over) for price in whole]
    beside = Fraction(0)
    if len(ground.zones) > 1:
        beside = _dearest(ground.zones[BESIDE], whole)
    named = tuple((kind.name, price) for kind, price in zip(ground.kinds, whole, strict=True))
    block = (ground.block.width, ground.block.length) if ground.block else (0, 0)
    bound = -(-_worth(ground, whole, beside) // 1)
    ratio = (beside.numerator, beside.denominator)
    return Prices(named, block, ratio, max(bound, ground.base))


def for_any_block(ground: Ground, prices: Prices, width: int, pieces: Sequence[Kind]) -> Prices:
    """A bound for plans with whatever block of those pieces: what is cut beside it could be cut
    below it, and all pieces together are no larger than the cloth."""
    whole = [price for _, price in prices.kinds]
    paid = sum(price * number for price, number in zip(whole, ground.demand, strict=True))
    area = sum(kind.along * kind.across * kind.number for kind in (*ground.kinds, *pieces))
    return Prices(prices.kinds, bound=max(-(-paid // MILLION), -(-area // width)))


def exact_bound(ground: Ground, prices: Prices) -> Fraction:
    """The bound before it is rounded up."""
    return _worth(ground, [price for _, price in prices.kinds], Fraction(*prices.beside))


def _dearest(zone: Zone, prices: Sequence[int]) -> Fraction:
    """The most that a strip is worth for each unit of its height."""
    worth = zone.worth(prices).tolist()
    ratios = (Fraction(w, h * MILLION) for w, h in zip(worth, zone.heights, strict=True))
    return max(ratios, default=Fraction(0))


def _worth(ground: Ground, prices: Sequence[int], beside: Fraction) -> Fraction:
    """What all pieces cost, less what the cloth beside the block is worth."""
    pieces = sum(price * number for price, number in zip(prices, ground.demand, strict=True))
    return ground.base + Fraction(pieces, MILLION) - beside * ground.base
