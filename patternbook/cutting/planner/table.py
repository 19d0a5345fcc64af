"""How much of a strip's length so many pieces of one kind take, for strips of every height."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from functools import cached_property
from math import gcd
from typing import NamedTuple

from patternbook.cutting.planner.records import Kind, Manner


class Way(NamedTuple):
    """One way of laying a kind in a strip: what a sub-cut takes along it, and how many pieces lie
    in it one above the other, `across` each."""

    along: int
    across: int
    stack: int


class Filling:
    """The shortest length of strip (in cells of one size) for 1, 2, 3, … pieces of a kind, laid
    in these ways."""

    def __init__(self, ways: tuple[Way, ...], cells: int, cell: int, number: int) -> None:
        self.ways = ways
        self.least: list[int] = [0]
        self.sub_cuts: list[tuple[int, ...]] = [(0,) * len(ways)]
        self._takes = [way.along // cell for way in ways]
        while len(self.least) <= number and self._one_more(cells):
            pass

    def _one_more(self, cells: int) -> bool:
        """Finds the shortest length for one more piece, in the fewest sub-cuts."""
        count = len(self.least)
        length, _, cuts = min(self._ending_with(count, way) for way in range(len(self.ways)))
        if length <= cells:
            self.least.append(length)
            self.sub_cuts.append(cuts)
        return length <= cells

    def _ending_with(self, count: int, way: int) -> tuple[int, int, tuple[int, ...]]:
        before = max(0, count - self.ways[way].stack)
        cuts = list(self.sub_cuts[before])
        cuts[way] += 1
        return self.least[before] + self._takes[way], sum(cuts), tuple(cuts)

    @property
    def most(self) -> int:
        """How many pieces one strip holds."""
        return len(self.least) - 1

    @cached_property
    def steps(self) -> tuple[tuple[int, int], ...]:
        """(length, count) wherever one piece more would take more of the strip."""
        counts = range(1, self.most + 1)
        return tuple(
            (self.least[count], count)
            for count in counts
            if count == self.most or self.least[count + 1] > self.least[count]
        )

    @cached_property
    def _counts(self) -> list[int]:
        return [count for _, count in self.steps]

    def within(self, cap: int) -> tuple[tuple[int, int], ...]:
        """The steps of at most so many pieces."""
        if cap >= self.most:
            return self.steps
        below = bisect_left(self._counts, cap)
        return (*self.steps[:below], (self.least[cap], cap))

    def fit(self, length: int) -> int:
        """How many pieces fit into so much of a strip."""
        most = 0
        for takes, count in self.steps:
            if takes <= length:
                most = count
        return most

    def same(self, other: Filling) -> bool:
        """Whether both take the same lengths."""
        return self.least == other.least


def lays(kind: Kind, width: int) -> list[tuple[int, int]]:
    """(along, across) of the piece in each direction that the cloth and the author allow."""
    both = [(kind.along, kind.across)]
    if kind.turns and not kind.own_width and kind.along != kind.across:
        both.append((kind.across, kind.along))
    return [lay for lay in both if lay[0] <= width]


def ways(kind: Kind, width: int, height: int, manner: Manner) -> tuple[Way, ...]:
    """The ways a kind is laid in a strip of that height."""
    found = []
    for along, across in lays(kind, width):
        if manner == "even" or kind.own_width:
            stack = int(across == height)
        else:
            stack = height // across if manner == "shared" else int(across <= height)
        if stack:
            found.append(Way(along, across, stack))
    return tuple(found)


def strip_heights(
    kinds: Iterable[Kind], width: int, highest: int | None, cap: int | None = None
) -> list[int]:
    """Every side that may lie across a strip. Above the highest only those of pieces that no
    other strip yields; none above the cap."""
    found: set[int] = set()
    for kind in kinds:
        sides = [across for _, across in lays(kind, width) if cap is None or across <= cap]
        low = [side for side in sides if highest is None or side <= highest]
        found.update(low or sorted(sides)[:1])
    return sorted(found)


def common(kinds: Iterable[Kind], width: int) -> int:
    """The largest measure that divides all that may lie along a strip."""
    return gcd(*(along for kind in kinds for along, _ in lays(kind, width))) or 1


def fillings(kinds: Sequence[Kind], width: int, height: int, manner: Manner) -> dict[int, Filling]:
    """How the kinds (by their place) that fit it fill a strip of that height."""
    cell = common(kinds, width)
    laid = ((place, kind, ways(kind, width, height, manner)) for place, kind in enumerate(kinds))
    return {
        place: Filling(found, width // cell, cell, kind.number)
        for place, kind, found in laid
        if found
    }
