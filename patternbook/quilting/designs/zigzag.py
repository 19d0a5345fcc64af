"""A pointed zigzag with echoed sides, up to the seams around. No open spot is wider than 1.8
times the spacing."""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import Frame, Spots, as_path, long_ways, on_step, reach
from patternbook.quilting.designs.lines import clipped
from patternbook.quilting.designs.rim import Rim, serpentine
from patternbook.quilting.designs.rings import depth
from patternbook.quilting.records import Drawn, Path

TALLEST: Final = 7.0  # inches: a strip up to this is crossed by one zigzag, wider ones by more
STEEP: Final = math.tan(math.radians(57))  # how steep the sides are, about
LEAST: Final = 1.2  # spacings: shorter echoes are left out


def draw(room: Room, spacing: float, _seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    if depth(room.shape) < told:
        return None
    axes = long_ways(room.shape)[0]
    pieces, _ = clipped(zigzags(room, axes, told), room.shape, LEAST * told)
    paths = serpentine(Rim(room.shape), pieces)
    return Drawn(tuple(map(as_path, paths)), told, touches=True) if paths else None


def zigzags(room: Room, axes: Frame, spacing: float) -> list[Spots]:
    """One zigzag through the middle and its echoes to both sides, the spacing apart."""
    low, high = reach(room.shape, axes)
    wide, tall = float(high[0] - low[0]), float(high[1] - low[1])
    rise = tall / math.ceil(tall / (TALLEST * room.rules.inch) - 0.01)
    sides = max(2, 2 * round(wide * STEEP / rise / 2))
    run = wide / sides
    apart = spacing * math.hypot(1, rise / run)  # measured straight down
    count = math.ceil((tall + rise) / 2 / apart)
    across = low[0] + run * np.arange(-1, sides + 2)
    points = np.where(np.arange(-1, sides + 2) % 2, -rise / 2, rise / 2) + (low[1] + high[1]) / 2
    echoes = range(-count, count + 1)
    return [axes.back(np.column_stack([across, points + n * apart])) for n in echoes]


def element() -> tuple[Path, ...]:
    """One point with two echoes in it."""
    outer = [(0.0, 5.0), (3.0, 0.0), (6.0, 5.0), (4.8, 5.0), (3.0, 2.0), (1.2, 5.0)]
    return (as_path(np.array([*outer, (2.4, 5.0), (3.0, 4.0), (3.6, 5.0)])),)


DESIGN: Final = Design(
    name="echoed zigzag",
    foot="walking foot",
    plain=False,
    kinds=("band", "border", "ground", "channel"),
    suits=lambda room: depth(room.shape) >= 2 * room.rules.seam,
    draw=draw,
    sewn={
        "walking foot": "Sew the big zigzag first, then the points within each point, going from "
        "one to the next in the seam.",
        "ruler": "Mark the points. Sew each slanted side along the thick quilting ruler with the "
        "ruler foot.",
        "free motion": "Mark the big zigzag only, and echo its sides by eye.",
    },
    corner="Stop with the needle down exactly in the point, lift the foot, turn and sew on.",
    element=element,
)
