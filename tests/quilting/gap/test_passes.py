"""How often lines are stitched over: cases by hand, and GEOS's union on random walks."""

import math

import numpy as np
import pytest
import shapely
from shapely import LineString

from patternbook.quilting.passes import once, passes
from patternbook.quilting.records import Path

WAYS = ((1, 0), (0, 1), (-1, 0), (0, -1), (1, 1), (2, 2), (2, 0), (0, -3), (1, 2))


def wave(start: float = 0, end: float = 30) -> Path:
    return tuple((float(x), math.sin(float(x))) for x in np.arange(start, end, 0.2))


@pytest.mark.parametrize(
    ("paths", "expected"),
    [
        ([], {}),
        ([((0, 0),)], {}),
        ([((0, 0), (10, 0))], {1: 10}),
        ([((0, 0), (10, 0)), ((6, 0), (16, 0))], {1: 12, 2: 4}),
        ([((0, 0), (10, 0), (4, 0))], {1: 4, 2: 6}),
        ([((0, 0), (10, 0), (0, 0), (10, 0))], {3: 10}),
        ([((0, 0), (10, 0)), ((5, -5), (5, 5))], {1: 20}),  # across counts once
        ([((0, 0), (10, 0)), ((2, 0), (5, 0), (9, 0))], {1: 3, 2: 7}),  # parted elsewhere
        ([((0, 0), (10, 0)), ((0, 0.01), (10, 0.01))], {1: 20}),  # side by side
        ([((0, 0), (10, 0)), ((0, 1e-5), (10, 1e-5))], {2: 10}),  # the floats' own
        ([((0, 0), (9, 9)), ((6, 6), (3, 3))], {1: 6 * math.sqrt(2), 2: 3 * math.sqrt(2)}),
    ],
)
def test_by_hand(paths: list[Path], expected: dict[int, float]) -> None:
    assert passes(paths) == pytest.approx(expected, abs=1e-4)


def test_a_curve_sewn_twice() -> None:
    length = LineString(wave()).length
    assert passes([wave(), wave()[::-1]]) == pytest.approx({2: length}, abs=1e-6)


def test_a_curve_sewn_twice_in_part() -> None:
    back = wave(0, 10)[::-1]
    length, part = LineString(wave()).length, LineString(back).length
    assert passes([wave(), back]) == pytest.approx({1: length - part, 2: part}, abs=1e-6)


@pytest.mark.parametrize("seed", range(60))
def test_against_the_union_of_geos(seed: int) -> None:
    chance = np.random.default_rng(seed)
    turn = np.exp(1j * chance.random())
    paths: list[Path] = []
    for _ in range(chance.integers(1, 7)):
        spots = [complex(*chance.integers(0, 5, 2))]
        for _ in range(chance.integers(1, 7)):
            spots.append(spots[-1] + complex(*chance.choice(WAYS)))
        turned = [spot * turn for spot in spots]
        paths.append(tuple((round(s.real, 6), round(s.imag, 6)) for s in turned))
    lines = [LineString(path) for path in paths]
    union = shapely.union_all(lines, grid_size=1e-4).length
    assert once(paths) == pytest.approx(union, abs=5e-3)
    whole = sum(number * length for number, length in passes(paths).items())
    assert whole == pytest.approx(sum(line.length for line in lines), abs=1e-6)
