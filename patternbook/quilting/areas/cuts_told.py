"""How to mark the plain cuts: on from a seam, or so far from the seam beside it."""

from __future__ import annotations

import math

import shapely
from shapely import LineString, Point

from patternbook.quilting.areas.cuts import Cut
from patternbook.quilting.areas.measured import WAYS, place, told, way
from patternbook.quilting.areas.roots import NEAR
from patternbook.quilting.areas.splitting import line_key
from patternbook.quilting.records import Marked, Path, Spot, Top


def cut_lines(cut: Cut, top: Top) -> tuple[Marked, ...]:
    """The lines of a cut that do not lie on a seam."""
    paths = [tuple((round(x, 6), round(y, 6)) for x, y in piece.coords) for piece in cut.bare]
    return tuple(Marked(path, "cut", f"Cut {cut.number}: {_ruled(path, top)}.") for path in paths)


def _ruled(path: Path, top: Top) -> str:
    """How to rule one line."""
    start, end = path[0], path[-1]
    direction = way(start, end)
    if _carries_on(path, top):
        on = f"{told(math.dist(start, end), top.rules)} {direction}"
        return f"carry on the seam that ends {place(start, top)}, {on}"
    if direction not in WAYS.values():
        return f"rule a line from {place(start, top)}, to {place(end, top)}"
    axis = 0 if direction in ("up", "down") else 1
    origin = top.edge.bounds[1 - axis]
    first, last = sorted((start[1 - axis] - origin, end[1 - axis] - origin))
    far = told(_beside(start, end, axis, top), top.rules)
    span = f"from {told(first, top.rules)} to {told(last, top.rules)}"
    if axis == 0:
        return f"rule a line down, {far} to the right of the seam beside it, {span} from the top"
    return f"rule a line across, {far} below the seam above it, {span} from the left edge"


def _carries_on(path: Path, top: Top) -> bool:
    """Whether a line begins where a seam that lies on the same line ends."""
    start, key = Point(path[0]), line_key(LineString(path))
    ends = [LineString((run.start, run.end)) for run in top.runs if run.length > NEAR]
    met = [ends[n] for n in shapely.STRtree(ends).query(start, "dwithin", NEAR)] if ends else []
    return any(line_key(run) == key for run in met)


def _beside(start: Spot, end: Spot, axis: int, top: Top) -> float:
    """How far an upright or level line lies from the next seam (or the edge) that runs along it,
    to the left of it or above."""
    at, middle = start[axis], (start[1 - axis] + end[1 - axis]) / 2
    places = [top.edge.bounds[axis]]
    for run in top.runs:
        low, high = sorted((run.start[1 - axis], run.end[1 - axis]))
        along = abs(run.start[axis] - run.end[axis]) < NEAR
        if along and low <= middle <= high and run.start[axis] < at - NEAR:
            places.append(run.start[axis])
    return at - max(places)
