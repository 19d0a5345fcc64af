"""The strips that fill one pre-cut piece of cloth, run one way."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np

from patternbook.cutting.planner.every_filling import EveryFilling
from patternbook.cutting.planner.pile import Layer, laid, piled
from patternbook.cutting.planner.plain_zone import PlainZone
from patternbook.cutting.planner.zone import Counts, Strip


class Direction(NamedTuple):
    """Strips that run one way through the piece; of its other side they take up to `deep`."""

    zone: PlainZone
    deep: int
    turned: bool


def summed(strips: Iterable[Strip], kinds: int) -> Counts:
    """The pieces of all of them."""
    total = [0] * kinds
    for strip in strips:
        for place, number in enumerate(strip.counts):
            total[place] += number
    return tuple(total)


def worth(counts: Counts, prices: Sequence[float]) -> float:
    """What pieces cost at these prices."""
    return sum(price * number for price, number in zip(prices, counts, strict=True))


def best_filled(way: Direction, prices: Sequence[float], caps: Counts) -> tuple[Strip, ...]:
    """The strips worth most together."""
    floors = np.zeros(len(way.zone.heights))
    strips = [one for one in way.zone.best(prices, caps, floors) if one.height <= way.deep]
    layers = [Layer(strip.height, worth(strip.counts, prices)) for strip in strips]
    return tuple(strips[place] for place in laid(piled(layers, way.deep, 0.0), layers, way.deep))


def most_worth(way: Direction, prices: Sequence[int]) -> int:
    """The most that a filling can be worth."""
    return piled(_layers(way, prices), way.deep, 0).at(way.deep)


def every_filled(
    way: Direction, prices: Sequence[int], floor: int, limit: int
) -> tuple[list[tuple[Strip, ...]], bool]:
    """All fillings worth the floor, and whether these are all."""
    room = piled(_layers(way, prices), way.deep, 0)
    strips: list[Strip] = []
    for height in way.zone.heights:
        enough = floor - room.at(way.deep - height)
        found, whole = way.zone.every(height, prices, enough, limit - len(strips))
        strips += found
        if not whole:
            return [], False
    asked = tuple(kind.number for kind in way.zone.kinds)
    fillings = EveryFilling(strips, asked, prices, floor, room.at, 20 * limit)
    every = list(fillings.of(way.deep))
    return every, fillings.whole


def _layers(way: Direction, prices: Sequence[int]) -> list[Layer[int]]:
    """Each height with the most that a strip of it is worth."""
    return [
        Layer(height, int(most))
        for height, most in zip(way.zone.heights, way.zone.worth(prices), strict=True)
        if most > 0
    ]
