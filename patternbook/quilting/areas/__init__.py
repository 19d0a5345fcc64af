"""The areas that a top falls into for its quilting: every spot of it lies in exactly one."""

from __future__ import annotations

from collections.abc import Sequence

from shapely import Polygon
from shapely.errors import GEOSException

from patternbook.notice import Notice
from patternbook.quilting.areas.asked import as_wished
from patternbook.quilting.areas.borders import bordered
from patternbook.quilting.areas.divide import LARGE, Division, divide
from patternbook.quilting.areas.ground import Open, open_ground
from patternbook.quilting.areas.kinds import ground_kind
from patternbook.quilting.areas.letters import lettered, reading
from patternbook.quilting.areas.meant import ALL_OVER, meant
from patternbook.quilting.areas.measure import area_of, held
from patternbook.quilting.areas.parts import Part
from patternbook.quilting.areas.piecing import regions, unholed
from patternbook.quilting.areas.shapes import apart, joined, less, polygons, snapped
from patternbook.quilting.areas.slivers import without_slivers
from patternbook.quilting.records import Area, Divided, Marked, Top, Wishes

__all__ = ["areas", "meant"]
ROW = 1.0  # in: areas whose middles differ less in height are in one row
WRONG = 1e-3  # square units
Found = tuple[list[Part], tuple[Marked, ...], tuple[str, ...]]


def areas(top: Top, wishes: Wishes) -> tuple[Divided, tuple[Notice, ...]]:
    """The areas of a top, as the author wishes them."""
    parts, marked, failed = _parts(top, wishes)
    found, told = as_wished(_lettered(parts, top), wishes.areas, top)
    notices = [Notice("quilting-area", "warning", "quilting", message) for message in failed]
    return Divided(found, marked), (*notices, *told)


def _parts(top: Top, wishes: Wishes) -> Found:
    """The parts of a top. Where the geometry of a queer shape comes out wrong, the whole top is
    quilted as one."""
    one = [Part("body", top.edge)], (), ()
    all_over = any(wish.area == ALL_OVER and wish.design for wish in wishes.areas)
    if all_over and not any(wish.area.startswith("border") for wish in wishes.areas):
        return one
    try:
        found = _found(top, wishes, all_over=all_over)
    except GEOSException:
        return one
    covered = sum(float(part.shape.area) for part in found[0])
    return found if abs(covered - float(top.edge.area)) < WRONG else one


def _found(top: Top, wishes: Wishes, *, all_over: bool) -> Found:
    borders, inside = bordered(top)
    ground = None if all_over else open_ground(top, inside)
    if ground is None:
        return [*borders, Part("body", inside)], (), ()
    within, marked, failed = _within(inside, ground, top, wishes)
    return without_slivers([*borders, *within], top.rules.inch), marked, failed


def _within(inside: Polygon, ground: Open, top: Top, wishes: Wishes) -> Found:
    """What lies within the borders: open ground, divided where it is large, and the piecing."""
    kinds = [(ground_kind(shape, top.rules.inch), shape) for shape in ground.shapes]
    found = [Part(kind, shape) for kind, shape in kinds if kind != "ground"]
    found += [Part("ground", shape) for shape in ground.whole]
    found += [Part("figure", shape) for shape in ground.figures]
    large = [shape for kind, shape in kinds if kind == "ground"]
    divided, marked, failed = _divided(large, top, wishes)
    left = apart(less(inside, joined(ground.all)))
    pieced = [Part("piecing", shape) for shape in regions(left, top)]
    lying = [p._replace(shape=one) for p in divided for one in polygons(snapped(p.shape))]
    cut = [p._replace(shape=one) for p in (*lying, *pieced) for one in unholed(p.shape)]
    return [*found, *cut], marked, failed


def _divided(grounds: Sequence[Polygon], top: Top, wishes: Wishes) -> Division:
    """Open ground that is no square and no band; where none is large, as it is."""
    if any(shape.interiors or shape.area > LARGE * top.rules.inch**2 for shape in grounds):
        return divide(grounds, top, wishes)
    return tuple(Part("ground", shape) for shape in grounds), (), ()


def _lettered(parts: Sequence[Part], top: Top) -> list[Area]:
    """The areas in the order of their letters and numbers."""
    ordered = reading(parts, ROW * top.rules.inch)
    keys = lettered(ordered, top.rules, {cloth.letter for cloth in top.cloths})
    first: dict[str, int] = {}
    for letter, _ in keys:
        first.setdefault(letter, len(first))
    found = [
        area_of(part, key, within)
        for part, key, within in zip(ordered, keys, held(ordered, top), strict=True)
    ]
    return sorted(found, key=lambda area: (first[area.letter], area.number))
