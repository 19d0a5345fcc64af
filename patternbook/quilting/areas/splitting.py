"""A part of the ground split along straight lines."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

import numpy as np
import shapely
from shapely import LineString, MultiLineString, Polygon

from patternbook.quilting.areas.roots import NEAR

Key = tuple[float, float]
# Lines are told apart to the third place; so much is added first, that no mark of a ruler (a half
# of a sixteenth, say) is rounded now up and now down.
OFF: Final = 0.0001234
FINE: Final = 1e-6  # finer differences between corners are floats' own
HAIR: Final = 1e-7  # the end of a chord lies no farther from the rim


def chords_of(line: LineString, part: Polygon) -> tuple[LineString, ...]:
    """What of a line lies inside of a part, from rim to rim, in order along the line."""
    rim = part.boundary
    pieces = [
        piece
        for piece in shapely.get_parts(shapely.intersection(line, part))
        if piece.geom_type == "LineString"
        and piece.length > 10 * NEAR
        and rim.distance(piece.interpolate(0.5, normalized=True)) > 2 * NEAR
    ]
    return tuple(sorted(pieces, key=lambda piece: round(line.project(piece.centroid), 4)))


def clean(shape: Polygon) -> list[Polygon]:
    """A shape without slits and spikes that are floats' own: one or more."""
    fine = shapely.set_precision(shapely.set_precision(shape, FINE), 0.0)
    return [
        one for one in shapely.get_parts(fine) if one.geom_type == "Polygon" and one.area > FINE
    ]


def split(part: Polygon, chords: Sequence[LineString]) -> tuple[Polygon, ...]:
    """What chords leave of a part, from the top left; it whole where they do not come out."""
    if not chords:
        return (part,)
    lines = MultiLineString([(chord.coords[0], chord.coords[-1]) for chord in chords])
    ends = shapely.multipoints(shapely.get_coordinates(lines))
    rim = shapely.boundary(shapely.snap([part], ends, HAIR))
    noded = shapely.union_all([*rim, lines])
    faces = shapely.get_parts(shapely.polygonize([noded]))
    inside = shapely.contains(part, shapely.point_on_surface(faces))
    found = [face for face, is_in in zip(faces, inside, strict=True) if is_in]
    tiny = any(face.area < NEAR for face in found)
    if tiny or abs(sum(face.area for face in found) - part.area) > 100 * HAIR:
        return (part,)
    return tuple(sorted(found, key=_place))


class Rim:
    """The rim of a part without holes, walked once: what a chord leaves of it, without cutting."""

    def __init__(self, part: Polygon) -> None:
        self._ring = part.exterior
        spots = shapely.get_coordinates(self._ring)
        steps = np.diff(spots, axis=0)
        self._at = np.concatenate([[0.0], np.cumsum(np.hypot(steps[:, 0], steps[:, 1]))])
        cross = spots[:-1, 0] * spots[1:, 1] - spots[1:, 0] * spots[:-1, 1]
        self._swept = np.concatenate([[0.0], np.cumsum(cross)])
        self._spots = spots
        self._area = float(part.area)

    def sides(self, chord: LineString) -> tuple[tuple[float, float], tuple[float, float]]:
        """The area and the length around of the two parts that a chord leaves."""
        ends = shapely.get_coordinates(chord)[[0, -1]]
        places = np.asarray(shapely.line_locate_point(self._ring, shapely.points(ends))).tolist()
        (first, one), (last, other) = sorted(zip(places, ends.tolist(), strict=True))
        closing = other[0] * one[1] - one[0] * other[1]
        swept = self._to(last, other) - self._to(first, one) + closing
        area = abs(swept) / 2
        along, whole = last - first, float(self._at[-1])
        return (area, along + chord.length), (self._area - area, whole - along + chord.length)

    def _to(self, place: float, spot: Sequence[float]) -> float:
        """Twice the area swept from the origin along the rim, up to a place on it."""
        n = min(int(np.searchsorted(self._at, place, side="right")) - 1, len(self._spots) - 2)
        x, y = self._spots[n]
        return float(self._swept[n] + x * spot[1] - spot[0] * y)


def _place(face: Polygon) -> tuple[float, ...]:
    x0, y0, x1, y1 = face.bounds
    return tuple(round(value, 3) for value in (y0, x0, y1, x1, face.area))


def carried(run: LineString, reach: float) -> LineString:
    """A straight line carried on so far at both ends."""
    (ax, ay), (bx, by) = run.coords[0], run.coords[-1]
    dx, dy = (bx - ax) / run.length * reach, (by - ay) / run.length * reach
    return LineString([(ax - dx, ay - dy), (bx + dx, by + dy)])


def line_key(run: LineString) -> Key:
    """The slope and the place of the line that a run lies on."""
    (ax, ay), (bx, by) = run.coords[0], run.coords[-1]
    angle = math.atan2(by - ay, bx - ax) % math.pi
    angle = 0.0 if math.pi - angle < NEAR else angle
    place = ay * math.cos(angle) - ax * math.sin(angle)
    return round(angle + OFF, 3), round(place + OFF, 3)


def main_slope(shape: Polygon) -> float:
    """The slope, within a quarter turn, of the greater part of a rim."""
    totals: dict[int, float] = {}
    for ring in (shape.exterior, *shape.interiors):
        steps = np.diff(shapely.get_coordinates(ring), axis=0)
        lengths = np.hypot(steps[:, 0], steps[:, 1])
        slopes = np.rint(np.degrees(np.arctan2(steps[:, 1], steps[:, 0]))).astype(int) % 90
        for slope, length in zip(slopes.tolist(), lengths.tolist(), strict=True):
            totals[slope] = totals.get(slope, 0.0) + length
    most = min(totals, key=lambda slope: (-round(totals[slope], 3), slope))
    return math.radians(most)
