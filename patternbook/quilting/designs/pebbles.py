"""Pebbles: circles of several sizes that touch, each sewn round once on one way through all. No
open spot is wider than 1.3 times the spacing, which is the width of a pebble of middle size."""

from __future__ import annotations

import math
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import Spots, as_path, on_step
from patternbook.quilting.designs.packed import Pebble, packed
from patternbook.quilting.records import Drawn, Path

DOTS: Final = 28  # on each pebble
MOST: Final = 3000  # pebbles are too many to sew


def draw(room: Room, spacing: float, seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    if room.free.is_empty or room.free.area > MOST * told * told:
        return None
    pebbles = packed(room.free, told, np.random.default_rng(seed))
    if not pebbles:
        return None
    return Drawn((as_path(all_round(pebbles, room.free)),), told, closed=True)


def all_round(pebbles: list[Pebble], free: Polygon) -> Spots:
    """Round each pebble, and on the way round into those that were set against it: each is
    sewn the other way round than the one before, so that the line flows from one to the other."""
    inner: dict[int, list[int]] = {}
    for number, pebble in enumerate(pebbles[1:], 1):
        inner.setdefault(pebble.beside, []).append(number)
    near = shapely.shortest_line(shapely.Point(*pebbles[0].middle), free.boundary).coords
    parts: list[Spots] = []
    todo = [_rounds(pebbles, inner, 0, _angle(near[0], near[1]), 1.0)]
    while todo:
        if not todo[-1]:
            todo.pop()
            continue
        step = todo[-1].pop(0)
        if isinstance(step, int):
            back = _angle(pebbles[step].middle, pebbles[pebbles[step].beside].middle)
            todo.append(_rounds(pebbles, inner, step, back, -1.0 if len(todo) % 2 else 1.0))
        else:
            parts.append(step)
    return np.vstack(parts)


Steps = list["Spots | int"]


def _rounds(
    pebbles: list[Pebble], inner: dict[int, list[int]], number: int, start: float, sense: float
) -> Steps:
    """Once round a pebble: arcs, and the pebbles that are sewn between them."""
    pebble = pebbles[number]
    stops = sorted(
        ((sense * (_angle(pebble.middle, pebbles[n].middle) - start)) % math.tau, n)
        for n in inner.get(number, [])
    )
    found: Steps = []
    done = 0.0
    for turn, other in stops:
        found += [_arc(pebble, start + sense * done, sense * (turn - done)), other]
        done = turn
    return [*found, _arc(pebble, start + sense * done, sense * (math.tau - done))]


def _angle(start: tuple[float, ...], end: tuple[float, ...]) -> float:
    return math.atan2(end[1] - start[1], end[0] - start[0])


def _arc(pebble: Pebble, start: float, turn: float) -> Spots:
    count = max(2, math.ceil(abs(turn) / math.tau * DOTS) + 1)
    angles: NDArray[np.float64] = start + np.linspace(0, turn, count)
    across = np.column_stack([np.cos(angles), np.sin(angles)])
    return np.array(pebble.middle) + pebble.radius * across


def element() -> tuple[Path, ...]:
    """Three pebbles in one line."""
    pebbles = [Pebble((1.0, 1.0), 1.0, 0), Pebble((2.7, 1.0), 0.7, 0)]
    pebbles.append(Pebble((2.7, 2.2), 0.5, 1))
    return (as_path(all_round(pebbles, shapely.box(0, 0, 6, 6))),)


DESIGN: Final = Design(
    name="pebbles",
    foot="free motion",
    plain=False,
    kinds=("channel", "band", "border", "corner"),
    suits=lambda _room: True,
    draw=draw,
    sewn={
        "free motion": "Sew a circle until you come to where the next one touches it, sew that "
        "one first, then finish the circle. A line sewn twice does no harm here.",
    },
    corner="Fill the corner with the smallest pebbles, and go on round the last one until you "
    "face the open part.",
    element=element,
)
