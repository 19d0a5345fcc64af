"""The net of all ways that the needle may go over a top: seams, the finished edge, anchor lines,
and what was stitched before."""

from __future__ import annotations

import heapq
import math
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Final, NamedTuple, Self

import numpy as np
import shapely

from patternbook.quilting.noding import NEAR, Way, measured, numbered, split, ways
from patternbook.quilting.records import AnchorLine, Leg, LegKind, Path, Spot, Top

# What an inch counts when it is only travelled: thread hides in a ditch and under the binding,
# and shows where it lies on a line; each pass more builds up (a judgement, see `again`).
WEIGHT: Final[dict[LegKind, float]] = {
    "ditch": 1.0,
    "edge": 1.0,
    "beside": 2.0,
    "marked": 2.0,
    "fill": 2.0,
    "step": 2.0,
}
AGAIN: Final = 1.8
HIDDEN: Final = ("ditch", "edge")  # ways that may be travelled before they are stitched

Step = tuple[int, bool]  # an edge, and whether it is gone from tail to head


class Trip(NamedTuple):
    """The cheapest way from a node to one of those wanted."""

    target: int
    cost: float
    length: float
    steps: tuple[Step, ...]


@dataclass
class Net:
    """Nodes (`spots`) and edges between them, each with its path from tail to head. `needed`: an
    anchor line. `passes`: how often it has been stitched."""

    spots: list[Spot]
    tails: list[int]
    heads: list[int]
    paths: list[Path]
    kinds: list[LegKind]
    needed: list[bool]
    passes: list[int] = field(default_factory=list)
    lengths: list[float] = field(default_factory=list)
    at: list[list[int]] = field(default_factory=list)  # the edges at each node
    _parts: dict[int, list[int]] = field(default_factory=dict)  # of edges since cut in two

    def __post_init__(self) -> None:
        self.lengths = [measured(path) for path in self.paths]
        self.passes = self.passes or [0] * len(self.paths)
        self.at = [[] for _ in self.spots]
        for edge, ends in enumerate(zip(self.tails, self.heads, strict=True)):
            for node in ends:
                self.at[node].append(edge)

    @classmethod
    def of(cls, top: Top, lines: Sequence[AnchorLine], more: Sequence[Way] = ()) -> Self:
        """The net of a top with its anchor lines and other lines (`more`: given as needed or not,
        cut where they cross anything)."""
        return cls.joined(ways(top, lines, more))

    @classmethod
    def joined(cls, found: Sequence[Way]) -> Self:
        """The net of ways that meet at their ends only."""
        ends = [spot for way in found for spot in (way.path[0], way.path[-1])]
        nodes, spots = numbered(ends)
        return cls(
            spots,
            nodes[0::2].tolist(),
            nodes[1::2].tolist(),
            [way.path for way in found],
            [way.kind for way in found],
            [way.needed for way in found],
        )

    # Going

    def weight(self, edge: int) -> float:
        """What an inch counts on an edge; nothing visible is travelled before it is stitched."""
        kind, passes = self.kinds[edge], self.passes[edge]
        if not passes and kind not in HIDDEN:
            return math.inf
        return WEIGHT[kind] * AGAIN**passes

    def other(self, edge: int, node: int) -> int:
        """The node at the other end."""
        return self.heads[edge] if self.tails[edge] == node else self.tails[edge]

    def shortest(
        self, source: int, targets: Collection[int], limit: float = math.inf
    ) -> Trip | None:
        """The cheapest way to the nearest target; None where that costs more than the limit."""
        best: dict[int, float] = {source: 0.0}
        came: dict[int, int] = {}
        queue = [(0.0, source)]
        while queue:
            cost, node = heapq.heappop(queue)
            if cost > best[node]:
                continue
            if node in targets:
                return self._trip(source, node, cost, came)
            for edge in self.at[node]:
                there = self.other(edge, node)
                total = cost + self.lengths[edge] * self.weight(edge)
                if total <= limit and total < best.get(there, math.inf) - 1e-9:
                    best[there] = total
                    came[there] = edge
                    heapq.heappush(queue, (total, there))
        return None

    def costs(self, source: int, limit: float = math.inf) -> dict[int, float]:
        """What it costs to go to every node within the limit."""
        best: dict[int, float] = {source: 0.0}
        queue = [(0.0, source)]
        while queue:
            cost, node = heapq.heappop(queue)
            if cost > best[node]:
                continue
            for edge in self.at[node]:
                there = self.other(edge, node)
                total = cost + self.lengths[edge] * self.weight(edge)
                if total <= limit and total < best.get(there, math.inf) - 1e-9:
                    best[there] = total
                    heapq.heappush(queue, (total, there))
        return best

    def _trip(self, source: int, target: int, cost: float, came: dict[int, int]) -> Trip:
        steps: list[Step] = []
        node = target
        while node != source:
            edge = came[node]
            steps.append((edge, self.heads[edge] == node))
            node = self.other(edge, node)
        length = sum(self.lengths[edge] for edge, _ in steps)
        return Trip(target, cost, length, tuple(reversed(steps)))

    def path(self, step: Step) -> Path:
        """The path of an edge as it is gone."""
        edge, ahead = step
        return self.paths[edge] if ahead else self.paths[edge][::-1]

    def legs(self, steps: Iterable[Step], area: str = "") -> list[Leg]:
        """Steps as legs: one as long as the kind, and whether it was stitched before, stays."""
        found: list[Leg] = []
        for step in steps:
            kind, again = self.kinds[step[0]], self.passes[step[0]] > 0
            path = self.path(step)
            if found and (found[-1].kind, found[-1].again) == (kind, again):
                found[-1] = found[-1]._replace(path=found[-1].path + path[1:])
            else:
                found.append(Leg(kind, path, area, again))
        return found

    def stitch(self, steps: Iterable[Step]) -> None:
        """Counts a pass on each edge."""
        for edge, _ in steps:
            self.passes[edge] += 1

    # Where to get on

    @cached_property
    def _tree(self) -> shapely.STRtree:
        return shapely.STRtree(np.array([shapely.LineString(p) for p in self.paths], object))

    def nearest(
        self, spot: Spot, kinds: Collection[LegKind] = (), reach: float = math.inf
    ) -> tuple[int, float] | None:
        """The edge (of these kinds, or any) nearest to a spot, and how far it is; the first where
        several are as near. None where none is within reach."""
        here = shapely.Point(spot)
        for edges in self._around(here, reach):
            offered = [e for e in edges if not kinds or self.kinds[e] in kinds]
            if offered:
                lines = shapely.linestrings
                found = [(float(lines(self.paths[e]).distance(here)), e) for e in offered]
                far, edge = min(found, key=lambda pair: (round(pair[0], 6), pair[1]))
                return (edge, far) if far <= reach else None
        return None

    def _around(self, here: shapely.Point, reach: float) -> Iterable[list[int]]:
        """The edges about a spot, in ever wider circles."""
        width = 1.0
        left, top, right, bottom = shapely.total_bounds(self._tree.geometries)
        widest = min(reach, 2 * (right - left + bottom - top) + 1)
        while True:
            numbers = self._tree.query(here, predicate="dwithin", distance=min(width, widest))
            yield sorted(part for n in numbers.tolist() for part in self._parts.get(n, [n]))
            if width >= widest:
                return
            width *= 4

    def attach(self, spot: Spot, kinds: Collection[LegKind] = ()) -> int:
        """The node at the place of the net nearest to a spot; an edge is cut there for it."""
        found = self.nearest(spot, kinds)
        if found is None:
            raise LookupError(kinds)
        edge = found[0]
        line = shapely.LineString(self.paths[edge])
        place = float(line.project(shapely.Point(spot)))
        if place < NEAR:
            return self.tails[edge]
        if place > line.length - NEAR:
            return self.heads[edge]
        on = line.interpolate(place)
        return self._cut(edge, place, (float(on.x), float(on.y)))

    def _cut(self, edge: int, place: float, spot: Spot) -> int:
        first, second = split(self.paths[edge], [(place, spot)])
        whole = next((n for n, parts in self._parts.items() if edge in parts), edge)
        node, new, head = len(self.spots), len(self.paths), self.heads[edge]
        self.spots.append(spot)
        self.tails.append(node)
        self.heads.append(head)
        self.paths.append(second)
        self.lengths.append(measured(second))
        self.kinds.append(self.kinds[edge])
        self.needed.append(self.needed[edge])
        self.passes.append(self.passes[edge])
        self.heads[edge], self.paths[edge] = node, first
        self.lengths[edge] = measured(first)
        self.at[head][self.at[head].index(edge)] = new
        self.at.append([edge, new])
        self._parts.setdefault(whole, [edge]).append(new)
        return node
