"""Every spot of every top lies in exactly one area, and no area is a sliver or a ring."""

from collections.abc import Iterator
from itertools import pairwise

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon
from shapely.affinity import rotate

from patternbook.quilting.areas import areas
from patternbook.quilting.records import Divided, Top
from tests.quilting.areas.laid import PATTERNS, box, demo, laid, wished


def wrong(top: Top, found: Divided) -> float:
    """How much of the top lies in no area or in two, in square units."""
    shapes = [area.shape for area in found.areas]
    whole = shapely.union_all(shapes, grid_size=1e-7)
    twice = sum(shape.area for shape in shapes) - whole.area
    return float(abs(twice) + whole.symmetric_difference(top.edge).area)


def is_sound(shape: Polygon) -> bool:
    return bool(shape.is_valid) and not shape.interiors


def figures(found: Divided) -> list[Polygon]:
    return [area.shape for area in found.areas if area.kind == "figure"]


@pytest.mark.parametrize("slug", PATTERNS)
def test_the_areas_of_every_demo_cover_it_and_do_not_overlap(slug: str) -> None:
    for top in demo(slug).values():
        found, told = areas(top, wished())
        assert told == ()
        assert wrong(top, found) < 1e-3
        around = [area for area in found.areas if area.shape.interiors]
        assert all(is_sound(area.shape) for area in found.areas if area not in around)
        assert sum(len(area.shape.interiors) for area in around) == len(figures(found))
        assert len({area.letter for area in found.areas}) <= 12
        narrow = 0.7 * top.rules.inch
        assert not any(area.shape.buffer(-narrow).is_empty for area in found.areas)


@pytest.mark.parametrize("slug", ["late-returns", "pear-thief", "wash-house-tiles"])
def test_the_same_top_gives_the_same_areas(slug: str) -> None:
    for top in demo(slug).values():
        one, other = (areas(top, wished(seed=5))[0] for _ in range(2))
        assert one == other
        assert [a.shape.wkb for a in one.areas] == [a.shape.wkb for a in other.areas]


CUTS = st.lists(st.integers(2, 30), min_size=1, max_size=5)


def rows(heights: list[int], widths: list[list[int]]) -> Iterator[Polygon]:
    """Rows of any heights, each cut anywhere."""
    across = max(sum(row) for row in widths)
    downs = [0, *(sum(heights[: n + 1]) for n in range(len(heights)))]
    for number, (up, down) in enumerate(pairwise(downs)):
        row = widths[number % len(widths)]
        cuts = [0, *(sum(row[: n + 1]) for n in range(len(row) - 1)), across]
        for left, right in pairwise(cuts):
            yield box(left, up, right - left, down - up)


def halves(patch: Polygon, way: str) -> list[Polygon]:
    """The patch, or the two triangles of it."""
    one, two, three, four = patch.exterior.coords[:4]
    cut = {
        "whole": [patch],
        "down": [Polygon([one, two, three]), Polygon([one, three, four])],
        "up": [Polygon([one, two, four]), Polygon([two, three, four])],
    }
    return cut[way]


@settings(max_examples=60)
@given(CUTS, st.lists(CUTS, min_size=1, max_size=4), st.data())
def test_any_rows_of_rectangles_are_covered(
    heights: list[int], widths: list[list[int]], data: st.DataObject
) -> None:
    letters = st.sampled_from("ABC")
    patches = [(data.draw(letters), patch) for patch in rows(heights, widths)]
    top = laid(patches, plain="AB")
    found, told = areas(top, wished())
    assert told == ()
    assert wrong(top, found) < 1e-3
    assert all(is_sound(area.shape) for area in found.areas)


@settings(max_examples=60)
@given(CUTS, st.lists(CUTS, min_size=1, max_size=3), st.sampled_from([0, 30, 45]), st.data())
def test_and_so_are_triangles_and_tops_on_point(
    heights: list[int], widths: list[list[int]], turned: int, data: st.DataObject
) -> None:
    ways, letters = st.sampled_from(["whole", "down", "up"]), st.sampled_from("ABC")
    patches = [
        (data.draw(letters), rotate(part, turned, origin=(0, 0)))
        for patch in rows(heights, widths)
        for part in halves(patch, data.draw(ways))
    ]
    top = laid(patches, plain="AB")
    found, _ = areas(top, wished())
    assert wrong(top, found) < 1e-3
    assert all(is_sound(area.shape) for area in found.areas)
