"""Borders: one area a side, as it is sewn on; narrow borders go with a neighbour."""

import pytest
import shapely

from tests.quilting.areas.laid import at, box, counted, demo, divided, laid, tops
from tests.support import WritePattern

BORDERED = """
    pattern: Bordered
    sizes: {{crib: {{finished: {finished}}}}}
    fabrics: {{one: {{use: rails}}, two: {{use: rails}}, edge: {{use: borders}}}}
    pieces:
      A: {{fabric: one, cut: 3 1/2 x 12 1/2}}
      B: {{fabric: two, cut: 3 1/2 x 12 1/2}}
      N: {{fabric: edge, cut: 1 1/2 x WOF}}
      W: {{fabric: edge, cut: 4 1/2 x WOF}}
    top:
      rows: [A B A B]
      borders:
{borders}
"""


def bordered(finished: str, *strips: str) -> str:
    lines = "\n".join(f"        - {{strip: {strip}}}" for strip in strips)
    return BORDERED.format(finished=finished, borders=lines)


def test_each_side_of_a_border_is_an_area(pattern: WritePattern) -> None:
    """12 square with a border of 4: two sides of 12 × 4, then two of 20 × 4 over the corners."""
    found = divided(tops(pattern(bordered("20 x 20", "W")))["crib"])
    assert counted(found) == {"border": 4, "body": 1}
    assert {area.letter for area in found.areas if area.kind == "border"} == {"P"}
    assert at(found, 1, 1).shape.bounds == pytest.approx((0, 0, 20, 4))
    assert at(found, 1, 10).shape.bounds == pytest.approx((0, 4, 4, 16))
    assert at(found, 10, 10).shape.bounds == pytest.approx((4, 4, 16, 16))
    assert at(found, 1, 10).borders == (1,)


def test_a_narrow_border_is_quilted_with_the_next_one(pattern: WritePattern) -> None:
    """A border of 1 inside one of 4: sides of 5, each a plain rectangle."""
    found = divided(tops(pattern(bordered("22 x 22", "N", "W")))["crib"])
    assert counted(found) == {"border": 4, "body": 1}
    assert at(found, 1, 1).shape.bounds == pytest.approx((0, 0, 22, 5))
    assert at(found, 1, 10).borders == (1, 2)


def test_a_narrow_border_at_the_edge_goes_with_the_one_before_it(pattern: WritePattern) -> None:
    found = divided(tops(pattern(bordered("22 x 22", "W", "N")))["crib"])
    assert at(found, 0.5, 10).shape.bounds == pytest.approx((0, 5, 5, 17))


def test_a_narrow_border_alone_is_part_of_the_body(pattern: WritePattern) -> None:
    found = divided(tops(pattern(bordered("14 x 14", "N")))["crib"])
    assert counted(found) == {"body": 1}
    assert found.areas[0].shape.bounds == pytest.approx((0, 0, 14, 14))


def test_borders_of_squares_and_of_strips_are_told_apart() -> None:
    """Three borders of 3, 6 and 10 around a picture: twelve sides, a letter for each border."""
    found = divided(demo("one-good-picture")["twin"])
    sides = [area for area in found.areas if area.kind == "border"]
    assert sorted(area.borders for area in sides) == [(1,)] * 4 + [(2,)] * 4 + [(3,)] * 4
    assert len({area.letter for area in sides}) == 3


def test_a_border_around_a_top_that_is_no_rectangle_is_no_ring() -> None:
    """An L of strips with a border of 3 all around it, cut anyhow: no area has a hole."""
    inner = shapely.union_all([box(0, 0, 10, 20), box(10, 10, 10, 10)])
    outer = inner.buffer(3, join_style="mitre")
    edge = outer.difference(inner)
    halves = [shapely.intersection(edge, half) for half in (box(-3, -3, 8, 26), box(5, -3, 18, 26))]
    parts = [part for half in halves for part in shapely.get_parts(half)]
    strips = [box(0, 2 * n, 10, 2) for n in range(10)] + [box(10, 10, 10, 10)]
    found = divided(laid([*(("B", p) for p in parts), *(("S", s) for s in strips)], border="B"))
    assert not any(area.shape.interiors for area in found.areas)
    assert {area.kind for area in found.areas} == {"border", "body"}
    assert sum(area.shape.area for area in found.areas) == pytest.approx(outer.area)
