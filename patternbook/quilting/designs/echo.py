"""Echoes of the shape: lines ever further from its rim, or outward from what lies on a ground.
No open spot is wider than 2.5 times the spacing, in shapes without arms 1.5 times."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import FINE, Spots, as_path, on_step
from patternbook.quilting.designs.frames import kept_clear
from patternbook.quilting.designs.lines import clipped
from patternbook.quilting.designs.rim import Rim, serpentine
from patternbook.quilting.designs.rings import SMALL, cornered, depth, inset, tour
from patternbook.quilting.records import Drawn, Path

LEFT: Final = 0.75  # of the spacing: more than this in the middle, and one more line is sewn
FIGURE: Final = 0.5  # inches: the first line within a shape that is laid on, where there is room
LEAST: Final = 0.5  # spacings: shorter pieces are left out
OFF: Final = 0.02  # inches: so much further, so that curves keep clear of the shape all along
SMOOTH: Final = 0.005  # inches


def draw(room: Room, spacing: float, _seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    if room.free.is_empty:
        return None
    path = outward(room, told) if room.shape.interiors else inward(room, told)
    if path is None:
        return None
    return Drawn((as_path(path),), told, closed=_is_closed(path))


def distances(first: float, last: float, spacing: float) -> list[float]:
    """Each twice as far as the one before, ¼, ½, 1, but never wider apart than the spacing."""
    found = [first]
    while found[-1] + min(found[-1], spacing) < last:
        found.append(found[-1] + min(found[-1], spacing))
    return found


def inward(room: Room, spacing: float) -> Spots | None:
    deep = depth(room.shape)
    first = kept_clear(room)
    if room.kind == "figure":
        first = max(first, min(FIGURE * room.rules.inch, deep / 2))
    away = distances(first, deep, spacing)
    if deep - away[-1] > LEFT * spacing:
        away.append((away[-1] + deep) / 2)
    rings = [
        cornered(part.exterior)
        for by in away
        for part in inset(room.shape, by)
        if part.area > SMALL * away[0] * spacing
    ]
    return tour(rings, np.array(room.shape.bounds[:2]), spacing, room.shape)


def outward(room: Room, spacing: float) -> Spots | None:
    """Rings around what lies on the ground; where they meet the rim, they run on along it."""
    held = shapely.union_all([Polygon(hole) for hole in room.shape.interiors])
    far = float(shapely.hausdorff_distance(held, room.free))
    first, *further = distances(room.rules.seam, far, spacing)
    lines = [line for by in further for line in _around(held, by, room)]
    pieces, _ = clipped([*_nearest(held, first, room), *lines], room.free, LEAST * spacing)
    rings = [piece for piece in pieces if _is_closed(piece)]
    arcs = [piece for piece in pieces if not _is_closed(piece)]
    return joined(room, arcs, rings, spacing)


def _is_closed(piece: Spots) -> bool:
    return bool(np.hypot(*(piece[0] - piece[-1])) < FINE)


def _nearest(held: shapely.Geometry, by: float, room: Room) -> list[Spots]:
    """The lines next to the shapes: softly around them, or with their corners where that would
    come too near to the seam."""
    soft = list(_around(held, by, room))
    if all(room.free.covers(shapely.LineString(line)) for line in soft):
        return soft
    cornered_lines = [cornered(hole) for hole in room.free.interiors]
    return cornered_lines or soft


def _around(held: shapely.Geometry, by: float, room: Room) -> Iterator[Spots]:
    off = by + OFF * room.rules.inch
    grown = shapely.buffer(held, off, quad_segs=24).simplify(SMOOTH * room.rules.inch)
    for part in shapely.get_parts(grown):
        for ring in (part.exterior, *part.interiors):
            yield shapely.get_coordinates(ring)


def joined(
    room: Room, arcs: Sequence[Spots], rings: Sequence[Spots], spacing: float
) -> Spots | None:
    """The open pieces one after the other along the rim; the rings from the spot of that path
    which is nearest to them, and back to it."""
    outer = sorted(rings, key=lambda ring: -round(float(Polygon(ring).area), 6))
    if not arcs:
        return tour(outer, np.array(room.free.bounds[:2]), spacing, room.shape)
    paths = serpentine(Rim(room.free), arcs)
    if len(paths) != 1:
        return None
    if not outer:
        return paths[0]
    path = shapely.LineString(paths[0])
    near = shapely.get_coordinates(shapely.shortest_line(path, shapely.LinearRing(outer[0])))
    rounds = tour(outer, near[1], spacing, room.shape)
    at = path.project(shapely.Point(near[0]))
    return None if rounds is None else _spliced(paths[0], path, at, rounds)


def _spliced(spots: Spots, path: shapely.LineString, at: float, rounds: Spots) -> Spots:
    """A path with a detour from a place on it and back."""
    steps = np.diff(spots, axis=0)
    run = np.concatenate([[0.0], np.cumsum(np.hypot(steps[:, 0], steps[:, 1]))])
    here = shapely.get_coordinates(path.interpolate(at))
    return np.vstack([spots[run <= at], here, rounds, here, spots[run > at]])


def element() -> tuple[Path, ...]:
    """A curved edge with its echoes at a quarter, a half and one."""
    turn = np.linspace(0, np.pi, 25)
    half = np.column_stack([np.cos(turn), -np.sin(turn)])
    first, second, third = 3 + half * 1.25, 3 + half * 1.5, 3 + half * 2
    return (as_path(np.vstack([first, second[::-1], third])),)


DESIGN: Final = Design(
    name="echoes",
    foot="walking foot",
    plain=False,
    kinds=("ground", "figure", "corner", "square"),
    suits=lambda _room: True,
    draw=draw,
    sewn={
        "walking foot": "Sew once round close to the shape, then again and again, each time "
        "further out. The edge of the foot is the gauge.",
        "ruler": "Sew the straight sides along the thick quilting ruler with the ruler foot: its "
        "edge gives the distance.",
        "free motion": "Let the edge of the foot run along the line before.",
    },
    corner="Sew on until the needle is as far past the corner as the line is from the shape, turn "
    "with the needle down and go on.",
    element=element,
)
