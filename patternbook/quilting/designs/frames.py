"""Frames going inward, each the spacing within the one before. No open spot is wider than 1.5
times the spacing."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import DECIMALS, FINE, as_path, on_step
from patternbook.quilting.designs.rings import SMALL, cornered, depth, inset, tour
from patternbook.quilting.records import Drawn, Path

INNER: Final = 0.7  # of the spacing: the innermost frame lies no further from the middle
THIN: Final = 0.2  # of the spacing: less than this within a frame, and it is thin
EVEN: Final = 0.98  # of its hull: a shape that fills less has arms
SHARES: Final = (0.45, 0.6, 0.75, 0.9, 1.0)  # of the spacing, tried for the first frame


def draw(room: Room, spacing: float, _seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    if room.free.is_empty or room.shape.interiors:
        return None
    parts = [part for by in distances(room, told) for part in framed(room, by, told)]
    low = np.array(room.shape.bounds[:2])
    path = tour([cornered(part.exterior) for part in parts], low, told, room.shape)
    return None if path is None else Drawn((as_path(path),), told, closed=True)


def distances(room: Room, spacing: float) -> list[float]:
    """How far from the rim the frames lie: exactly the spacing apart. The first lies no further
    than that from the rim; what the innermost leaves open is little wider. Where a shape has arms
    that are not so deep, the first is placed so that least is left open in them."""
    deep = depth(room.shape)
    keep = kept_clear(room)
    count = max(1, math.ceil(deep / spacing - 1 - INNER - FINE) + 1)
    best = max((deep - (count - 1) * spacing) / (1 + INNER), keep)
    firsts = [best]
    if room.shape.area < EVEN * room.shape.convex_hull.area:
        firsts += [max(keep, spacing * share) for share in SHARES]
    tried = [[f + n * spacing for n in range(count + 1) if f + n * spacing < deep] for f in firsts]
    if len(tried) == 1:
        return tried[0][:count]
    return min(tried, key=lambda found: round(left_open(room, found, spacing), DECIMALS))


def left_open(room: Room, away: Sequence[float], spacing: float) -> float:
    """The widest circle between frames at some distances from the rim. Where the innermost is so
    thin that its two sides nearly meet, that counts as bad."""
    rings = [list(framed(room, by, spacing)) for by in (0.0, *away)]
    between = [
        shapely.difference(shapely.union_all(outer), shapely.union_all(inner))
        for outer, inner in zip(rings, [*rings[1:], []], strict=True)
    ]
    parts = [part for whole in between for part in shapely.get_parts(whole)]
    widest = max((depth(part) for part in parts if isinstance(part, Polygon)), default=0.0)
    thin = any(not inset(part, THIN * spacing) for ring in rings for part in ring)
    return widest + (spacing if thin else 0.0)


def kept_clear(room: Room) -> float:
    """How far inside of the rim all is free: more where the finished edge is part of the rim."""
    rules = room.rules
    edge = room.edge.boundary.distance(room.shape) < rules.seam / 2
    return rules.edge if edge else rules.seam


def framed(room: Room, by: float, spacing: float) -> Iterator[Polygon]:
    """What lies within the frames at one distance from the rim."""
    for part in inset(room.shape, by):
        if part.area > SMALL * spacing * spacing:
            yield part


def element() -> tuple[Path, ...]:
    """Three frames of a square of four and a half."""
    found: list[tuple[float, float]] = []
    for number in range(3):
        low = number * 0.75
        high = 4.5 - low
        found += [(low, low), (low, high), (high, high), (high, low), (low, low)]
    return (as_path(np.array(found)),)


DESIGN: Final = Design(
    name="frames going inward",
    foot="walking foot",
    plain=False,
    kinds=("square", "corner", "ground", "band"),
    suits=lambda room: depth(room.shape) > 2 * room.rules.seam,
    draw=draw,
    sewn={
        "walking foot": "Sew once round, step in at the corner, and sew the next frame. From the "
        "innermost come back to the start along the steps.",
        "ruler": "Mark the frames and sew each side along the thick quilting ruler with the ruler "
        "foot; step in at the corner.",
        "free motion": "Sew the frames with rounded corners, each along the one before.",
    },
    corner="Stop with the needle down where the two sides meet, lift the foot and turn. Step in "
    "on the slanted line between the corners.",
    element=element,
)
