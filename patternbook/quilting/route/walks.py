"""The walks of a stage: the fills in their order, and the ways between them."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Collection, Iterator, Mapping, Sequence
from itertools import groupby
from typing import Final

from patternbook.quilting.records import Leg, LegKind, Path, Spot, Walk, measured
from patternbook.quilting.route.graph import Graph
from patternbook.quilting.route.network import Network, Way, upon
from patternbook.quilting.route.order import Worth, ordered
from patternbook.quilting.route.pieces import Guest, Piece

SAME: Final = 1e-6
Under = Mapping[int, tuple[int, ...]]


class Sewing:
    """What has been sewn so far; walks are sewn on to it."""

    def __init__(self, net: Network, found: Sequence[Piece], worth: Worth) -> None:
        self._net = net
        self._pieces = found
        self._worth = worth

    def remember(self, walks: Sequence[Walk]) -> None:
        """An earlier stage has sewn these."""
        paths = [leg.path for walk in walks for leg in walk.legs if leg.kind != "step"]
        for under in upon(self._net, paths):
            for link in sorted({n for links in under.values() for n in links}):
                self._net.graph.stitch(link)

    def walks(self, keys: Collection[str], corner: Spot) -> tuple[Walk, ...]:
        """One walk after another through the fills of these areas, from near a corner on; a new
        one where the way would be too far."""
        mine = [n for n, piece in enumerate(self._pieces) if piece.key in keys]
        if not mine:
            return ()
        route = ordered(self._net, [self._net.ways[n] for n in mine], self._worth, corner)
        found: list[list[Leg]] = []
        under = self._under(route)
        for number, way in enumerate(route):
            hop = self._hop(route[number - 1], way) if number else None
            if hop is None:
                if found:
                    found[-1] += self._to_rim(route[number - 1])
                found.append(self._from_rim(way))
            else:
                found[-1] += hop
            found[-1] += self._fill(self._pieces[way.piece], self._sewn(way), under[number])
        found[-1] += self._to_rim(route[-1])
        return tuple(Walk(tuple(joined(legs))) for legs in found)

    def _under(self, ways: Sequence[Way]) -> list[Under]:
        """The links under the paths of those fills that run upon any."""
        paths = [self._sewn(way) for way in ways]
        touching = [n for n, way in enumerate(ways) if self._pieces[way.piece].touches]
        known = upon(self._net, [paths[n] for n in touching])
        found: list[Under] = [{} for _ in ways]
        for n, under in zip(touching, known, strict=True):
            found[n] = under
        return found

    def _sewn(self, way: Way) -> Path:
        return self._pieces[way.piece].sewn(way.place, way.forward)

    def _fill(self, piece: Piece, path: Path, under: Under) -> Iterator[Leg]:
        """A fill: its stretches along the finished edge apart from the others, and its guests on
        the way."""
        graph = self._net.graph
        stops = _stops(piece, path)
        halts = sorted(stops)

        def kind_of(number: int) -> LegKind:
            links = under.get(number, ())
            return "edge" if any(graph.links[n].kind == "edge" for n in links) else "fill"

        kinds = [(kind_of(n), bisect_right(halts, n)) for n in range(len(path) - 1)]
        at = 0
        for (kind, _), those in groupby(kinds):
            yield from self._visits(stops.pop(at, ()))
            end = at + len(list(those))
            links = [under.get(n, ()) for n in range(at, end)]
            again = all(ns and all(graph.passes[n] for n in ns) for ns in links)
            yield Leg(kind, path[at : end + 1], piece.key, again)
            for link in (n for ns in links for n in ns):
                graph.stitch(link)
            at = end
        yield from self._visits(stops.pop(at, ()))

    def _visits(self, guests: Sequence[Guest]) -> Iterator[Leg]:
        for guest in guests:
            step = guest.at, guest.place.spot
            yield Leg("step", step)
            yield from self._fill(guest.piece, guest.piece.sewn(guest.place, forward=True), {})
            yield Leg("step", step[::-1], "", again=True)

    def _hop(self, one: Way, other: Way) -> list[Leg] | None:
        reach = self._net.graph.reach({one.leave: 0.0}, (other.enter,), limit=self._worth.start)
        if other.enter not in reach.cost:
            return None
        return list(self._travelled(one.leave, reach.links(other.enter)))

    def _from_rim(self, way: Way) -> list[Leg]:
        node, links = self._rim(way.enter)
        return list(self._travelled(node, links)) if links else []

    def _to_rim(self, way: Way) -> list[Leg]:
        node, links = self._rim(way.leave)
        turned = _turned(self._net.graph, node, links)
        return list(self._travelled(way.leave, turned))

    def _rim(self, end: int) -> tuple[int, list[tuple[int, int]]]:
        """The shortest way from the edge of the quilt to an end, if it is short."""
        graph = self._net.graph
        starts = dict.fromkeys(self._net.rim, 0.0)
        reach = graph.reach({end: 0.0}, limit=self._worth.inside)
        near = [(far, node) for node, far in reach.cost.items() if node in starts and node != end]
        if not near:
            return end, []
        _, node = min(near)
        return node, _turned(graph, end, reach.links(node))

    def _travelled(self, start: int, links: Sequence[tuple[int, int]]) -> Iterator[Leg]:
        """The legs along some links, those of one kind together, but each step by itself."""
        graph = self._net.graph
        steps: list[tuple[LegKind, bool, int, Path]] = []
        at = start
        for _, number in links:
            link = graph.links[number]
            path = link.path if link.one == at else link.path[::-1]
            at = link.other if link.one == at else link.one
            if link.length > SAME:
                apart = number if link.kind == "step" else -1
                steps.append((link.kind, bool(graph.passes[number]), apart, path))
            graph.stitch(number)
        for (kind, again, _), those in groupby(steps, key=lambda step: step[:3]):
            paths = [path for *_, path in those]
            yield Leg(
                kind, (*paths[0], *(spot for path in paths[1:] for spot in path[1:])), "", again
            )


def _stops(piece: Piece, path: Path) -> dict[int, list[Guest]]:
    """The corners of a path at which guests are sewn: the first that is at the spot."""
    found: dict[int, list[Guest]] = {}
    for guest in piece.guests:
        found.setdefault(path.index(guest.at), []).append(guest)
    return found


def _turned(graph: Graph, start: int, links: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    """The same way back: for each link the node that it is then come from."""
    found = []
    at = start
    for _, number in links:
        link = graph.links[number]
        at = link.other if link.one == at else link.one
        found.append((at, number))
    return found[::-1]


def joined(legs: Sequence[Leg]) -> Iterator[Leg]:
    """The legs without those that go nowhere, each beginning exactly where the last one ended."""
    at = None
    for leg in legs:
        if measured(leg.path) <= SAME:
            continue
        path = leg.path
        if at is not None and path[0] != at and math.dist(at, path[0]) <= 1e-3:
            path = (at, *path[1:])
        at = path[-1]
        yield leg._replace(path=path)
