"""In which order the fills are sewn: a dozen at the least cost there is; more of them row by row,
made shorter where neighbours change places."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final, NamedTuple

import numpy as np

from patternbook.quilting.records import Spot
from patternbook.quilting.route.exact import Problem, cheapest
from patternbook.quilting.route.network import Network, Way
from patternbook.quilting.route.shorter import Apart, shorter

EXACT: Final = 12  # fills in one programme
WINDOW: Final = 7  # fills looked at together where there are more
STRIDE: Final = 4
MET: Final = 48  # ends of others looked for around each
DETOUR: Final = 1.3  # a way along seams against the straight line
LEAN: Final = 0.5  # inches that an inch away from the top left corner is worth, to begin with


class Worth(NamedTuple):
    """What a new start is worth in inches of travel, and beginning or ending it away from the
    edge of the quilt, where its ends have to be buried."""

    start: float
    inside: float


class Costs:
    """What it costs to come from one way to another, worked out when asked."""

    def __init__(self, net: Network, ways: Sequence[Way], worth: Worth, fills: int) -> None:
        self._net = net
        self._worth = worth
        self._enough = None if fills <= EXACT else MET
        self._known: dict[int, dict[int, float]] = {}
        self._seen: dict[int, float] = {}  # how far around each node all ends are known
        rim = net.graph.reach(dict.fromkeys(net.rim, 0.0), limit=worth.inside).cost
        ends = {node for way in ways for node in (way.enter, way.leave)}
        self.rim = {node: min(rim.get(node, math.inf), worth.inside) for node in sorted(ends)}

    def into(self, way: Way, corner: Spot) -> float:
        away = math.dist(self._net.graph.spots[way.enter], corner)
        return self.rim[way.enter] + LEAN * away

    def between(self, one: Way, other: Way) -> float:
        far = self._from(one.leave).get(other.enter)
        if far is None:
            far = self._guess(one.leave, other.enter)
        return min(far, self._worth.start + self.rim[one.leave] + self.rim[other.enter])

    def around(self, node: int) -> dict[int, float]:
        """The ends around a node and how far they are."""
        return self._from(node)

    def _guess(self, one: int, other: int) -> float:
        """Beyond what is known: no nearer than that, and nowhere without a way."""
        spots, near = self._net.graph.spots, self._net.graph.near
        if not near[one] or not near[other]:
            return math.inf
        return max(self._seen[one], DETOUR * math.dist(spots[one], spots[other]))

    def _from(self, node: int) -> dict[int, float]:
        if node not in self._known:
            graph = self._net.graph
            cost = graph.reach({node: 0.0}, limit=self._worth.start, enough=self._enough).cost
            ends = {end: far for end, far in cost.items() if end in graph.ends}
            is_all = self._enough is None or len(ends) < self._enough
            self._known[node] = ends
            self._seen[node] = math.inf if is_all else max(ends.values())
        return self._known[node]


def ordered(net: Network, groups: Sequence[Sequence[Way]], worth: Worth, corner: Spot) -> list[Way]:
    """One way through each of the paths, in the order in which they are sewn."""
    flat = [way for group in groups for way in group]
    costs = Costs(net, flat, worth, len(groups))
    if len(groups) <= EXACT:
        into = [costs.into(way, corner) for way in flat]
        return _exact(groups, costs, into, [costs.rim[way.leave] for way in flat])
    starts = [_in_rows(net, groups, turned=turned) for turned in (False, True)]
    apart = _apart(net, groups, costs)
    tried = [shorter(start, apart) for start in starts]
    best = min(tried, key=lambda order: round(apart.total(order), 6))
    return _windows(_chosen(best, groups, costs, corner), groups, costs, corner)


def _exact(
    groups: Sequence[Sequence[Way]], costs: Costs, into: list[float], out: list[float]
) -> list[Way]:
    flat = [way for group in groups for way in group]
    owner = [number for number, group in enumerate(groups) for _ in group]
    between = [[costs.between(one, other) for other in flat] for one in flat]
    problem = Problem(np.array(owner), np.array(between), np.array(into), np.array(out))
    found, _ = cheapest(problem)
    return [flat[n] for n in found]


def _in_rows(net: Network, groups: Sequence[Sequence[Way]], *, turned: bool) -> list[int]:
    """From the top left, row by row and back again; or column by column."""
    spots = [
        np.mean([net.graph.spots[n] for way in group for n in (way.enter, way.leave)], axis=0)
        for group in groups
    ]
    places = [(float(y), float(x)) if not turned else (float(x), float(y)) for x, y in spots]
    by_row = sorted(range(len(groups)), key=lambda n: places[n])
    height = _height(sorted(place[0] for place in places))
    rows: list[list[int]] = []
    for number in by_row:
        if not rows or places[number][0] > places[rows[-1][0]][0] + height:
            rows.append([])
        rows[-1].append(number)
    found: list[int] = []
    for count, row in enumerate(rows):
        found += sorted(row, key=lambda n: places[n][1], reverse=count % 2 == 1)
    return found


def _height(tops: Sequence[float]) -> float:
    """Half of what a row is high, taking the areas to fill about a square in equal shares."""
    return (tops[-1] - tops[0]) / max(1.0, math.sqrt(len(tops))) / 2


def _apart(net: Network, groups: Sequence[Sequence[Way]], costs: Costs) -> Apart:
    """How far the fills are apart, whichever way they are entered and left."""
    owner = {
        node: number
        for number, group in enumerate(groups)
        for way in group
        for node in (way.enter, way.leave)
    }
    near: list[dict[int, float]] = [{} for _ in groups]
    for node, number in owner.items():
        for end, far in costs.around(node).items():
            other = owner.get(end, number)
            if other != number:
                for one, two in ((number, other), (other, number)):
                    near[one][two] = min(far, near[one].get(two, math.inf))
    middles = [
        np.mean([net.graph.spots[way.enter] for way in group], axis=0).tolist() for group in groups
    ]
    return Apart(near, middles, DETOUR)


def _chosen(
    order: Sequence[int], groups: Sequence[Sequence[Way]], costs: Costs, corner: Spot
) -> list[Way]:
    """The best ways through the fills in a given order."""
    total = [costs.into(way, corner) for way in groups[order[0]]]
    back: list[list[int]] = []
    for one, other in pairwise(order):
        sums = [
            [far + costs.between(way, to) for far, way in zip(total, groups[one], strict=True)]
            for to in groups[other]
        ]
        back.append([row.index(min(row)) for row in sums])
        total = [min(row) for row in sums]
    total = [far + costs.rim[way.leave] for far, way in zip(total, groups[order[-1]], strict=True)]
    at = total.index(min(total))
    found = [groups[order[-1]][at]]
    for number, came in zip(reversed(order[:-1]), reversed(back), strict=True):
        at = came[at]
        found.append(groups[number][at])
    return found[::-1]


def _windows(
    route: list[Way], groups: Sequence[Sequence[Way]], costs: Costs, corner: Spot
) -> list[Way]:
    """The same, with the best order found within each window of neighbours in turn."""
    number = {way: n for n, group in enumerate(groups) for way in group}
    for first, last in _spans(len(route)):
        those = [groups[number[way]] for way in route[first:last]]
        flat = [way for group in those for way in group]
        if first:
            into = [costs.between(route[first - 1], way) for way in flat]
        else:
            into = [costs.into(way, corner) for way in flat]
        if last < len(route):
            out = [costs.between(way, route[last]) for way in flat]
        else:
            out = [costs.rim[way.leave] for way in flat]
        route[first:last] = _exact(those, costs, into, out)
    return route


def _spans(count: int) -> Iterator[tuple[int, int]]:
    for first in range(0, max(1, count - WINDOW + STRIDE), STRIDE):
        yield first, min(count, first + WINDOW)
