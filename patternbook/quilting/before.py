"""Which legs run on what was stitched before: told at the end, from where the legs lie."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from patternbook.quilting.nearest import Floats, Whole
from patternbook.quilting.records import Leg, Stage, Walk

# Lines nearer to one another than this lie on one another: no needle tells them apart.
SAME: Final = 2e-3
APART: Final = 0.5  # inches between the spots by which a leg is looked at


def told(stages: Sequence[Stage], inch: float) -> tuple[Stage, ...]:
    """The same stages; a leg is `again` where all of it lies on legs that were sewn earlier."""
    legs = [leg for stage in stages for walk in stage.walks for leg in walk.legs]
    if not legs:
        return tuple(stages)
    again = iter(_again([leg.path for leg in legs], inch))
    return tuple(replace(stage, walks=tuple(_walks(stage, again))) for stage in stages)


def _walks(stage: Stage, again: Iterator[bool]) -> Iterator[Walk]:
    for walk in stage.walks:
        yield Walk(tuple(_leg(leg, next(again)) for leg in walk.legs))


def _leg(leg: Leg, again: bool) -> Leg:
    return leg if leg.again == again else leg._replace(again=again)


def _again(paths: Sequence[Sequence[tuple[float, float]]], inch: float) -> list[bool]:
    lines = np.array([shapely.LineString(path) for path in paths])
    long = shapely.length(lines) > 4 * SAME * inch
    spots, which = _along(lines, APART * inch)
    parts, owner = _parts(lines)
    spot, part = shapely.STRtree(parts).query(
        shapely.points(spots), predicate="dwithin", distance=SAME * inch
    )
    covered = np.zeros(len(spots), dtype=bool)
    covered[spot[owner[part] < which[spot]]] = True
    bare = np.zeros(len(paths), dtype=bool)
    bare[which[~covered]] = True
    return [bool(one) for one in ~bare & long]


def _along(lines: NDArray[np.object_], apart: float) -> tuple[Floats, Whole]:
    """Spots on lines: corners, so far apart at most, and midway between each two of them."""
    spots, which = shapely.get_coordinates(shapely.segmentize(lines, apart), return_index=True)
    joined = np.flatnonzero(np.diff(which) == 0)
    midway = (spots[joined] + spots[joined + 1]) / 2
    return np.concatenate([spots, midway]), np.concatenate([which, which[joined]])


def _parts(lines: NDArray[np.object_]) -> tuple[NDArray[np.object_], Whole]:
    """The straight parts of all lines, and the number of the line that each is of."""
    spots, which = shapely.get_coordinates(lines, return_index=True)
    joined = np.flatnonzero(np.diff(which) == 0)
    ends = np.stack([spots[joined], spots[joined + 1]], axis=1)
    return np.asarray(shapely.linestrings(ends)), which[joined]
