"""A meander: one line that wanders all over and never crosses itself. No open spot is wider than
2.2 times the spacing."""

from __future__ import annotations

import random
from typing import Final

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.designs.cells import gridded
from patternbook.quilting.designs.curves import closed_up, rounded, thinned
from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import Spots, as_path, on_step, side_frame
from patternbook.quilting.designs.roundabout import round_trip
from patternbook.quilting.records import Drawn, Path

SWAY: Final = 0.24  # of the spacing: how far straight stretches sway to each side
STRAY: Final = 0.2  # of the spacing: how far each bend strays from its place
TRIES: Final = 8
CALMER: Final = 0.6  # of the sway and straying, where the line would meet itself
FINE: Final = 0.004  # inches: bends are drawn as exactly as that


def draw(room: Room, spacing: float, seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    if room.free.is_empty:
        return None
    for spread in (True, False):
        curve = wandering(room.free, told, seed, spread=spread)
        if curve is not None:
            path = as_path(thinned(curve, FINE * room.rules.inch))
            return Drawn((path,), told, closed=True)
    return None


def wandering(free: Polygon, spacing: float, seed: int, *, spread: bool) -> Spots | None:
    """A soft curve all over a room."""
    grid = gridded(free, side_frame(free), 2 * spacing, spread=spread)
    if not grid.cells:
        return None
    bends = round_trip(grid, random.Random(seed))  # noqa: S311 (chance for the look)
    return softened(bends, free, spacing, np.random.default_rng(seed))


def softened(
    bends: Spots, free: Polygon, spacing: float, chance: np.random.Generator
) -> Spots | None:
    """A soft curve along the bends that strays from them, as far as it keeps free of itself."""
    sway, stray = swayed(bends), chance.uniform(-1, 1, bends.shape)
    room = free.buffer(1e-9)
    share = 1.0
    for _ in range(TRIES):
        moved = bends + share * spacing * (SWAY * sway + STRAY * stray)
        curve = closed_up(rounded(moved, 3, closed=True))
        line = shapely.LineString(curve)
        if line.is_simple and room.covers(line):
            return curve
        share *= CALMER
    return None


def swayed(bends: Spots) -> Spots:
    """Which way each spot of a straight stretch sways: to the left and to the right by turns."""
    along = np.roll(bends, -1, axis=0) - np.roll(bends, 1, axis=0)
    before, after = bends - np.roll(bends, 1, axis=0), np.roll(bends, -1, axis=0) - bends
    far = np.hypot(along[:, 0], along[:, 1])
    turn = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    straight = np.abs(turn) < 0.2 * far * far
    side = np.stack([-along[:, 1], along[:, 0]], axis=-1) / np.maximum(far, 1e-9)[:, None]
    turns = np.where(np.arange(len(bends)) % 2, 1.0, -1.0)
    return np.asarray(side * (turns * straight)[:, None])


def element() -> tuple[Path, ...]:
    """One bend out and one back, like pieces of a jigsaw."""
    bends = [(0, 2), (1, 2), (1, 1), (0.6, 0), (2.2, 0), (2, 1), (2, 3), (1.7, 4), (3.4, 4), (3, 3)]
    bends += [(3, 2), (4, 2)]
    return (as_path(rounded(np.array(bends, dtype=np.float64), 3, closed=False)),)


DESIGN: Final = Design(
    name="meander",
    foot="free motion",
    plain=True,
    kinds=("ground", "corner", "square", "band", "piecing"),
    suits=lambda _room: True,
    draw=draw,
    sewn={
        "free motion": "Sew round bends like those of a jigsaw, a little to the left, a little to "
        "the right, and always leave yourself a way on to the open part.",
    },
    corner="Sew into the corner on one side of the way and out again on the other: the line in "
    "must never close the way out.",
    element=element,
)
