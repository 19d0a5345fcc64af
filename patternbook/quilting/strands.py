"""Lines that run straight on where they cross: what is left to decide is where the needle turns,
and only that goes to the programme."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from itertools import combinations
from typing import Final, NamedTuple

from patternbook.quilting.net import Net, Step
from patternbook.quilting.records import Spot

STRAIGHT: Final = math.cos(math.radians(3))  # that much out of line is straight on

Half = tuple[int, int]  # an edge and its end: 0 the tail, 1 the head


class Strand(NamedTuple):
    """Edges that follow one another without a choice, from a place to a place."""

    one: int
    other: int
    steps: tuple[Step, ...]
    length: float
    needed: bool


class Strands(NamedTuple):
    """The strands of a net, how many places they join, the node of each place, and the places
    on the finished edge: there a walk may start and stop."""

    strands: tuple[Strand, ...]
    nodes: tuple[int, ...]
    starts: tuple[int, ...]


def heading(net: Net, half: Half) -> Spot:
    """The direction in which an edge leaves its end."""
    path = net.paths[half[0]]
    (x0, y0), (x1, y1) = path[:2] if half[1] == 0 else path[:-3:-1]
    far = math.dist((x0, y0), (x1, y1)) or 1.0
    return (x1 - x0) / far, (y1 - y0) / far


def strands(net: Net, offered: Collection[int]) -> Strands:
    """The strands of these edges. A walk turns where a line ends or bends or where it may leave
    for another way; not where lines cross, unless a line can be reached in no other way."""
    plain = _Places(net, sorted(offered), crossing=True)
    lost = plain.out_of_reach()
    if lost:
        plain = _Places(net, sorted(offered), crossing=True, joined=lost)
    return _contracted(net, plain)


class _Places:
    """Where the edges meet: one place at each node, but where lines cross one for each."""

    def __init__(
        self, net: Net, edges: Sequence[int], *, crossing: bool, joined: Collection[int] = ()
    ) -> None:
        self.net, self.edges = net, edges
        self.nodes: list[int] = []
        self.place: dict[Half, int] = {}
        around: dict[int, list[Half]] = defaultdict(list)
        for edge in edges:
            around[net.tails[edge]].append((edge, 0))
            around[net.heads[edge]].append((edge, 1))
        for node, halves in sorted(around.items()):
            pairs = crossings(net, halves) if crossing and node not in joined else []
            through = {half for pair in pairs for half in pair}
            for group in (*pairs, [half for half in halves if half not in through]):
                if group:
                    self.place.update((half, len(self.nodes)) for half in group)
                    self.nodes.append(node)

    def out_of_reach(self) -> set[int]:
        """The nodes on lines that no way joins with the finished edge."""
        root = Union(len(self.nodes))
        for edge in self.edges:
            root.join(self.place[edge, 0], self.place[edge, 1])
        kinds = self.net.kinds
        rims = {root.of(self.place[e, 0]) for e in self.edges if kinds[e] == "edge"}
        return {
            self.nodes[self.place[edge, end]]
            for edge in self.edges
            for end in (0, 1)
            if self.net.needed[edge] and root.of(self.place[edge, end]) not in rims
        }


def crossings(net: Net, halves: Sequence[Half]) -> list[tuple[Half, Half]]:
    """The lines that cross at a node, if nothing else that must be stitched ends there."""
    needed = [half for half in halves if net.needed[half[0]]]
    if len(needed) < 4 or len(needed) % 2:
        return []
    ways = {half: heading(net, half) for half in needed}
    scored = sorted(
        (round(ways[a][0] * ways[b][0] + ways[a][1] * ways[b][1], 6), a, b)
        for a, b in combinations(needed, 2)
    )
    left, pairs = set(needed), []
    for turn, a, b in scored:
        if turn <= -STRAIGHT and a in left and b in left:
            pairs.append((a, b))
            left -= {a, b}
    return [] if left else pairs


def _contracted(net: Net, places: _Places) -> Strands:
    around: dict[int, list[Half]] = defaultdict(list)
    for half, place in places.place.items():
        around[place].append(half)
    used = _without_dead_ends(net, places, around)
    rim = {places.place[e, end] for e in used for end in (0, 1) if net.kinds[e] == "edge"}
    here = {p: [half for half in halves if half[0] in used] for p, halves in around.items()}
    inner = {p for p, halves in here.items() if _plain(net, halves)}
    number = {p: n for n, p in enumerate(p for p in sorted(here) if here[p] and p not in inner)}
    found: list[Strand] = []
    seen: set[int] = set()
    for place in sorted(number):
        for half in here[place]:
            if half[0] not in seen:
                found.append(_strand(net, places, here, number, half))
                seen |= {edge for edge, _ in found[-1].steps}
    for edge in sorted(used):  # rings that nothing else touches
        if edge not in seen:
            place = places.place[edge, 0]
            number[place] = len(number)
            found.append(_strand(net, places, here, number, (edge, 0)))
            seen |= {edge for edge, _ in found[-1].steps}
    nodes = tuple(places.nodes[place] for place in number)
    kept = tuple(s for s in found if s.needed or s.one != s.other)
    starts = {n for place, n in number.items() if place in rim}
    return Strands(kept, nodes, tuple(sorted(starts | _islands(kept, len(nodes), starts))))


def _islands(found: Sequence[Strand], places: int, starts: Collection[int]) -> set[int]:
    """The places that no way at all joins with the finished edge: walks over them start inside."""
    root = Union(places)
    for strand in found:
        root.join(strand.one, strand.other)
    return {n for group in root.groups() if not any(p in starts for p in group) for n in group}


def _plain(net: Net, halves: Sequence[Half]) -> bool:
    """Whether nothing is to be decided: one way in, one way out, both alike."""
    if len(halves) != 2 or halves[0][0] == halves[1][0]:
        return False
    (one, _), (other, _) = halves
    return net.needed[one] == net.needed[other] and net.kinds[one] == net.kinds[other]


def _without_dead_ends(net: Net, places: _Places, around: dict[int, list[Half]]) -> set[int]:
    used = set(places.edges)
    number = {place: len(halves) for place, halves in around.items()}
    waiting = [place for place, many in number.items() if many == 1]
    while waiting:
        place = waiting.pop()
        left = [half for half in around[place] if half[0] in used]
        if len(left) == 1 and not net.needed[left[0][0]]:
            edge, end = left[0]
            used.discard(edge)
            there = places.place[edge, 1 - end]
            number[there] -= 1
            if number[there] == 1:
                waiting.append(there)
    return used


def _strand(
    net: Net,
    places: _Places,
    here: dict[int, list[Half]],
    number: dict[int, int],
    half: Half,
) -> Strand:
    start = places.place[half]
    steps, length, needed = [], 0.0, net.needed[half[0]]
    while True:
        edge, end = half
        steps.append((edge, end == 0))
        length += net.lengths[edge]
        place = places.place[edge, 1 - end]
        if place in number:
            return Strand(number[start], number[place], tuple(steps), length, needed)
        half = next(h for h in here[place] if h[0] != edge)


class Union:
    """Which things are joined."""

    def __init__(self, many: int) -> None:
        self._up = list(range(many))

    def of(self, one: int) -> int:
        while self._up[one] != one:
            self._up[one] = self._up[self._up[one]]
            one = self._up[one]
        return one

    def join(self, one: int, other: int) -> bool:
        """Whether they were apart until now."""
        a, b = self.of(one), self.of(other)
        self._up[max(a, b)] = min(a, b)
        return a != b

    def groups(self) -> Iterator[list[int]]:
        """All that belongs together, in order of the first of each."""
        found: dict[int, list[int]] = defaultdict(list)
        for one in range(len(self._up)):
            found[self.of(one)].append(one)
        yield from found.values()
