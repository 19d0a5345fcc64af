"""The least that has to be stitched besides the lines, so that they fall into walks which start
and stop at the finished edge: as an integer programme, proven."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, NamedTuple

from patternbook.programme import Whole
from patternbook.quilting.strands import Strands, Union

PRICE: Final = 90.0  # inches of stitching that a start is worth: threads to be pulled up and sunk
FINE: Final = 1000  # to the thousandth of an inch
ROUNDS: Final = 80
NODES: Final = 2_000
KINDNESS: Final = 50

Amounts = tuple[int, ...]


@dataclass(frozen=True)
class Least:
    """How many more times each strand is stitched, the places where walks start and stop (two for
    each), the length of it all, and the least that it can be for so many walks."""

    copies: tuple[int, ...]
    ends: tuple[int, ...]
    extra: float
    bound: float
    proven: bool


class _Amount(NamedTuple):
    """A number from 0 to 3 as two columns: one (0 or 1), and twice that many."""

    odd: int
    pairs: int | None

    def of(self, amounts: Sequence[int]) -> int:
        return amounts[self.odd] + (0 if self.pairs is None else 2 * amounts[self.pairs])

    @property
    def row(self) -> dict[int, int]:
        return {self.odd: 1} | ({} if self.pairs is None else {self.pairs: 2})


class _Programme:
    """Columns: more passes over each strand, ends of walks at each start. What meets at a place
    is even in number."""

    def __init__(self, net: Strands) -> None:
        self.net, self.whole = net, Whole()
        self.passes = [self._amount(pairs=not s.needed) for s in net.strands]
        self.ends = {start: self._amount(pairs=True) for start in net.starts}
        odd = [0] * len(net.nodes)
        around: list[list[int]] = [[] for _ in net.nodes]
        for strand, amount in zip(net.strands, self.passes, strict=True):
            if strand.one != strand.other:
                for place in (strand.one, strand.other):
                    odd[place] ^= strand.needed
                    around[place].append(amount.odd)
        for place, columns in enumerate(around):
            ends = [self.ends[place].odd] if place in self.ends else []
            self._even([*columns, *ends], odd[place])
        self._no_way_for_nothing()
        for group in joined(net, [1] * len(net.strands)):
            self._at_least_two([self.ends[p] for p in group if p in self.ends])
        for group in joined(net, [0] * len(net.strands)):
            self.leave(group)

    def _amount(self, *, pairs: bool) -> _Amount:
        return _Amount(self.whole.column(1), self.whole.column(1) if pairs else None)

    def _even(self, columns: Sequence[int], odd: int) -> None:
        """So many of the columns are 1 that with `odd` the number is even."""
        half = self.whole.column(len(columns))
        self.whole.row(odd, odd, dict.fromkeys(columns, 1) | {half: -2})

    def _no_way_for_nothing(self) -> None:
        """Where no line is, nobody comes to go back, and no walk starts without going on."""
        lines = {place for s in self.net.strands if s.needed for place in (s.one, s.other)}
        around: dict[int, list[_Amount]] = defaultdict(list)
        for strand, amount in zip(self.net.strands, self.passes, strict=True):
            if strand.one != strand.other:
                around[strand.one].append(amount)
                around[strand.other].append(amount)
        for place, amounts in around.items():
            if place not in lines:
                here = [*amounts, self.ends[place]] if place in self.ends else amounts
                for amount in here:
                    self._only_with(amount, [other for other in here if other is not amount])

    def _only_with(self, amount: _Amount, others: Sequence[_Amount]) -> None:
        if amount.pairs is not None:
            columns = [c for other in others for c in other if c is not None]
            self.whole.row(0, None, dict.fromkeys(columns, 1) | {amount.pairs: -1})

    def _at_least_two(self, amounts: Sequence[_Amount]) -> None:
        row: dict[int, int] = {}
        for amount in amounts:
            row |= amount.row
        self.whole.row(2, None, row)

    def leave(self, group: Sequence[int]) -> None:
        """These places are joined with others, or a walk of their own starts here."""
        inside = set(group)
        leaving = [
            amount
            for strand, amount in zip(self.net.strands, self.passes, strict=True)
            if (strand.one in inside) != (strand.other in inside)
        ]
        self._at_least_two([*leaving, *(self.ends[p] for p in group if p in self.ends)])

    def costs(self, inch: float) -> list[int]:
        """Of all columns, in thousandths of an inch."""
        found = [0] * len(self.whole.caps)
        priced = [(a, s.length / inch) for a, s in zip(self.passes, self.net.strands, strict=True)]
        for amount, length in [*priced, *((amount, PRICE / 2) for amount in self.ends.values())]:
            for column, times in amount.row.items():
                found[column] = round(length * FINE) * times
        return found

    def copies(self, amounts: Sequence[int]) -> tuple[int, ...]:
        return tuple(amount.of(amounts) for amount in self.passes)

    def apart(self, amounts: Sequence[int]) -> list[list[int]]:
        """The groups of lines that are joined among themselves but where no walk starts."""
        return [
            group
            for group in joined(self.net, self.copies(amounts))
            if not any(self.ends[place].of(amounts) for place in group if place in self.ends)
        ]


def joined(net: Strands, copies: Sequence[int]) -> list[list[int]]:
    """The places that what is stitched joins, for each group of lines."""
    root = Union(len(net.nodes))
    for strand, number in zip(net.strands, copies, strict=True):
        if strand.needed or number:
            root.join(strand.one, strand.other)
    lines = {root.of(strand.one) for strand in net.strands if strand.needed}
    return [group for group in root.groups() if root.of(group[0]) in lines]


def least(net: Strands, inch: float, unkind: Mapping[int, float] | None = None) -> Least:
    """The least extra stitching, a start priced with it, for the fewest walks that pay. Of plans
    that are all the least it takes the one that is kindest: `unkind` says how little a place is
    liked as the start or the end of a walk."""
    programme = _Programme(net)
    costs = programme.costs(inch)
    amounts, best = _solved(programme, costs, NODES)
    if amounts is None:
        return _doubled(net)
    if best and unkind:
        amounts = _kindest(programme, costs, amounts, unkind)
    copies = programme.copies(amounts)
    ends = tuple(p for p, amount in programme.ends.items() for _ in range(amount.of(amounts)))
    extra = sum(n * s.length for n, s in zip(copies, net.strands, strict=True))
    return Least(copies, ends, extra, extra if best else 0.0, best)


def _kindest(
    programme: _Programme, costs: Sequence[int], amounts: Amounts, unkind: Mapping[int, float]
) -> Amounts:
    """Amounts that cost no more, and start and end where it is liked best."""
    total = sum(cost * amount for cost, amount in zip(costs, amounts, strict=True))
    programme.whole.row(None, total, {n: cost for n, cost in enumerate(costs) if cost})
    kindness = [0] * len(costs)
    for place, amount in programme.ends.items():
        for column, times in amount.row.items():
            kindness[column] = round(unkind.get(place, 0.0) * 8) * times
    for strand, amount in zip(programme.net.strands, programme.passes, strict=True):
        kindness[amount.odd] = round(strand.length) if strand.needed else 0
    found, _ = _solved(programme, kindness, KINDNESS)
    return found or amounts


def _solved(programme: _Programme, costs: Sequence[int], nodes: int) -> tuple[Amounts | None, bool]:
    for _ in range(ROUNDS):
        found = programme.whole.solve(costs, nodes)
        if found.amounts is None:
            return None, False
        apart = programme.apart(found.amounts)
        if not apart:
            return found.amounts, found.best
        for group in apart:
            programme.leave(group)
    return None, False


def _doubled(net: Strands) -> Least:
    """Where the programme finds nothing: every line there and back, joined on the shortest ways."""
    root = Union(len(net.nodes))
    copies = [1 if strand.needed else 0 for strand in net.strands]
    for strand in net.strands:
        if strand.needed:
            root.join(strand.one, strand.other)
    order = sorted(range(len(net.strands)), key=lambda n: (round(net.strands[n].length, 6), n))
    for number in order:
        strand = net.strands[number]
        if not strand.needed and root.join(strand.one, strand.other):
            copies[number] = 2
    groups = joined(net, copies)
    starts = set(net.starts)
    ends = [next((p for p in group if p in starts), group[0]) for group in groups]
    extra = sum(n * s.length for n, s in zip(copies, net.strands, strict=True))
    return Least(tuple(copies), tuple(p for p in ends for _ in range(2)), extra, 0.0, False)
