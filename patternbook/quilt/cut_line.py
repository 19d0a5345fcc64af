"""The cut line of a template: its seam line, one allowance further out; drawn, so in floats."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from patternbook.methods.made import Arc, Outline
from patternbook.quilt.template import Curve

Point = tuple[float, float]
# A sharp tip is cut off blunt this many allowances from its corner (common practice, no source).
BLUNT: Final = 2.0
# How far the straight pieces of a drawn circle may lie beside it, as a share of its radius.
_FLAT: Final = 2e-4
_NEAR: Final = 1e-9


@dataclass(frozen=True)
class Edge:
    """One edge of an outline, from corner to corner; round about `centre` where it has one."""

    start: Point
    end: Point
    centre: Point | None = None
    radius: float = 0.0
    hollow: bool = False

    def out(self, allowance: float) -> Edge:
        """The edge so much further out; its ends as far along as those of the seam line."""
        if self.centre is None:
            (x, y), (u, v) = self.start, self.end
            length = math.dist(self.start, self.end)
            dx, dy = (v - y) / length * allowance, (x - u) / length * allowance
            return Edge((x + dx, y + dy), (u + dx, v + dy))
        radius = self.radius + (-allowance if self.hollow else allowance)
        start, end = (_from(self.centre, point, radius) for point in (self.start, self.end))
        return Edge(start, end, self.centre, radius, self.hollow)

    def points(self) -> list[Point]:
        """The edge in short straight pieces, without its end."""
        if self.centre is None:
            return [self.start]
        first, last = (_angle(self.centre, point) for point in (self.start, self.end))
        sweep = (last - first + math.pi) % (2 * math.pi) - math.pi
        pieces = max(1, math.ceil(abs(sweep) / (2 * math.acos(1 - _FLAT))))
        turns = (first + sweep * piece / pieces for piece in range(pieces))
        cx, cy = self.centre
        return [
            (cx + self.radius * math.cos(turn), cy + self.radius * math.sin(turn)) for turn in turns
        ]


def edges(outline: Outline) -> list[Edge]:
    """The edges in order, in floats."""
    corners = [(float(x), float(y)) for x, y in outline.corners]
    arcs: dict[int, Arc] = {arc.edge: arc for arc in outline.arcs}
    found = []
    for number, (start, end) in enumerate(zip(corners, (*corners[1:], corners[0]), strict=True)):
        arc = arcs.get(number)
        if arc is None:
            found.append(Edge(start, end))
        else:
            centre = float(arc.centre.x), float(arc.centre.y)
            found.append(Edge(start, end, centre, float(arc.radius), arc.hollow))
    return found


def seam_line(outline: Outline) -> Curve:
    """The outline itself, drawn."""
    return tuple(point for edge in edges(outline) for point in edge.points())


def cut_line(outline: Outline, allowance: float) -> Curve:
    """The outline so much larger all round. Corners are mitred, sharp tips cut off blunt."""
    seams = edges(outline)
    moved = [edge.out(allowance) for edge in seams]
    joins = [
        _join(moved[number - 1], edge, seams[number].start, allowance)
        for number, edge in enumerate(moved)
    ]
    points: list[Point] = []
    for number, edge in enumerate(moved):
        begins, ends = joins[number], joins[(number + 1) % len(joins)]
        points += begins[:-1]
        points += Edge(begins[-1], ends[0], edge.centre, edge.radius, edge.hollow).points()
    return tuple(points)


def box(points: Sequence[Point]) -> tuple[float, float, float, float]:
    """Left, top, right and low side."""
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _join(one: Edge, other: Edge, corner: Point, allowance: float) -> list[Point]:
    """Where two cut edges meet: in one point, or cut off blunt."""
    met = _meeting(one, other, corner)
    if met is None:
        return [one.end, other.start]
    reach = math.dist(met, corner)
    if reach <= BLUNT * allowance + _NEAR or one.centre or other.centre:
        return [met]
    way = (met[0] - corner[0]) / reach, (met[1] - corner[1]) / reach
    at = corner[0] + way[0] * BLUNT * allowance, corner[1] + way[1] * BLUNT * allowance
    blunt = Edge(at, (at[0] - way[1], at[1] + way[0]))
    ends = [_crossing(one, blunt), _crossing(blunt, other)]
    return [point for point in ends if point is not None]


def _meeting(one: Edge, other: Edge, corner: Point) -> Point | None:
    """The point nearest the corner that lies on both."""
    if one.centre is None and other.centre is None:
        return _crossing(one, other)
    if one.centre is not None and other.centre is not None:
        return None
    line, arc = (other, one) if one.centre is not None else (one, other)
    found = _on_circle(line, arc)
    return min(found, key=lambda point: math.dist(point, corner), default=None)


def _crossing(one: Edge, other: Edge) -> Point | None:
    (ax, ay), (bx, by) = one.start, one.end
    (cx, cy), (dx, dy) = other.start, other.end
    turn = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if abs(turn) < _NEAR:
        return None
    far = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / turn
    return ax + far * (bx - ax), ay + far * (by - ay)


def _on_circle(line: Edge, arc: Edge) -> list[Point]:
    cx, cy = arc.centre or (0.0, 0.0)
    length = math.dist(line.start, line.end)
    dx, dy = ((b - a) / length for a, b in zip(line.start, line.end, strict=True))
    middle = (cx - line.start[0]) * dx + (cy - line.start[1]) * dy
    foot = line.start[0] + middle * dx, line.start[1] + middle * dy
    half = arc.radius**2 - math.dist(foot, (cx, cy)) ** 2
    if half < 0:
        return []
    return [(foot[0] + way * dx, foot[1] + way * dy) for way in (math.sqrt(half), -math.sqrt(half))]


def _from(centre: Point, point: Point, radius: float) -> Point:
    turn = _angle(centre, point)
    return centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn)


def _angle(centre: Point, point: Point) -> float:
    return math.atan2(point[1] - centre[1], point[0] - centre[0])
