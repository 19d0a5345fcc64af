"""Shapes of areas: joined, opened, cut along lines, measured.

Shapes are joined and parted on a grid far finer than that of the seams, so that what is left of
a top and what was taken from it fit together again.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import Final, NamedTuple

import numpy as np
import shapely
from shapely import MultiPolygon, Polygon, STRtree
from shapely.errors import GEOSException
from shapely.geometry.base import BaseGeometry

from patternbook.quilting.records import Spot

FINE: Final = 1e-7
SLACK: Final = 0.01  # what is just wide enough is wide enough
TOUCH: Final = 1e-5  # parts whose rims have less in common touch in a point
HAIR: Final = 1e-6  # half the width of what is closed between neighbours
NOTHING: Final = 1e-6  # smaller leftovers are floats' own


class Line(NamedTuple):
    """A straight line without ends: its direction (0 up to half a turn), and how far from the
    corner of the top it lies, measured across it."""

    angle: float
    at: float


def snapped(shape: BaseGeometry) -> BaseGeometry:
    """The shape on the grid, without the lines and points that are left where shapes only
    touched."""
    return _solid(shapely.union_all([shape], grid_size=FINE))


def _solid(shape: BaseGeometry) -> BaseGeometry:
    bare = shapely.set_precision(shape, 0.0)  # a grid sticks to what is made on it
    if bare.geom_type != "GeometryCollection":
        return bare
    parts = shapely.get_parts(bare)
    return MultiPolygon([part for part in parts if part.geom_type == "Polygon"])


def polygons(shape: BaseGeometry) -> list[Polygon]:
    """The polygons of a shape that are more than nothing, by place."""
    parts = shapely.get_parts(shape)
    found = [part for part in parts if part.geom_type == "Polygon" and part.area > NOTHING]
    return sorted(found, key=place)


def place(shape: BaseGeometry) -> tuple[float, ...]:
    """By what shapes are put in order: the top of it, its left, then the rest of its box."""
    left, top, right, bottom = (round(float(side), 4) for side in shape.bounds)
    return top, left, bottom, right


def joined(shapes: Iterable[BaseGeometry]) -> BaseGeometry:
    return _solid(shapely.union_all(list(shapes), grid_size=FINE))


def sewn(shapes: Iterable[BaseGeometry]) -> BaseGeometry:
    """One shape of neighbours; hairs that the grid leaves between them are closed."""
    return snapped(grown(grown(joined(shapes), HAIR), -HAIR))


def less(shape: BaseGeometry, taken: BaseGeometry) -> BaseGeometry:
    """What is left of a shape."""
    return _solid(shapely.difference(shape, taken, grid_size=FINE))


def common(shape: BaseGeometry, other: BaseGeometry) -> BaseGeometry:
    """What two shapes have in common."""
    return _solid(shapely.intersection(shape, other, grid_size=FINE))


def opened(shape: BaseGeometry, width: float) -> list[Polygon]:
    """The shape without its arms narrower than `width`, in parts; corners stay sharp, and parts
    that touch in a point only, but for nothing, are two."""
    inner = polygons(grown(shape, -width / 2))
    if not inner:
        return []
    near = shapely.get_parts(grown(MultiPolygon(inner), width / 2 - TOUCH))
    groups: list[BaseGeometry] = [*inner]
    if len(near) < len(inner):
        part, group = STRtree(near).query(shapely.point_on_surface(inner), predicate="within")
        groups = [MultiPolygon([inner[n] for n in part[group == m]]) for m in range(len(near))]
    room = grown(shape, TOUCH)
    shapely.prepare(room)
    wide = [_within(shape, grown(one, width / 2), room) for one in groups]
    return sorted((part for one in wide for part in polygons(one)), key=place)


def _within(shape: BaseGeometry, wide: BaseGeometry, room: BaseGeometry) -> BaseGeometry:
    """What of `wide` lies in the shape; `room` is a little more than that. Where two rims nearly
    lie on one another the grid now and then fails, or moves a corner out of both (GEOS 3.14)."""
    try:
        found = common(shape, wide)
    except GEOSException:
        found = wide
    return found if room.covers(found) else snapped(shapely.intersection(shape, wide))


def grown(shape: BaseGeometry, far: float) -> BaseGeometry:
    """The shape larger by so much all around, or smaller; its corners stay sharp."""
    with np.errstate(divide="ignore", invalid="ignore"):  # very short edges have no slope
        return shape.buffer(far, join_style="mitre", mitre_limit=10.0)


def apart(shape: BaseGeometry) -> list[Polygon]:
    """The polygons of a shape; two that touch in a point only, but for nothing, are two."""
    return opened(shape, 4 * TOUCH)


def holds_circle(shape: BaseGeometry, across: float) -> bool:
    """Whether a circle of this diameter lies in it somewhere."""
    return not bool(shapely.is_empty(shapely.buffer(shape, -across / 2 + SLACK / 2)))


def sides(shape: BaseGeometry) -> tuple[float, float]:
    """The short and the long side of the least box around it, however that lies."""
    box = shapely.minimum_rotated_rectangle(shape)
    corners = shapely.get_coordinates(box)
    if len(corners) < 4:
        return 0.0, float(shape.length)
    one, other = (math.dist(corners[n], corners[n + 1]) for n in (0, 1))
    return min(one, other), max(one, other)


def widths(shape: Polygon) -> tuple[float, float]:
    """How wide a shape is where it is narrowest, and where it is widest."""
    rim = shapely.get_coordinates(shape.convex_hull)
    steps = np.diff(rim, axis=0)
    long = np.hypot(steps[:, 0], steps[:, 1])
    slopes = np.stack([-steps[:, 1], steps[:, 0]])[:, long > NOTHING] / long[long > NOTHING]
    reach = np.ptp(rim @ slopes, axis=0)
    between = rim[:, None, :] - rim[None, :, :]
    return float(reach.min()), float(np.hypot(between[..., 0], between[..., 1]).max())


def boxed(shape: Polygon) -> float:
    """How much of the least box around it a shape fills."""
    short, long = sides(shape)
    return float(shape.area) / (short * long) if short * long > NOTHING else 0.0


def full(shape: Polygon) -> float:
    """How much of its convex hull a shape fills."""
    return float(shape.area) / float(shape.convex_hull.area)


def across(line: Line, spot: Spot) -> float:
    """How far a spot lies from the corner of the top, measured across a line's direction."""
    return -spot[0] * math.sin(line.angle) + spot[1] * math.cos(line.angle)


def slabs(shape: Polygon, lines: Sequence[Line]) -> list[Polygon]:
    """The shape cut along lines of one direction."""
    angle = lines[0].angle
    turned = shapely.get_coordinates(shape) @ np.array([-math.sin(angle), math.cos(angle)])
    low, high = float(turned.min()) - 1.0, float(turned.max()) + 1.0
    marks = [low, *sorted(line.at for line in lines if low + 1 < line.at < high - 1), high]
    far = 2 * max(abs(value) for value in (*shape.bounds, 1.0)) * math.sqrt(2)
    strips = [_strip(angle, start, end, far) for start, end in pairwise(marks)]
    return [part for strip in strips for part in apart(common(shape, strip))]


def _strip(angle: float, start: float, end: float, far: float) -> Polygon:
    along, over = (math.cos(angle), math.sin(angle)), (-math.sin(angle), math.cos(angle))

    def spot(length: float, width: float) -> Spot:
        return length * along[0] + width * over[0], length * along[1] + width * over[1]

    return Polygon([spot(-far, start), spot(far, start), spot(far, end), spot(-far, end)])
