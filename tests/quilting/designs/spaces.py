"""Shapes to draw designs in, and what a sheet of paper and a ruler would tell of the drawing."""

import math
from collections.abc import Sequence
from typing import Final

import numpy as np
import shapely
from shapely import Polygon, box

from patternbook.quilting.designs.form import Room
from patternbook.quilting.records import AreaKind, Path, Rules, Spot
from patternbook.quilting.top import RULES

INCH: Final = RULES["in"]


def ringed(outside: Polygon, *holes: Polygon) -> Polygon:
    return Polygon(outside.exterior, [hole.exterior for hole in holes])


def regular(sides: int, radius: float, at: float) -> Polygon:
    turns = [math.tau * k / sides for k in range(sides)]
    return Polygon([(at + radius * math.cos(t), at + radius * math.sin(t)) for t in turns])


def joined(*parts: Polygon) -> Polygon:
    whole = shapely.union_all(parts)
    assert isinstance(whole, Polygon)
    return whole


SHAPES: Final[dict[str, Polygon]] = {
    "square": box(0, 0, 12, 12),
    "small square": box(0, 0, 6, 6),
    "rectangle": box(0, 0, 20, 13),
    "strip": box(0, 0, 30, 5),
    "tall strip": box(0, 0, 6, 20),
    "narrow strip": box(0, 0, 24, 3),
    "L": Polygon([(0, 0), (18, 0), (18, 7), (7, 7), (7, 14), (0, 14)]),
    "U": Polygon([(0, 0), (20, 0), (20, 14), (14, 14), (14, 6), (6, 6), (6, 14), (0, 14)]),
    "T": Polygon([(0, 0), (20, 0), (20, 6), (13, 6), (13, 16), (7, 16), (7, 6), (0, 6)]),
    "Z": Polygon([(0, 0), (11, 0), (11, 5), (17, 5), (17, 13), (6, 13), (6, 8), (0, 8)]),
    "hexagon": regular(6, 8, 9),
    "octagon": regular(8, 7, 8),
    "triangle": Polygon([(0, 0), (18, 0), (9, 14)]),
    "setting triangle": Polygon([(0, 0), (17, 0), (8.5, 8.5)]),
    "on point": Polygon([(8.5, 0), (17, 8.5), (8.5, 17), (0, 8.5)]),
    "trapezoid": Polygon([(0, 0), (24, 0), (18, 6), (6, 6)]),
    "mitred border": Polygon([(0, 0), (30, 0), (26, 4), (4, 4)]),
    "quarter circle": Polygon([(0, 0), *regular(80, 10, 0).exterior.coords[:21]]),
    "with a hole": ringed(box(0, 0, 16, 16), box(5, 5, 10, 11)),
    "round a circle": ringed(box(0, 0, 12, 12), shapely.Point(6, 6.5).buffer(3)),
    "all round": ringed(box(0, 0, 30, 24), box(4, 4, 26, 20)),
}
HARD: Final[dict[str, Polygon]] = {
    "sliver": box(0, 0, 20, 0.4),
    "wedge": Polygon([(0, 0), (20, 0), (20, 0.6)]),
    "crumb": box(0, 0, 0.3, 0.3),
    "two rooms with a door": joined(box(0, 0, 5, 5), box(5, 2, 6, 2.4), box(6, 0, 11, 5)),
    "touching corners": Polygon(
        [(0, 0), (4, 0), (4, 4), (8, 4), (8, 8), (3.99, 8), (3.99, 4), (0, 4)]
    ),
}


def space(
    shape: Polygon,
    kind: AreaKind = "ground",
    *,
    edge: Polygon | None = None,
    corners: Sequence[Spot] = (),
    centre: Path | None = None,
    rules: Rules = INCH,
) -> Room:
    """A room in the middle of a quilt, or on a quilt with a finished edge."""
    edge = shape.envelope.buffer(50) if edge is None else edge
    clear = shape.buffer(-rules.seam, join_style="mitre")
    free = clear.intersection(edge.buffer(-rules.edge, join_style="mitre"))
    parts = [part for part in shapely.get_parts(free) if isinstance(part, Polygon)]
    largest = max(parts, key=lambda part: part.area, default=Polygon())
    return Room(shape, largest, edge, kind, rules, tuple(corners), centre)


def grid(columns: int, rows: int, side: float) -> tuple[Spot, ...]:
    """The corners of squares side by side."""
    return tuple((x * side, y * side) for y in range(rows + 1) for x in range(columns + 1))


def widest_gap(shape: Polygon, paths: Sequence[Path], apart: float) -> float:
    """The width of the widest circle that no line crosses, the rim counted, by dots all over the
    shape: too small by no more than the diagonal of the dots' grid."""
    low_x, low_y, high_x, high_y = shape.bounds
    across, down = np.meshgrid(np.arange(low_x, high_x, apart), np.arange(low_y, high_y, apart))
    inside = shapely.contains_xy(shape, across, down)
    dots = shapely.points(across[inside], down[inside])
    lines = [shape.boundary, *(shapely.LineString(path) for path in paths)]
    parts = [part for line in lines for part in shapely.get_parts(line)]
    spots = [shapely.get_coordinates(part) for part in parts]
    sides = np.concatenate([np.stack([part[:-1], part[1:]], axis=1) for part in spots])
    tree = shapely.STRtree([shapely.LineString(side) for side in sides])
    _, away = tree.query_nearest(dots, return_distance=True, all_matches=False)
    return 2 * float(np.max(away))


def length(paths: Sequence[Path]) -> float:
    return sum(shapely.LineString(path).length for path in paths)


def once(paths: Sequence[Path]) -> float:
    """How long it is where nothing counts twice."""
    return float(shapely.union_all([shapely.LineString(path) for path in paths]).length)
