"""The widest open place against two other ways to find it, and against GEOS."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as some
from numpy.typing import NDArray
from scipy.ndimage import distance_transform_edt
from scipy.spatial import Voronoi, cKDTree
from shapely import LineString, Polygon

from patternbook.proof.quilting.open_places import on_grid
from patternbook.quilting.gap import widest
from patternbook.quilting.records import Path

SIDE = 24.0
SQUARE = shapely.box(0, 0, SIDE, SIDE)
RIM: Path = ((0, 0), (SIDE, 0), (SIDE, SIDE), (0, SIDE), (0, 0))


def random_lines(seed: int) -> list[Path]:
    chance = np.random.default_rng(seed)
    return [
        tuple(
            (float(x), float(y))
            for x, y in chance.uniform(0, SIDE, (int(chance.integers(2, 5)), 2))
        )
        for _ in range(int(chance.integers(2, 20)))
    ]


def sampled(lines: list[Path], step: float) -> NDArray[np.float64]:
    return shapely.get_coordinates(shapely.segmentize([LineString(p) for p in lines], step))


def by_voronoi(lines: list[Path], step: float = 0.05) -> tuple[float, float]:
    """Of spots on the lines no farther apart than a step: the true radius lies between
    √(M² − step²/4) and M, M the farthest corner of their cells within the square."""
    spots = np.unique(np.round(sampled([*lines, RIM], step), 9), axis=0)
    corners = Voronoi(spots).vertices
    corners = corners[((corners >= 0) & (corners <= SIDE)).all(1)]
    far = float(cKDTree(spots).query(corners)[0].max())
    return 2 * math.sqrt(max(0, far**2 - step**2 / 4)), 2 * far


def by_raster(lines: list[Path], pixel: float = 0.05) -> float:
    """The farthest pixel from any that is drawn on: off by √2 pixels a radius at most."""
    spots = np.round(sampled([*lines, RIM], pixel / 2) / pixel)
    number = round(SIDE / pixel) + 1
    bare = np.ones((number, number), dtype=bool)
    rows, columns = spots.astype(int).T
    bare[rows, columns] = False
    return 2 * float(distance_transform_edt(bare).max()) * pixel


@pytest.mark.parametrize("seed", range(12))
def test_three_ways_agree(seed: int) -> None:
    lines = random_lines(seed)
    gap = widest(lines, SQUARE, rim=True)
    low, high = by_voronoi(lines)
    assert low <= gap.high + 1e-9
    assert gap.low <= high + 1e-9
    assert by_raster(lines) == pytest.approx(gap.low, abs=2 * math.sqrt(2) * 0.05 + 1e-3)


@pytest.mark.parametrize("rim", [True, False])
@pytest.mark.parametrize("seed", range(12))
def test_the_grid_of_the_proof_agrees(seed: int, rim: bool) -> None:
    lines = random_lines(seed)
    gap = widest(lines, SQUARE, rim=rim)
    found = on_grid([*lines, *([RIM] if rim else [])], SQUARE, 1.0)
    assert found.least <= gap.high + 1e-9
    assert gap.low <= found.most + 1e-9
    assert found.most - found.least < 0.2


@settings(max_examples=60, deadline=None)
@given(some.lists(some.tuples(some.integers(0, 40), some.integers(0, 40)), min_size=4, max_size=9))
def test_against_the_inscribed_circle_of_geos(corners: list[tuple[int, int]]) -> None:
    """The hull of some spots with a bite taken out of it: nothing but its rim."""
    shape = shapely.convex_hull(shapely.multipoints(corners))
    shape = shape.difference(shapely.box(10, 10, 18, 22))
    parts = [part for part in shapely.get_parts(shape) if isinstance(part, Polygon)]
    for part in parts:
        circle = 2 * shapely.maximum_inscribed_circle(part, tolerance=1e-4).length
        gap = widest([], part, rim=True)
        assert gap.low <= circle + 1e-3
        assert circle <= gap.high + 1e-3
