"""Every design in every shape: inside, in one path, the same again, and nowhere too open."""

import itertools
import re
import sys
from functools import cache

import pytest
import shapely
from shapely import Point, box

from patternbook.quilting.designs import DESIGNS, by_name
from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.records import AreaKind, Drawn
from patternbook.quilting.top import RULES
from tests.quilting.designs.spaces import HARD, INCH, SHAPES, grid, space, widest_gap

# How wide the widest open spot is at most, in spacings: as the designs say of themselves.
WIDEST = {
    "straight lines": 1.3,
    "wavy lines": 1.6,
    "diagonal lines": 1.1,
    "slanted lines": 1.1,
    "border lines": 1.3,
    "frames going inward": 1.5,
    "cross-hatch": 1.1,
    "echoed zigzag": 1.8,
    "echoes": 2.5,
    "meander": 2.2,
    "echoed swirls": 2.8,
    "starbursts": 1.4,
    "pebbles": 1.3,
}
FREELY = [design for design in DESIGNS if design.name not in ("diagonal lines", "slanted lines")]
PAIRS = list(itertools.product(FREELY, SHAPES))
ALWAYS = ("straight lines", "wavy lines", "meander", "echoes")
OVER_ALL = ["straight lines", "wavy lines", "diagonal lines", "slanted lines"]
DOTS = 0.2


def kind_for(design: Design) -> AreaKind:
    return next(kind for kind in design.kinds if kind not in ("body", "figure"))


@cache
def filled(name: str, shape: str) -> tuple[Room, Drawn | None]:
    design = by_name[name]
    room = space(SHAPES[shape], kind_for(design))
    return room, design.draw(room, 1.0, 5) if design.suits(room) else None


@pytest.mark.parametrize(("design", "shape"), PAIRS, ids=[f"{d.name}-{n}" for d, n in PAIRS])
def test_a_design_fills_a_shape(design: Design, shape: str) -> None:
    room, found = filled(design.name, shape)
    if found is None:
        assert not design.suits(room) or design.name not in ALWAYS
        return
    (path,) = found.paths
    assert found.closed == (path[0] == path[-1])
    held = room.shape if found.touches else room.free
    assert held.buffer(1e-5).covers(shapely.LineString(path))
    near = found.spacing * (1 if found.closed else 0.7)
    ends = [Point(path[0]), Point(path[-1])]
    assert max(held.boundary.distance(end) for end in ends) <= near
    gap = widest_gap(room.shape, found.paths, DOTS)
    assert gap <= WIDEST[design.name] * found.spacing


def test_few_pairs_come_to_nothing() -> None:
    """Where a design says that it suits a shape, it nearly always comes out."""
    pairs = [filled(design.name, shape) for design, shape in PAIRS]
    suited = [found for (d, _), (room, found) in zip(PAIRS, pairs, strict=True) if d.suits(room)]
    assert len(suited) > 150
    assert suited.count(None) <= 0.1 * len(suited)


@pytest.mark.parametrize("design", FREELY, ids=lambda design: design.name)
def test_the_same_seed_draws_the_same_lines(design: Design) -> None:
    for shape in ("narrow strip", "L", "hexagon"):
        room, found = filled(design.name, shape)
        again = design.draw(room, 1.0, 5) if design.suits(room) else None
        assert again == found


@pytest.mark.parametrize("design", DESIGNS, ids=lambda design: design.name)
def test_a_design_says_how_much_it_leaves_open(design: Design) -> None:
    says = sys.modules[design.draw.__module__].__doc__ or ""
    told = re.search(r"wider\s+than\s+([0-9.]+)\s+times", says)
    assert told is not None
    assert float(told[1]) == WIDEST[design.name]


@pytest.mark.parametrize("name", HARD)
def test_hard_shapes_are_filled_inside_or_not_at_all(name: str) -> None:
    for design in DESIGNS:
        for spacing in (0.5, 2.0):
            room = space(HARD[name], kind_for(design))
            found = design.draw(room, spacing, 1)
            for path in found.paths if found else ():
                assert room.shape.buffer(1e-5).covers(shapely.LineString(path))


@pytest.mark.parametrize("design", DESIGNS, ids=lambda design: design.name)
def test_an_empty_room_gets_nothing(design: Design) -> None:
    room = space(box(0, 0, 0.01, 0.01), kind_for(design))
    assert room.free.is_empty
    found = design.draw(room, 1.0, 1)
    assert found is None


@pytest.mark.parametrize(
    "name", ["straight lines", "wavy lines", "diagonal lines", "slanted lines"]
)
def test_a_busy_top_is_sewn_in_two_paths_from_edge_to_edge(name: str) -> None:
    top = box(0, 0, 48, 60)
    room = space(top, "body", edge=top, corners=grid(16, 20, 3))
    found = by_name[name].draw(room, 2.0, 3)
    assert found is not None
    assert len(found.paths) == 2
    assert found.touches
    assert all(top.buffer(1e-6).covers(shapely.LineString(path)) for path in found.paths)
    assert widest_gap(top, found.paths, 0.25) <= WIDEST[name] * found.spacing
    for end in (spot for path in found.paths for spot in (path[0], path[-1])):
        assert top.boundary.distance(Point(end)) < 1e-6


@pytest.mark.parametrize("design", FREELY, ids=lambda design: design.name)
def test_centimetres_are_drawn_as_inches_are(design: Design) -> None:
    """A strip of 51 × 10 cm: margins of the metric house, spacings on quarters."""
    room = space(box(0, 0, 51, 10), kind_for(design), rules=RULES["cm"])
    found = design.draw(room, 2.5, 2)
    assert found is not None
    assert found.spacing % 0.25 == 0
    held = room.shape if found.touches else room.free
    assert held.buffer(1e-5).covers(shapely.LineString(found.paths[0]))


@pytest.mark.parametrize("design", DESIGNS, ids=lambda design: design.name)
def test_a_design_says_how_it_is_sewn(design: Design) -> None:
    assert design.foot in design.sewn
    for words in (*design.sewn.values(), design.corner):
        assert words.endswith(".")
        assert 1 <= words.count(". ") + 1 <= 2
        assert len(words) <= 220
    assert "ruler foot" in design.sewn.get("ruler", "ruler foot")  # no other takes a thick ruler
    paths = design.element()
    assert paths
    for path in paths:
        line = shapely.LineString(path)
        assert line.length / INCH.inch >= 1
        low_x, low_y, high_x, high_y = line.bounds
        assert max(high_x - low_x, high_y - low_y) <= 8


def test_each_design_has_its_own_name() -> None:
    assert len(by_name) == len(DESIGNS) == len(WIDEST)
    assert set(by_name) == set(WIDEST)
