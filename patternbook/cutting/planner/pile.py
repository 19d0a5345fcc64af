"""How strips of several heights are best laid one over the other in a depth of cloth."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce
from math import gcd
from typing import Generic, NamedTuple, TypeVar

Worth = TypeVar("Worth", int, float)


class Layer(NamedTuple, Generic[Worth]):
    """A strip that may be laid: how high it is and what it is worth."""

    height: int
    worth: Worth


class Pile(NamedTuple, Generic[Worth]):
    """The most that layers one over the other are worth, for every depth in steps of `unit`; and
    which is laid last there (-1: none, a step less is worth as much)."""

    unit: int
    best: list[Worth]
    last: list[int]

    def at(self, depth: int) -> Worth:
        """What a depth of cloth is worth at most."""
        return self.best[min(depth // self.unit, len(self.best) - 1)]


def piled(layers: Sequence[Layer[Worth]], depth: int, nothing: Worth) -> Pile[Worth]:
    """Fill a depth of cloth, with each layer as often as need be."""
    unit = reduce(gcd, (layer.height for layer in layers), 0) or 1
    # The highest first: where two piles are worth the same the one of higher strips stays.
    order = sorted(range(len(layers)), key=lambda place: (-layers[place].height, place))
    best, last = [nothing], [-1]
    for here in range(1, depth // unit + 1):
        most, choice = best[here - 1], -1
        for place in order:
            rest = here - layers[place].height // unit
            if rest >= 0 and best[rest] + layers[place].worth > most:
                most, choice = best[rest] + layers[place].worth, place
        best.append(most)
        last.append(choice)
    return Pile(unit, best, last)


def laid(pile: Pile[Worth], layers: Sequence[Layer[Worth]], depth: int) -> list[int]:
    """The places of the layers that are worth most in that depth."""
    places, here = [], min(depth // pile.unit, len(pile.best) - 1)
    while here > 0:
        if pile.last[here] < 0:
            here -= 1
        else:
            places.append(pile.last[here])
            here -= layers[pile.last[here]].height // pile.unit
    return places
