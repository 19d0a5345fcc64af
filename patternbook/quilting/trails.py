"""The walks of the first stage: straight on wherever that can be, leg after leg."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import Final, NamedTuple

from patternbook.quilting.least import Least
from patternbook.quilting.net import Net, Step
from patternbook.quilting.records import Leg, Spot, Walk
from patternbook.quilting.strands import Strands, heading

TURN: Final = math.cos(math.radians(30))  # up to so much is going straight on
BACK: Final = 2.0  # a turn back on the same line counts as so many others

End = tuple[int, int]  # a pass over a strand, and its end: 0 the first, 1 the last


class _Pair(NamedTuple):
    """What follows what at a place; None: a walk starts or stops."""

    one: End
    other: End | None


class Trails:
    """Passes over strands, paired at each place; pairs change until all hang together."""

    def __init__(self, net: Net, strands: Strands, found: Least) -> None:
        self.net, self.strands = net, strands
        self.passes = [
            number
            for number, strand in enumerate(strands.strands)
            for _ in range(strand.needed + found.copies[number])
        ]
        self.at: dict[int, list[End]] = defaultdict(list)
        for turn, number in enumerate(self.passes):
            self.at[strands.strands[number].one].append((turn, 0))
            self.at[strands.strands[number].other].append((turn, 1))
        self.mate: dict[End, End | None] = {}
        for place, ends in sorted(self.at.items()):
            for pair in self._paired(ends, found.ends.count(place)):
                self._join(pair)
        while self._merged():
            pass

    def _join(self, pair: _Pair) -> None:
        self.mate[pair.one] = pair.other
        if pair.other is not None:
            self.mate[pair.other] = pair.one

    def _step(self, end: End) -> tuple[int, int]:
        """The edge of the net that leaves the strand's end, and its end there."""
        steps = self.strands.strands[self.passes[end[0]]].steps
        edge, ahead = steps[0] if end[1] == 0 else steps[-1]
        return edge, 0 if ahead == (end[1] == 0) else 1

    def cost(self, pair: _Pair) -> float:
        """How much of a turn it is."""
        if pair.other is None:
            return 0.0
        one, other = self._step(pair.one), self._step(pair.other)
        if one == other:
            return BACK
        (x0, y0), (x1, y1) = heading(self.net, one), heading(self.net, other)
        straight = -(x0 * x1 + y0 * y1)
        same = self.net.kinds[one[0]] == self.net.kinds[other[0]]
        return (0.0 if straight >= TURN else 1.0 + 0.1 * (1 - straight)) + (0.0 if same else 0.05)

    def _paired(self, ends: Sequence[End], open_: int) -> list[_Pair]:
        """The straightest pairs; so many ends stay open."""
        left, found = list(ends), []
        while len(left) > open_:
            scored = [(round(self.cost(_Pair(a, b)), 6), a, b) for a, b in combinations(left, 2)]
            _, a, b = min(scored)
            found.append(_Pair(a, b))
            left = [end for end in left if end not in (a, b)]
        return [*found, *(_Pair(end, None) for end in left)]

    def trail(self, start: End) -> list[End]:
        """The passes from here on, each by the end at which it is begun."""
        found, end = [], start
        while True:
            found.append(end)
            after = self.mate[end[0], 1 - end[1]]
            if after is None or after == start:
                return found
            end = after

    def all(self) -> list[tuple[list[End], bool]]:
        """All trails, and whether they are closed."""
        found: list[tuple[list[End], bool]] = []
        seen: set[int] = set()
        opened = sorted(end for end, mate in self.mate.items() if mate is None)
        for start in [*opened, *((turn, 0) for turn in range(len(self.passes)))]:
            if start[0] not in seen:
                trail = self.trail(start)
                seen |= {turn for turn, _ in trail}
                found.append((trail, self.mate[start] is not None))
        return found

    def _merged(self) -> bool:
        """Takes a closed trail into another where that turns least."""
        trails = self.all()
        owner = {turn: n for n, (trail, _) in enumerate(trails) for turn, _ in trail}
        best: tuple[float, tuple[_Pair, _Pair]] | None = None
        for _, ends in sorted(self.at.items()):
            if len({owner[turn] for turn, _ in ends}) < 2:
                continue
            pairs = [_Pair(e, m) for e in ends if (m := self.mate[e]) is None or e < m]
            for one, other in combinations(pairs, 2):
                a, b = owner[one.one[0]], owner[other.one[0]]
                if a != b and (trails[a][1] or trails[b][1]):
                    for new in self._crossed(one, other):
                        more = sum(map(self.cost, new)) - self.cost(one) - self.cost(other)
                        if best is None or more < best[0] - 1e-9:
                            best = (more, new)
        if best is None:
            return False
        for pair in best[1]:
            self._join(pair)
        return True

    def _crossed(self, one: _Pair, other: _Pair) -> Iterator[tuple[_Pair, _Pair]]:
        """Two pairs in the other two ways."""
        (a, b), (c, d) = one, other
        if b is None:
            (a, b), (c, d) = other, one
        if b is None:
            return
        yield _Pair(a, c), _Pair(b, d)
        if d is None:
            yield _Pair(b, c), _Pair(a, None)
        else:
            yield _Pair(a, d), _Pair(b, c)

    def steps(self, trail: Sequence[End]) -> list[Step]:
        """A trail as steps over the edges of the net."""
        found: list[Step] = []
        for turn, end in trail:
            steps = self.strands.strands[self.passes[turn]].steps
            found += steps if end == 0 else [(edge, not ahead) for edge, ahead in steps[::-1]]
        return found


def trails(net: Net, strands: Strands, found: Least) -> list[list[Step]]:
    """The walks as steps over the net, from the top left on."""
    every = Trails(net, strands, found)
    walks = [every.steps(trail) for trail, _ in every.all()]
    left = min(spot[0] for spot in net.spots)
    top = min(spot[1] for spot in net.spots)
    corner = (left, top)
    ahead = [min(steps, _turned(steps), key=lambda s: _far(net, s, corner)) for steps in walks]
    return sorted(ahead, key=lambda steps: _far(net, steps, corner))


def _turned(steps: Sequence[Step]) -> list[Step]:
    return [(edge, not ahead) for edge, ahead in reversed(steps)]


def _far(net: Net, steps: Sequence[Step], corner: Spot) -> tuple[float, float]:
    x, y = net.path(steps[0])[0]
    return round(math.dist((x, y), corner), 6), round(y, 6)


def walk(net: Net, steps: Sequence[Step]) -> Walk:
    """The legs of a walk, one as far as it goes straight on; the passes are counted in the net."""
    legs: list[Leg] = []
    for step in steps:
        edge = step[0]
        leg = Leg(net.kinds[edge], net.path(step), again=net.passes[edge] > 0)
        if legs and _goes_on(legs[-1], leg):
            legs[-1] = leg._replace(path=legs[-1].path + leg.path[1:])
        else:
            legs.append(leg)
        net.passes[edge] += 1
    return Walk(tuple(legs))


def _goes_on(leg: Leg, after: Leg) -> bool:
    if (leg.kind, leg.again) != (after.kind, after.again):
        return False
    (x0, y0), (x1, y1) = leg.path[-2:]
    (x2, y2), (x3, y3) = after.path[:2]
    dot = (x1 - x0) * (x3 - x2) + (y1 - y0) * (y3 - y2)
    far = math.dist((x0, y0), (x1, y1)) * math.dist((x2, y2), (x3, y3))
    least_straight = -0.5 if leg.kind == "edge" else TURN  # round a corner of the quilt is one leg
    return dot >= least_straight * far
