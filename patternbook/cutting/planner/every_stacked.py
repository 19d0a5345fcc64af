"""All the strips of one height, of sub-cuts with pieces of several kinds, that could still be in a
better plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternbook.cutting.planner.every_filling import EveryFilling, within
from patternbook.cutting.planner.every_stack import EveryStack
from patternbook.cutting.planner.stack_cuts import SubCut, SubCuts, counted
from patternbook.cutting.planner.stack_strips import Cloth, PricedStrips
from patternbook.cutting.planner.zone import Counts, Strip

# Steps of the search for each strip that may be found at most.
STEPS = 10


class EveryStacked:
    """The strips of a cloth at these prices, none that a lower strip yields too."""

    def __init__(self, cloth: Cloth, asked: Counts, prices: Sequence[int]) -> None:
        self._cloth = cloth
        self._asked = asked
        self._prices = prices
        self._priced = PricedStrips(cloth, prices, asked, int)
        self._worth = dict(zip(cloth.heights, self._priced.values.tolist(), strict=True))
        size = max(cloth.heights, default=0) // cloth.unit + 1
        self._stacks = EveryStack(cloth.together, asked, prices, size, cloth.unit)

    def of(self, height: int, floor: int, limit: int) -> tuple[dict[Strip, SubCuts], bool]:
        """Those of that height worth the floor, and whether these are all."""
        found: dict[Strip, SubCuts] = {}
        if self._worth[height] < floor:
            return found, True
        by_length = self._priced.by_length(height)
        held, whole = self._sub_cuts(height, by_length, floor, STEPS * limit)
        if not whole:
            return found, False
        lower = max((one for one in self._cloth.heights if one < height), default=0)
        fillings = EveryFilling(
            list(held), self._asked, self._prices, floor, by_length.__getitem__, STEPS * limit
        )
        for filling in fillings.of(self._cloth.cells):
            cuts = tuple((held[one], filling.count(one)) for one in dict.fromkeys(filling))
            if any(_high(cut) > lower for cut, _ in cuts):
                counts = within(counted(cuts, len(self._asked)), self._asked)
                found[Strip(height, counts)] = cuts
                if len(found) > limit:
                    return found, False
        return found, fillings.whole

    def _sub_cuts(
        self, height: int, by_length: Sequence[int], floor: int, steps: int
    ) -> tuple[dict[Strip, SubCut], bool]:
        """The sub-cuts that such a strip could have (how much of it each takes, and its pieces),
        but none that a shorter one holds as much as."""
        found: dict[Strip, SubCut] = {}
        cells = self._cloth.cells
        stacks = self._stacks.of(
            height, lambda base: floor - by_length[cells - self._cloth.takes(base)], steps
        )
        for cut in [*stacks, *self._single(height)]:
            takes = self._cloth.takes(cut[0][0])
            counts = counted(((cut, 1),), len(self._asked))
            found.setdefault(Strip(takes, counts), cut)
        best = {one: found[one] for one in _undominated(found)} if len(found) < steps else found
        return best, self._stacks.whole

    def _single(self, height: int) -> Iterator[SubCut]:
        """Pieces that want a strip of their own width."""
        for lay in self._cloth.lays:
            if lay.alone and lay.across == height:
                yield ((lay, 1),)


def _high(cut: SubCut) -> int:
    return sum(lay.across * number for lay, number in cut)


def _undominated(offered: dict[Strip, SubCut]) -> Iterator[Strip]:
    kept: list[Strip] = []
    for one in sorted(offered, key=lambda strip: (strip.height, -sum(strip.counts), strip.counts)):
        if not any(within(one.counts, other.counts) == one.counts for other in kept):
            kept.append(one)
            yield one
