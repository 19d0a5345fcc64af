"""What the needle may travel on, as a graph, and the shortest ways over it."""

from __future__ import annotations

import heapq
import math
from collections.abc import Collection, Mapping
from typing import Final, NamedTuple

from patternbook.quilting.records import LegKind, Path, Spot, measured

# What an inch is worth to travel: a ditch hides it, the binding covers it, a line in the open
# shows it doubled, and a step is a stray line. Judgements (common practice, no source).
WORTH: Final[Mapping[LegKind, float]] = {
    "ditch": 1.0,
    "edge": 1.0,
    "beside": 2.0,
    "marked": 2.0,
    "fill": 2.0,
    "step": 3.0,
}
# Each pass over a line makes the next one dearer, so that thread does not build up.
AGAIN: Final = 1.8


class Link(NamedTuple):
    """A stretch between two nodes, with nothing branching off between them."""

    one: int
    other: int
    path: Path
    kind: LegKind
    length: float


class Reach(NamedTuple):
    """How dear it is to come to each node, and from which node over which link."""

    cost: Mapping[int, float]
    back: Mapping[int, tuple[int, int]]

    def links(self, node: int) -> list[tuple[int, int]]:
        """The way to a node, as (node come from, link) in order; empty from a start."""
        found = []
        while node in self.back:
            before, link = self.back[node]
            found.append((before, link))
            node = before
        return found[::-1]


class Graph:
    """Nodes are places; links between them are seams, lines, the finished edge, and steps."""

    def __init__(self) -> None:
        self.dearer = AGAIN
        self.spots: list[Spot] = []
        self.links: list[Link] = []
        self.passes: list[int] = []
        self.near: list[list[tuple[int, int]]] = []
        # Where a fill begins or ends: never passed through on the way to another.
        self.ends: set[int] = set()
        self._weights: list[float] = []
        self._unsewn: list[float] = []

    def node(self, spot: Spot) -> int:
        self.spots.append(spot)
        self.near.append([])
        return len(self.spots) - 1

    def link(
        self, one: int, other: int, path: Path, kind: LegKind, worth: float | None = None
    ) -> int:
        """A new link; an inch of it worth what its kind is, or as told."""
        number = len(self.links)
        long = measured(path)
        self.links.append(Link(one, other, path, kind, long))
        self.passes.append(0)
        self._unsewn.append(long * (WORTH[kind] if worth is None else worth))
        self._weights.append(self._unsewn[-1])
        self.near[one].append((other, number))
        self.near[other].append((one, number))
        return number

    def stitch(self, link: int) -> None:
        """A link has been stitched once more."""
        self.passes[link] += 1
        self._weights[link] *= self.dearer

    def unpick(self, dearer: float) -> None:
        """Nothing has been stitched yet; each pass makes the next so many times as dear."""
        self.dearer = dearer
        self.passes = [0] * len(self.links)
        self._weights = list(self._unsewn)

    def reach(
        self,
        starts: Mapping[int, float],
        goals: Collection[int] = (),
        limit: float = math.inf,
        enough: int | None = None,
    ) -> Reach:
        """The shortest ways from the starts (each with what it costs to be there), until all the
        goals, or enough ends of fills, are reached, and nowhere beyond the limit."""
        cost = dict(starts)
        back: dict[int, tuple[int, int]] = {}
        done: set[int] = set()
        left = set(goals) if goals else None
        met = 0
        queue = sorted((far, node) for node, far in starts.items())
        while queue:
            far, node = heapq.heappop(queue)
            if node in done:
                continue
            if far > limit:
                break
            done.add(node)
            if left is not None:
                left.discard(node)
                if not left:
                    break
            if node in self.ends:
                met += 1
                if met == enough:
                    break
                if node in back:
                    continue
            self._spread(node, far, cost, back, queue)
        kept = {node: far for node, far in cost.items() if node in done}
        return Reach(kept, back)

    def _spread(
        self,
        node: int,
        far: float,
        cost: dict[int, float],
        back: dict[int, tuple[int, int]],
        queue: list[tuple[float, int]],
    ) -> None:
        for other, link in self.near[node]:
            there = far + self._weights[link]
            if there < cost.get(other, math.inf) - 1e-9:
                cost[other] = there
                back[other] = node, link
                heapq.heappush(queue, (there, other))
