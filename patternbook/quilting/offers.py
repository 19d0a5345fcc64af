"""Which ways the first stage is offered besides its lines: the finished edge, and where lines end
inside of the top, the seams that lead from there to the next line or to the edge."""

from __future__ import annotations

import heapq
from collections.abc import Collection, Iterable

from patternbook.quilting.net import Net
from patternbook.quilting.strands import Union


def offered(net: Net) -> set[int]:
    """The edges of the net that the first stage may use. Seams are offered where lines end inside
    of the top, or do not come to its edge: the shortest way from each such place to every place
    of that kind and to the edge, none of which leads past another one."""
    found = {e for e, kind in enumerate(net.kinds) if net.needed[e] or kind == "edge"}
    rim = {node for e in found if net.kinds[e] == "edge" for node in _ends(net, e)}
    groups = _groups(net)
    inner = {node for node in _inner_ends(net) if node not in rim}
    lost = [group for group in groups if not rim.intersection(group)]
    stops = rim | inner | {node for group in lost for node in group}
    for node in sorted(inner):
        found |= _ways(net, [node], stops - {node})
    if lost:
        found |= _ways(net, sorted(rim), {node for group in lost for node in group})
        for group in lost:
            others = {node for other in groups if other is not group for node in other}
            found |= _ways(net, group, others - set(group))
    return found


def _ends(net: Net, edge: int) -> tuple[int, int]:
    return net.tails[edge], net.heads[edge]


def _inner_ends(net: Net) -> list[int]:
    """Where an odd number of lines meets."""
    return [n for n, at in enumerate(net.at) if sum(net.needed[edge] for edge in at) % 2]


def _groups(net: Net) -> list[list[int]]:
    """The nodes of lines that hang together."""
    root = Union(len(net.spots))
    lines = {node for e, need in enumerate(net.needed) if need for node in _ends(net, e)}
    for edge, need in enumerate(net.needed):
        if need:
            root.join(*_ends(net, edge))
    return [group for group in root.groups() if group[0] in lines]


def _ways(net: Net, sources: Iterable[int], stops: Collection[int]) -> set[int]:
    """The edges on the shortest ways from the nearest source to each stop that can be come to
    without passing another."""
    best = dict.fromkeys(sources, 0.0)
    came: dict[int, int] = {}
    queue = [(0.0, node) for node in best]
    reached: list[int] = []
    while queue:
        far, node = heapq.heappop(queue)
        if far > best[node]:
            continue
        if node in stops:
            reached.append(node)
            continue
        for edge in net.at[node]:
            there = net.other(edge, node)
            total = far + net.lengths[edge]
            if total < best.get(there, float("inf")) - 1e-9:
                best[there], came[there] = total, edge
                heapq.heappush(queue, (total, there))
    found: set[int] = set()
    for stop in reached:
        here = stop
        while here in came and came[here] not in found:
            found.add(came[here])
            here = net.other(came[here], here)
    return found
