"""The graph that the fills of a top are joined over."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, STRtree

from patternbook.quilting.noding import split
from patternbook.quilting.records import Path, Rules, Spot, measured
from patternbook.quilting.route.graph import Graph
from patternbook.quilting.route.lines import Line
from patternbook.quilting.route.pieces import Piece, Place, places
from patternbook.quilting.route.steps import GRID, NEAR, End, Hit, attached, direct, points

ALONG: Final = 0.05  # how far from along a link a stretch upon it may point (the sine)


class Way(NamedTuple):
    """Through a path: from the node where it is entered to the node where it is left."""

    piece: int
    enter: int
    leave: int
    place: Place
    forward: bool


@dataclass(frozen=True)
class Network:
    """The graph, the ways through each path, and the nodes on the finished edge; also the middle
    and the direction of each link, by which a stretch upon it is known."""

    graph: Graph
    ways: tuple[tuple[Way, ...], ...]
    rim: tuple[int, ...]
    middles: STRtree
    heads: NDArray[np.float64]


def network(lines: Sequence[Line], found: Sequence[Piece], many: int, rules: Rules) -> Network:
    """All lines as links, cut where a path begins, ends, or comes upon them."""
    tree = STRtree(np.array([LineString(line.path) for line in lines], dtype=object))
    entries = [places(piece, tree, many, rules.inch) for piece in found]
    ends = [(number, place.spot) for number, those in enumerate(entries) for place in those]
    hits = attached(tree, found, ends, rules)
    graph = Graph()
    joints = _cut(graph, lines, [*(hit for those in hits for hit in those), *_upon(tree, found)])
    nodes = _ends(graph, ends, hits, joints)
    for one, other in direct(found, ends, rules):
        # Where both step to one place on a seam between them, that is the straight way already.
        if {joints[hit] for hit in hits[one]} & {joints[hit] for hit in hits[other]}:
            continue
        graph.link(nodes[one], nodes[other], (ends[one][1], ends[other][1]), "step")
    rim = sorted({n for link in graph.links if link.kind == "edge" for n in (link.one, link.other)})
    node = iter(nodes)
    ways = tuple(
        _joined(graph, _ways(number, piece, those, [next(node) for _ in those]))
        for number, (piece, those) in enumerate(zip(found, entries, strict=True))
    )
    return Network(graph, ways, tuple(rim), *_middles(graph))


def _joined(graph: Graph, ways: tuple[Way, ...]) -> tuple[Way, ...]:
    """Those that begin or end somewhere with a way on, if any do."""
    return tuple(w for w in ways if graph.near[w.enter] or graph.near[w.leave]) or ways


def lost(net: Network) -> set[int]:
    """The paths that no line leads to from the finished edge."""
    reached = net.graph.reach(dict.fromkeys(net.rim, 0.0)).cost
    return {
        ways[0].piece
        for ways in net.ways
        if not any(node in reached for way in ways for node in (way.enter, way.leave))
    }


def _ways(
    number: int, piece: Piece, those: Sequence[Place], nodes: Sequence[int]
) -> tuple[Way, ...]:
    if piece.closed:
        return tuple(
            Way(number, node, node, place, True) for place, node in zip(those, nodes, strict=True)
        )
    forward = Way(number, nodes[0], nodes[1], those[0], True)
    back = Way(number, nodes[1], nodes[0], those[1], False)
    return (forward,) if piece.one_way else (forward, back)


def _upon(tree: STRtree, found: Sequence[Piece]) -> list[Hit]:
    """Where the paths that run up to the rim come upon lines and leave them again."""
    corners = [np.array(piece.path) for piece in found if piece.touches]
    if not corners or not len(tree.geometries):
        return []
    spots = np.unique(np.concatenate(corners).round(6), axis=0)
    there = points(spots.tolist())
    at, line = tree.query(there, predicate="dwithin", distance=GRID)
    along = shapely.line_locate_point(tree.geometries[line], there[at])
    return [
        Hit(int(n), float(a), (float(spots[p, 0]), float(spots[p, 1])))
        for p, n, a in zip(at, line, along, strict=True)
    ]


def _cut(graph: Graph, lines: Sequence[Line], hits: Iterable[Hit]) -> dict[Hit, int]:
    """The lines as links, cut at the hits; which node each hit became."""
    on: dict[int, list[Hit]] = defaultdict(list)
    for hit in hits:
        on[hit.line].append(hit)
    corners: dict[Spot, int] = {}
    joints: dict[Hit, int] = {}

    def corner(spot: Spot) -> int:
        key = round(spot[0], 3), round(spot[1], 3)
        if key not in corners:
            corners[key] = graph.node(spot)
        return corners[key]

    for number, line in enumerate(lines):
        ends = corner(line.path[0]), corner(line.path[-1])
        _cut_one(graph, line, ends, sorted(set(on[number])), joints)
    return joints


def _cut_one(
    graph: Graph, line: Line, ends: tuple[int, int], hits: Sequence[Hit], joints: dict[Hit, int]
) -> None:
    """One line; hits at the same spot, or at an end of it, become one node."""
    whole = measured(line.path)
    nodes, reached = [ends[0]], 0.0
    marks: list[tuple[float, Spot]] = []
    for hit in hits:
        if hit.along >= whole - NEAR:
            joints[hit] = ends[1]
            continue
        if hit.along > reached + NEAR:
            nodes.append(graph.node(hit.spot))
            marks.append((hit.along, hit.spot))
            reached = hit.along
        joints[hit] = nodes[-1]
    nodes.append(ends[1])
    for (one, other), path in zip(pairwise(nodes), split(line.path, marks), strict=True):
        graph.link(one, other, path, line.kind, line.worth)


def _ends(
    graph: Graph, ends: Sequence[End], hits: Sequence[Sequence[Hit]], joints: dict[Hit, int]
) -> list[int]:
    """A node for each end, with steps to its places on lines."""
    nodes = []
    for (_, spot), those in zip(ends, hits, strict=True):
        end = graph.node(spot)
        graph.ends.add(end)
        nodes.append(end)
        for hit in those:
            graph.link(end, joints[hit], (spot, graph.spots[joints[hit]]), "step")
    return nodes


def _middles(graph: Graph) -> tuple[STRtree, NDArray[np.float64]]:
    spots, heads = [], []
    for link in graph.links:
        spot, head = _middle(link.path, link.length)
        # A step is never the same as another line.
        spots.append(shapely.Point() if link.kind == "step" else shapely.Point(spot))
        heads.append(head)
    return STRtree(spots), np.array(heads).reshape(-1, 2)


def _middle(path: Path, long: float) -> tuple[Spot, Spot]:
    left = long / 2
    for one, other in pairwise(path):
        step = math.dist(one, other)
        if step and left <= step:
            head = (other[0] - one[0]) / step, (other[1] - one[1]) / step
            return (one[0] + head[0] * left, one[1] + head[1] * left), head
        left -= step
    return path[-1], (0.0, 0.0)


def upon(net: Network, paths: Sequence[Path]) -> list[dict[int, tuple[int, ...]]]:
    """For each path, by the number of its stretch, the links that the stretch lies upon."""
    found: list[dict[int, tuple[int, ...]]] = [{} for _ in paths]
    if not paths:
        return found
    corners = [np.array(path) for path in paths]
    straight = np.concatenate([np.stack([c[:-1], c[1:]], axis=1) for c in corners])
    owner = np.repeat(np.arange(len(paths)), [len(c) - 1 for c in corners])
    number = np.concatenate([np.arange(len(c) - 1) for c in corners])
    at, link = net.middles.query(shapely.linestrings(straight), predicate="dwithin", distance=NEAR)
    head = straight[at, 1] - straight[at, 0]
    across = np.abs(head[:, 0] * net.heads[link, 1] - head[:, 1] * net.heads[link, 0])
    along = across <= ALONG * np.maximum(np.hypot(*head.T), NEAR)
    for a, n in sorted(zip(at[along].tolist(), link[along].tolist(), strict=True)):
        those = found[int(owner[a])]
        those[int(number[a])] = (*those.get(int(number[a]), ()), n)
    return found
