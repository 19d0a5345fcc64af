"""The cheapest order of up to a dozen fills, and for each the way to enter and to leave it: a
dynamic programme over all sets of fills (Held and Karp)."""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

Costs = NDArray[np.float64]
BLOCK: Final = 2_000_000  # sums looked at in one go


class Problem(NamedTuple):
    """`owner` says for each way which fill it goes through; `between` what it costs to come from
    one way to another, `into` to begin with a way and `out` to end with it."""

    owner: NDArray[np.intp]
    between: Costs
    into: Costs
    out: Costs

    @property
    def fills(self) -> int:
        return int(self.owner.max()) + 1 if len(self.owner) else 0


def cheapest(problem: Problem) -> tuple[list[int], float]:
    """The ways in their order, one for each fill, and what they cost."""
    count = problem.fills
    if not count:
        return [], 0.0
    best, came = _tables(problem, count)
    last = best[-1] + problem.out
    way = int(last.argmin())
    cost = float(last[way])
    found = []
    done = (1 << count) - 1
    while way >= 0:
        found.append(way)
        before = int(came[done, way])
        done ^= 1 << int(problem.owner[way])
        way = before
    return found[::-1], cost


def _tables(problem: Problem, count: int) -> tuple[Costs, NDArray[np.int32]]:
    """For each set of fills and each way: the least cost to go through the set and end with the
    way, and which way comes before it."""
    size, ways = 1 << count, len(problem.owner)
    best = np.full((size, ways), np.inf)
    came = np.full((size, ways), -1, dtype=np.int32)
    for way in range(ways):
        best[1 << int(problem.owner[way]), way] = problem.into[way]
    sets = np.arange(size)
    many = np.array([number.bit_count() for number in range(size)])
    mine = [np.flatnonzero(problem.owner == fill) for fill in range(count)]
    for level in range(1, count):
        for block in _blocks(sets[many == level], ways):
            sums = best[block][:, :, None] + problem.between[None]
            from_ = sums.argmin(axis=1)
            least = np.take_along_axis(sums, from_[:, None], axis=1)[:, 0]
            for fill, those in enumerate(mine):
                without = (block >> fill) & 1 == 0
                larger = block[without] | (1 << fill)
                best[np.ix_(larger, those)] = least[np.ix_(without, those)]
                came[np.ix_(larger, those)] = from_[np.ix_(without, those)]
    return best, came


def _blocks(sets: NDArray[np.intp], ways: int) -> list[NDArray[np.intp]]:
    step = max(1, BLOCK // (ways * ways))
    return [sets[at : at + step] for at in range(0, len(sets), step)]
