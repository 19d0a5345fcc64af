"""The widest open place against figures that geometry gives. The inradius of a triangle is its
area over half its perimeter (Euclid, Elements IV.4); all others follow from right triangles."""

import math

import numpy as np
import pytest
import shapely
from shapely import LineString, Polygon, affinity

from patternbook.quilting.gap import quick, widest
from patternbook.quilting.records import Path

SQUARE = shapely.box(0, 0, 24, 24)
TRIANGLE = Polygon([(10, 10), (13, 10), (10, 14)])
ELL = Polygon([(0, 0), (10, 0), (10, 4), (4, 4), (4, 10), (0, 10)])
ROOT2 = math.sqrt(2)


def across(apart: float, start: float = 0, end: float = 24) -> list[Path]:
    return [((start, y), (end, y)) for y in np.arange(0, 24 + 1e-9, apart)]


def down(apart: float) -> list[Path]:
    return [((x, 0), (x, 24)) for x in np.arange(0, 24 + 1e-9, apart)]


def spots(line: shapely.Geometry) -> Path:
    return tuple((float(x), float(y)) for x, y in shapely.get_coordinates(line))


def dot(x: float, y: float) -> Path:
    return (x - 5e-7, y), (x + 5e-7, y)


def slanting(apart: float) -> list[Path]:
    turned = affinity.rotate(
        shapely.multilinestrings(
            [((-20, 12 + k * apart), (44, 12 + k * apart)) for k in range(-12, 13)]
        ),
        45,
        (12, 12),
    )
    return [spots(line) for line in turned.geoms]


def regular(corners: int, radius: float) -> Polygon:
    angles = np.arange(corners) * math.tau / corners
    return Polygon(np.stack([12 + radius * np.cos(angles), 12 + radius * np.sin(angles)], -1))


RING: Path = spots(regular(720, 5))
FRAME = Polygon(SQUARE.exterior.coords, [shapely.box(8, 8, 16, 16).exterior.coords[::-1]])


@pytest.mark.parametrize(
    ("lines", "shape", "rim", "answer"),
    [
        pytest.param(across(2), SQUARE, True, 2, id="lines 2 apart"),
        pytest.param(across(4), SQUARE, True, 4, id="lines 4 apart"),
        pytest.param(across(0.75), SQUARE, True, 0.75, id="lines 3/4 apart"),
        pytest.param(across(2), SQUARE, False, 2, id="lines 2 apart, the last two on the edge"),
        pytest.param(across(3) + down(3), SQUARE, True, 3, id="squares of 3"),
        pytest.param(across(2) + down(6), SQUARE, True, 2, id="2 by 6"),
        pytest.param(
            [((0, 3), (20, 3))], shapely.box(0, 0, 20, 6), True, 3, id="one line, 6 by 20"
        ),
        pytest.param(
            [((0, 2), (20, 2))], shapely.box(0, 0, 20, 6), True, 4, id="not in the middle"
        ),
        pytest.param(slanting(2), SQUARE, True, 2, id="slanting lines, 2 from each other"),
        pytest.param([], SQUARE, True, 24, id="nothing but the edge"),
        pytest.param([dot(12, 12)], SQUARE, False, 24 * ROOT2, id="one dot"),
        pytest.param(
            [dot(x, y) for x in range(0, 25, 4) for y in range(0, 25, 4)],
            SQUARE,
            False,
            4 * ROOT2,
            id="dots 4 apart",
        ),
        pytest.param(
            across(1, 3, 21), SQUARE, False, 2 * math.hypot(3, 0.5), id="lines stop 3 short"
        ),
        pytest.param([], regular(6, 6), True, 6 * math.sqrt(3), id="hexagon of side 6"),
        pytest.param([dot(12, 12)], regular(6, 6), False, 12, id="hexagon, its middle sewn"),
        pytest.param([], TRIANGLE, True, 2, id="3-4-5 triangle"),
        pytest.param([], ELL, True, 8 * ROOT2 / (1 + ROOT2), id="an L, 4 wide"),
        pytest.param(
            [RING],
            SQUARE,
            True,
            max(10 * math.cos(math.pi / 720), 2 * (12 * ROOT2 - 5) / (1 + ROOT2)),
            id="a circle in a square",
        ),
        pytest.param([], FRAME, True, 16 * ROOT2 / (1 + ROOT2), id="a frame 8 wide, at its corner"),
    ],
)
def test_known(lines: list[Path], shape: Polygon, rim: bool, answer: float) -> None:
    gap = widest(lines, shape, rim=rim)
    assert gap.low - 1e-6 <= answer <= gap.high + 1e-5
    assert gap.high - gap.low <= 1e-3 + 1e-9
    if rim:
        assert answer - 1e-6 <= quick(lines, shape) <= answer + 0.02


def test_the_place_is_open_that_far() -> None:
    lines = across(2)[:4] + across(2)[5:]  # that at 8 is left out
    gap = widest(lines, SQUARE, rim=True)
    spot = shapely.Point(gap.at)
    near = min(LineString(path).distance(spot) for path in lines)
    assert gap.low == pytest.approx(4)
    assert 2 * near == pytest.approx(gap.low)
    assert gap.at[1] == pytest.approx(8)


def test_a_line_moved_by_half() -> None:
    """Lines 4 apart, one moved by 1/2: 4 1/2 on its one side."""
    lines = across(4)
    lines[3] = ((0, 12.5), (24, 12.5))
    assert widest(lines, SQUARE, rim=True).high == pytest.approx(4.5, abs=1e-3)


@pytest.mark.parametrize("left_out", range(1, 12))
def test_each_line_left_out(left_out: int) -> None:
    lines = across(2)
    del lines[left_out]
    assert widest(lines, SQUARE, rim=True).low == pytest.approx(4, abs=1e-3)


def test_a_budget_used_up_leaves_an_honest_span() -> None:
    waves = [tuple((x, y + math.sin(x)) for x in np.arange(0, 24, 0.2)) for y in range(25)]
    short = widest(waves, SQUARE, rim=True, budget=5_000)
    long = widest(waves, SQUARE, rim=True)
    assert short.high - short.low > 0.01
    assert short.low <= long.low + 1e-9
    assert long.high <= short.high + 1e-9


def test_no_stitch_at_all() -> None:
    assert widest([], SQUARE, rim=False).low == math.inf
    assert widest([()], SQUARE, rim=False).high == math.inf


def test_shapes_that_hold_nothing() -> None:
    assert widest([], Polygon(), rim=True)[:2] == (0, 0)
    sliver = Polygon([(0, 0), (10, 0), (10, 1e-7), (0, 1e-7)])
    gap = widest([], sliver, rim=True)
    assert gap.high < 2e-3
    assert all(math.isfinite(one) for one in gap.at)


def test_a_shape_that_touches_itself() -> None:
    """Two squares of 4 that meet in a corner, as one ring."""
    bow = Polygon([(0, 0), (4, 0), (4, 8), (8, 8), (8, 4), (0, 4)])
    assert widest([], bow, rim=True).low == pytest.approx(4, abs=2e-3)


def test_centimetres_are_no_other_shape() -> None:
    inches = widest(across(3), SQUARE, rim=True)
    metric = [tuple((x * 2.54, y * 2.54) for x, y in path) for path in across(3)]
    found = widest(metric, shapely.box(0, 0, 24 * 2.54, 24 * 2.54), rim=True)
    assert found.low == pytest.approx(inches.low * 2.54, abs=2e-3)
