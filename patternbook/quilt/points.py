"""The shape of a patch as points: its corners, arcs as many short steps."""

from __future__ import annotations

import math
from typing import Final

from patternbook.methods.made import Outline
from patternbook.quilt.place import Patch

Point = tuple[float, float]
Points = tuple[Point, ...]
FLAT: Final = 1 / 256  # of the radius: the farthest that a step of an arc lies from the circle


def points_of(patch: Patch) -> Points:
    """The corners of a patch; arcs in steps too short to see."""
    if patch.outline is not None:
        return outlined(patch.outline)
    x, y, across, down = (float(side) for side in (patch.x, patch.y, patch.across, patch.down))
    return (x, y), (x + across, y), (x + across, y + down), (x, y + down)


def outlined(outline: Outline) -> Points:
    """Seam lines as points."""
    corners = [(float(spot.x), float(spot.y)) for spot in outline.corners]
    arcs = {arc.edge: arc for arc in outline.arcs}
    found: list[Point] = []
    for number, start in enumerate(corners):
        if number in arcs:
            centre = arcs[number].centre
            end = corners[(number + 1) % len(corners)]
            found += arc_points(start, end, (float(centre.x), float(centre.y)))[:-1]
        else:
            found.append(start)
    return tuple(found)


def arc_points(start: Point, end: Point, centre: Point) -> Points:
    """The shorter arc between two points, the same points whichever of them comes first."""
    if end < start:
        return arc_points(end, start, centre)[::-1]
    first = math.atan2(start[1] - centre[1], start[0] - centre[0])
    last = math.atan2(end[1] - centre[1], end[0] - centre[0])
    turn = (last - first + math.pi) % math.tau - math.pi
    steps = max(2, math.ceil(abs(turn) / (2 * math.acos(1 - FLAT))))
    radius = math.dist(start, centre)
    between = [first + turn * step / steps for step in range(1, steps)]
    bent = [(centre[0] + radius * math.cos(a), centre[1] + radius * math.sin(a)) for a in between]
    return (start, *bent, end)
