"""The least of the programme against counting every plan out, and against pairing."""

import itertools
import math
import random

import networkx as nx
import pytest

from patternbook.quilting.anchor import anchor_lines
from patternbook.quilting.least import PRICE, least
from patternbook.quilting.net import Net
from patternbook.quilting.offers import offered
from patternbook.quilting.records import Divided
from patternbook.quilting.strands import Strand, Strands, strands
from tests.quilting.anchor.walked import laid_demo, squares


def grid(across: int, down: int, seed: int, share: float) -> Strands:
    """A small grid of which a share must be stitched; walks start on its left and top sides."""
    chance = random.Random(seed)  # noqa: S311 - no secret
    spots = list(itertools.product(range(across), range(down)))
    number = {spot: n for n, spot in enumerate(spots)}
    found = [
        Strand(n, number[x + dx, y + dy], (), chance.choice((3.0, 5.0, 8.5)), needed)
        for (x, y), n in number.items()
        for dx, dy in ((1, 0), (0, 1))
        if (x + dx, y + dy) in number
        for needed in [chance.random() < share]
    ]
    starts = tuple(n for (x, y), n in number.items() if x == 0 or y == 0)
    return Strands(tuple(found), tuple(range(len(spots))), starts)


def counted_out(net: Strands) -> float:
    """The least of extra stitching and starts, over all that may be stitched again or besides."""
    best = math.inf
    for copies in itertools.product(*(range(2 if s.needed else 3) for s in net.strands)):
        extra = sum(n * s.length for n, s in zip(copies, net.strands, strict=True))
        if extra < best:
            walks = _walks(net, copies)
            if walks is not None:
                best = min(best, extra + PRICE * walks)
    return best


def _walks(net: Strands, copies: tuple[int, ...]) -> int | None:
    """How many walks it takes; None where they cannot start and stop where they may."""
    graph = nx.MultiGraph()
    for n, strand in zip(copies, net.strands, strict=True):
        for _ in range(n + strand.needed):
            graph.add_edge(strand.one, strand.other)
    needed = {s.one for s in net.strands if s.needed}
    total = 0
    for group in nx.connected_components(graph):
        if not needed & group:
            return None  # stitched for nothing, so never the least
        odd = {node for node in group if graph.degree(node) % 2}
        if not odd <= set(net.starts) or not group & set(net.starts):
            return None
        total += max(1, len(odd) // 2)
    return total


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize(("across", "down"), [(2, 3), (3, 2)])
def test_nothing_counted_out_is_less(across: int, down: int, seed: int) -> None:
    net = grid(across, down, seed, 0.55)
    found = least(net, 1.0)
    assert found.proven
    assert found.extra + PRICE * len(found.ends) / 2 == pytest.approx(counted_out(net))


@pytest.mark.parametrize("seed", range(6))
def test_in_lines_that_do_not_hang_together_nothing_counted_out_is_less(seed: int) -> None:
    net = grid(2, 4, seed, 0.35)
    found = least(net, 1.0)
    assert found.extra + PRICE * len(found.ends) / 2 == pytest.approx(counted_out(net))


def test_a_start_is_worth_its_price() -> None:
    # Two lines whose near ends are so far apart: with one walk that is stitched, with two it is
    # not.
    for far, extra, walks in ((89.0, 89.0, 1), (91.0, 0.0, 2)):
        ways = (
            Strand(0, 1, (), 10.0, needed=True),
            Strand(2, 3, (), 10.0, needed=True),
            Strand(1, 3, (), far, needed=False),
        )
        found = least(Strands(ways, (0, 1, 2, 3), (0, 1, 2, 3)), 1.0)
        assert (found.extra, len(found.ends) // 2, found.proven) == (extra, walks, True)


def paired(net: Strands) -> float:
    """The least for one walk over lines that hang together, by pairing their odd ends on shortest
    ways: for every choice of the two places where it starts and stops."""
    graph = nx.Graph()
    odd: set[int] = set()
    for strand in net.strands:
        known = graph.get_edge_data(strand.one, strand.other, {"weight": math.inf})["weight"]
        graph.add_edge(strand.one, strand.other, weight=min(known, strand.length))
        if strand.needed:
            odd ^= {strand.one}
            odd ^= {strand.other}
    far = dict(nx.all_pairs_dijkstra_path_length(graph))
    on_lines = {place for s in net.strands if s.needed for place in (s.one, s.other)}
    return min(
        _pairing(far, sorted(odd ^ {one} ^ {other}))
        for one, other in itertools.combinations_with_replacement(net.starts, 2)
        if one != other or one in on_lines  # a closed walk has to come to its start
    )


def _pairing(far: dict[int, dict[int, float]], odd: list[int]) -> float:
    pairs = nx.Graph()
    for one, other in itertools.combinations(odd, 2):
        pairs.add_edge(one, other, weight=far[one][other])
    return sum(far[a][b] for a, b in nx.min_weight_matching(pairs))


@pytest.mark.parametrize("size", ["lap", "throw"])
def test_a_lattice_within_a_border_is_the_least_by_pairing_too(size: str) -> None:
    laid = laid_demo("tea-at-four", size)
    net = Net.of(laid, anchor_lines(laid, Divided((), ())))
    ways = strands(net, offered(net))
    assert least(ways, 1.0).extra == pytest.approx(paired(ways))


@pytest.mark.parametrize(("across", "down"), [(3, 3), (4, 3), (4, 4), (5, 4), (6, 5)])
def test_going_straight_on_costs_no_more_than_one_way_between_lines(across: int, down: int) -> None:
    """Against the least where a walk may turn at every crossing too, by pairing: the lines hang
    together there, and only their ends on the edge are odd."""
    laid = squares(across, down)
    net = Net.of(laid, anchor_lines(laid, Divided((), ())))
    free = Strands(
        tuple(
            Strand(net.tails[e], net.heads[e], (), net.lengths[e], net.needed[e])
            for e in range(len(net.paths))
        ),
        tuple(range(len(net.spots))),
        tuple(sorted({net.tails[e] for e, kind in enumerate(net.kinds) if kind == "edge"})),
    )
    straight = least(strands(net, offered(net)), 1.0).extra
    assert paired(free) <= straight + 1e-6
    assert straight <= paired(free) + 6.0 + 1e-6
