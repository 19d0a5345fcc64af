"""The lines to travel on from fill to fill: anchor lines, seams, and the finished edge, cut where
they meet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final, NamedTuple

import numpy as np
import shapely
from shapely import LineString, Polygon, STRtree

from patternbook.quilting.noding import Way, ways
from patternbook.quilting.records import AnchorLine, Filled, LegKind, Path, Seam, Top
from patternbook.quilting.route.graph import WORTH

NEAR: Final = 1e-3
# A seam pressed open is held by its thread alone: stitched in only where nothing else is near.
OPEN: Final = 3.0


class Line(NamedTuple):
    """A line that meets others only at its ends, and what an inch of it is worth to travel."""

    path: Path
    kind: LegKind
    worth: float


def travelled(top: Top, lines: Sequence[AnchorLine], fills: Sequence[Filled]) -> tuple[Line, ...]:
    """All that may be travelled on. Seams within a `body` are left out: its lines turn at the
    finished edge, and nothing ever has to be reached in there."""
    seams = _seams(top, fills)
    ditches = [Way("ditch", line.path, True) for line in lines if line.kind == "ditch"]
    found = ways(replace(top, seams=seams), lines, ditches)
    opened = _opened(found, seams)
    return tuple(
        Line(way.path, way.kind, OPEN if is_open else WORTH[way.kind])
        for way, is_open in zip(found, opened, strict=True)
    )


def _opened(found: Sequence[Way], seams: Sequence[Seam]) -> list[bool]:
    """Which of the ways lie in seams pressed open, and are not to be stitched in any case."""
    opened = np.array([LineString(seam.path) for seam in seams if seam.opened], dtype=object)
    which = np.zeros(len(found), dtype=bool)
    if len(opened):
        shapes = np.array([LineString(way.path) for way in found], dtype=object)
        middles = shapely.line_interpolate_point(shapes, 0.5, normalized=True)
        which[np.unique(STRtree(opened).query(middles, "dwithin", NEAR)[0])] = True
    return [
        bool(is_open) and way.kind == "ditch" and not way.needed
        for way, is_open in zip(found, which, strict=True)
    ]


def _seams(top: Top, fills: Sequence[Filled]) -> tuple[Seam, ...]:
    seams = top.seams
    bodies = [fill.area.shape for fill in fills if fill.area.kind == "body"]
    if not bodies or not seams:
        return seams
    within = _within([seam.path for seam in seams], bodies)
    return tuple(seam for seam, inner in zip(seams, within, strict=True) if not inner)


def _within(paths: Sequence[Path], bodies: Sequence[Polygon]) -> list[bool]:
    shapes = np.array([LineString(path) for path in paths], dtype=object)
    middles = shapely.line_interpolate_point(shapes, 0.5, normalized=True)
    found = np.zeros(len(paths), dtype=bool)
    for body in bodies:
        inner = shapely.contains_xy(body, shapely.get_x(middles), shapely.get_y(middles))
        found |= inner & (shapely.distance(body.boundary, middles) > NEAR)
    return [bool(is_inner) for is_inner in found]
