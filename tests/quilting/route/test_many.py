"""Tops of many fills: all sewn, nothing astray, and never shorter than it can be."""

import random
from itertools import pairwise

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, union_all

from patternbook.quilting.records import Filled, Stage
from patternbook.quilting.route import fill_stages, order
from patternbook.quilting.route import stages as stages_module
from tests.quilting.route.walking import board, filled, ring, square, winding, wrong


def some(across: int, down: int, seed: int, *, share: float = 0.7) -> list[Filled]:
    """Fills in some of the squares of a board, of all kinds."""
    chance = random.Random(seed)  # noqa: S311 - not a secret
    found = []
    for number in range(across * down):
        column, row = number % across, number // across
        if chance.random() >= share:
            continue
        x, y = column * 6.0, row * 6.0
        if chance.random() < 0.4:
            path, foot = ring((x + 3, y + 3), 2.5), "free motion"
        else:
            box = (x + 0.5, y + 0.5, x + 5.5, y + 5.5)
            path, foot = winding(box, chance.randint(2, 7), upright=chance.random() < 0.5), None
        shape = square(column, row)
        found.append(filled(number, shape, path, foot="free motion" if foot else "walking foot"))
    return found


def least(fills: list[Filled], stage: Stage) -> float:
    """No way through the fills is shorter than a tree over the gaps between their paths, without
    the longest of them where a new walk begins."""
    keys = {leg.area for walk in stage.walks for leg in walk.legs if leg.area}
    paths = [LineString(fill.drawn.paths[0]) for fill in fills if fill.area.key in keys]
    gaps = nx.Graph()
    gaps.add_nodes_from(range(len(paths)))
    for one in range(len(paths)):
        for other in range(one):
            gaps.add_edge(one, other, weight=paths[one].distance(paths[other]))
    tree = sorted(far for *_, far in nx.minimum_spanning_tree(gaps).edges(data="weight"))
    return float(sum(tree[: len(tree) - len(stage.walks) + 1]))


@given(st.integers(1, 6), st.integers(1, 6), st.integers(0, 10_000))
@settings(max_examples=40, deadline=None)
def test_all_sewn_and_none_shorter_than_can_be(across: int, down: int, seed: int) -> None:
    top, fills = board(across, down), some(across, down, seed)
    stages = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, stages)
    assert all(stage.extra >= least(fills, stage) - 1e-6 for stage in stages)
    assert all(len(stage.walks) == 1 for stage in stages)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_large_top(seed: int) -> None:
    """About 170 fills, in two stages of one walk each; from one to the next on average no farther
    than over one square and a half."""
    top, fills = board(15, 16), some(15, 16, seed)
    stages = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, stages)
    assert [len(stage.walks) for stage in stages] == [1, 1]
    assert sum(stage.extra for stage in stages) <= 9.0 * len(fills)


def test_row_by_row_from_the_top_left() -> None:
    """Circles in all squares: the first in the corner, and along the rows there and back."""
    top = board(6, 6)
    fills = [
        filled(n, square(n % 6, n // 6), ring((n % 6 * 6 + 3, n // 6 * 6 + 3), 2.5))
        for n in range(36)
    ]
    (stage,) = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, [stage])
    numbers = [int(leg.area[2:]) for walk in stage.walks for leg in walk.legs if leg.area]
    assert numbers[0] == 0
    apart = [abs(a % 6 - b % 6) + abs(a // 6 - b // 6) for a, b in pairwise(numbers)]
    assert sum(apart) <= 1.5 * 35


@pytest.mark.parametrize("seed", range(6))
def test_row_by_row_is_hardly_longer_than_the_least(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A dozen fills, at the least cost there is, and the way larger numbers are ordered."""
    top = board(5, 5)
    foot = "walking foot" if seed % 2 else "free motion"
    fills = [fill for fill in some(5, 5, seed, share=0.9) if fill.foot == foot][:12]
    (exact,) = fill_stages(top, (), None, fills)
    monkeypatch.setattr(order, "EXACT", 0)
    (quick,) = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, [quick])
    assert quick.extra <= 1.1 * exact.extra


@pytest.mark.parametrize("seed", range(4))
def test_another_way_round_is_taken_where_it_retraces_less(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    top, fills = board(6, 6), some(6, 6, seed)
    monkeypatch.setattr(stages_module, "RETRACED", 1.0)
    usual = fill_stages(top, (), None, fills)
    monkeypatch.setattr(stages_module, "RETRACED", 0.0)
    other = fill_stages(top, (), None, fills)
    assert not wrong(top, (), None, fills, other)
    assert retraced(other) <= retraced(usual) + 1e-6


def retraced(stages: tuple[Stage, ...]) -> float:
    paths = [leg.path for stage in stages for walk in stage.walks for leg in walk.legs]
    lines = [LineString(path) for path in paths]
    return 1 - union_all(lines).length / sum(line.length for line in lines)
