"""Lines along a border, side by side, that turn with it. No open spot is wider than 1.3 times the
spacing."""

from __future__ import annotations

from typing import Final

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import Spots, as_path, long_ways, on_step
from patternbook.quilting.designs.lines import clipped, levels
from patternbook.quilting.designs.rim import Rim, serpentine
from patternbook.quilting.designs.rings import cornered, tour
from patternbook.quilting.designs.straight import HUG, LEAST, laid
from patternbook.quilting.designs.strips import (
    half_width,
    is_strip,
    largest,
    middle_line,
    round_width,
)
from patternbook.quilting.records import Drawn, Path

BENT: Final = 2  # a middle line of more spots than these turns


def draw(room: Room, spacing: float, _seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    if room.free.is_empty:
        return None
    if room.shape.interiors:
        path = round_and_round(room, told)
        return None if path is None else Drawn((as_path(path),), told, closed=True)
    bent = room.centre is not None and len(room.centre) > BENT
    pieces = beside(room, told) if bent else laid(room, told, long_ways(room.shape)[0])
    paths = serpentine(Rim(room.free), pieces)
    return Drawn(tuple(map(as_path, paths)), told) if paths else None


def round_and_round(room: Room, spacing: float) -> Spots | None:
    """Rings around what lies within the border."""
    outside = Polygon(room.shape.exterior)
    keep = float(room.shape.exterior.distance(room.free))
    wide = room.free.buffer(1e-6)
    rings = [
        cornered(ring)
        for by in levels(0.0, round_width(room.shape), spacing, keep)
        for ring in [largest(outside.buffer(-float(by), join_style="mitre")).exterior]
        if not ring.is_empty and wide.covers(ring)
    ]
    return tour(rings, np.array(room.shape.bounds[:2]), spacing, room.shape)


def beside(room: Room, spacing: float) -> list[Spots]:
    """Lines on both sides of the middle line, turning where it turns."""
    middle = shapely.LineString(middle_line(room))
    half = half_width(room, middle_line(room))
    found = []
    for by in levels(-half, half, spacing):
        moved = shapely.offset_curve(middle, float(by), join_style="mitre") if by else middle
        found += [shapely.get_coordinates(part) for part in shapely.get_parts(moved)]
    return clipped(found, room.free, LEAST * spacing, HUG * spacing)[0]


def element() -> tuple[Path, ...]:
    """Three lines round a corner, three quarters of an inch apart."""
    spots = [(0, 0), (5, 0), (5, 5), (4, 5), (4, 1), (0, 1), (0, 2), (3, 2), (3, 5)]
    return (as_path(np.array(spots, dtype=np.float64) * 0.75),)


DESIGN: Final = Design(
    name="border lines",
    foot="walking foot",
    plain=True,
    kinds=("border", "channel", "band"),
    suits=is_strip,
    draw=draw,
    sewn={
        "walking foot": "Sew along the border, turn at its end, and come back one line further "
        "out. The guide bar on the line before keeps the distance.",
        "ruler": "Sew along the thick quilting ruler with the ruler foot: on a border the quilt "
        "never has to be turned.",
    },
    corner="Stop with the needle down where the lines of both sides meet, lift the foot, turn a "
    "quarter and sew on.",
    element=element,
)
