"""The widest open place, sought again spot by spot on a grid."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

import numpy as np
import shapely
from shapely import Point, Polygon

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import Floats, Lines, Stitched, rings
from patternbook.quilting.records import Gap, Path

FIRST: Final = 0.5  # inches between the spots of the first grid
FEWEST: Final = 30_000  # spots looked at, or
TIMES: Final = 5  # as many as on the first grid, where that is more
FINEST: Final = 6  # grids, each twice as fine


class Between(NamedTuple):
    """A diameter, at least and at most."""

    least: float
    most: float


def open_places(stitched: Stitched) -> Iterator[Notice]:
    plan = stitched.plan
    paths = [leg.path for leg in stitched.legs]
    edge = plan.top.edge
    for gap, rim, how in (
        (plan.gap, rings(edge), "the edge counted"),
        (plan.gap_bare, [], "the edge not counted"),
    ):
        lines = [*paths, *rim]
        if lines:
            yield from _differs(stitched, gap, lines, how)


def _differs(stitched: Stitched, gap: Gap, paths: Sequence[Path], how: str) -> Iterator[Notice]:
    found = on_grid(paths, stitched.plan.top.edge, stitched.inch)
    if found.least > gap.high + stitched.same or found.most < gap.low - stitched.same:
        yield stitched.wrong(
            "quilting-open",
            f"the widest open place is told as {_span(stitched, gap.low, gap.high)} ({how}); "
            f"a grid over the top finds {_span(stitched, *found)}.",
        )
    lines = shapely.multilinestrings([shapely.LineString(path) for path in paths])
    spot = Point(gap.at)
    there = 2 * float(shapely.distance(lines, spot))
    off = float(stitched.plan.top.edge.distance(spot))
    if abs(there - gap.low) > stitched.same or off > stitched.same:
        at = stitched.at(np.array(gap.at))
        message = f"the place told as the widest ({how}) is {stitched.told(there)} open, at {at}."
        yield stitched.wrong("quilting-open", message)


def _span(stitched: Stitched, least: float, most: float) -> str:
    return f"between {stitched.told(least)} and {stitched.told(most)}"


def on_grid(paths: Sequence[Path], edge: Polygon, unit: float) -> Between:
    """No spot of a square lies farther from a stitch than its middle does by half its diagonal.
    Squares that cannot hold the widest place are left, the others looked at on a finer grid."""
    lines = Lines(paths, unit)
    west, north, east, south = edge.bounds
    step = FIRST * unit
    x = np.arange(west + step / 2, east + step / 2, step)
    y = np.arange(north + step / 2, south + step / 2, step)
    spots = np.stack(np.meshgrid(x, y), -1).reshape(-1, 2)
    shapely.prepare(edge)
    least, most, left = 0.0, 0.0, max(FEWEST, TIMES * len(spots))
    for grid in range(FINEST):
        reach = step / math.sqrt(2)
        spots = spots[shapely.dwithin(edge, shapely.points(spots), reach)]
        far = _far(lines, spots)
        least = max(least, float(far[shapely.intersects_xy(edge, *spots.T)].max(initial=0.0)))
        may = far + reach > least
        most = float(far.max(initial=0.0) + reach)
        left -= len(spots)
        if grid + 1 == FINEST or 4 * int(may.sum()) > left:
            break
        step /= 2
        spots = _quartered(spots[may], step)
    return Between(2 * least, 2 * most)


def _quartered(spots: Floats, step: float) -> Floats:
    corners = np.array([(-1, -1), (1, -1), (-1, 1), (1, 1)]) * step / 2
    return np.asarray((spots[:, None] + corners).reshape(-1, 2))


def _far(lines: Lines, spots: Floats) -> Floats:
    """How far each spot is from the nearest line."""
    (asked, _), far = lines.tree.query_nearest(
        shapely.points(spots), return_distance=True, all_matches=False
    )
    found = np.zeros(len(spots))
    found[asked] = far
    return found
