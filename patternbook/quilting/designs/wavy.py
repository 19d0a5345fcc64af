"""Wavy lines side by side, all with the same wave. No open spot is wider than 1.6 times the
spacing."""

from __future__ import annotations

import math
import random
from typing import Final

import numpy as np

from patternbook.quilting.designs.body import body_frame, clear_levels, middle_out
from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import Frame, Spots, as_path, long_ways, on_step, reach
from patternbook.quilting.designs.lines import Levels, clipped, kept, levels
from patternbook.quilting.designs.rim import Rim, serpentine
from patternbook.quilting.records import Drawn, Path

SWING: Final = 0.3  # of the spacing: how far a wave swings out to each side
TIGHTEST: Final = 3.0  # inches: a walking foot sews no tighter bend well (common practice)
SLOW: Final = 5.5  # spacings: the least length of one wave
STEPS: Final = 24  # in a wave
LEAST: Final = 0.6
HUG: Final = 0.35


def draw(room: Room, spacing: float, seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    start = random.Random(seed).random()  # noqa: S311 (where a wave begins is no secret)
    return over_all(room, told, start) if room.kind == "body" else serpentined(room, told, start)


def over_all(room: Room, spacing: float, start: float) -> Drawn | None:
    axes = body_frame(room)
    lines = waves(room, axes, clear_levels(room, axes, spacing, SWING * spacing), spacing, start)
    pieces, numbers = clipped(lines, room.shape, LEAST * spacing, HUG * spacing)
    paths = middle_out(Rim(room.shape), pieces, numbers)
    return Drawn(tuple(map(as_path, paths)), spacing, touches=True) if paths else None


def serpentined(room: Room, spacing: float, start: float) -> Drawn | None:
    if room.free.is_empty:
        return None
    ways = long_ways(room.shape)
    pieces = min((_laid(room, spacing, axes, start) for axes in ways), key=len)
    paths = serpentine(Rim(room.free), pieces)
    return Drawn(tuple(map(as_path, paths)), spacing) if paths else None


def _laid(room: Room, spacing: float, axes: Frame, start: float) -> list[Spots]:
    low, high = reach(room.shape, axes)
    clear = kept(room, axes) + SWING * spacing
    lines = waves(room, axes, levels(float(low[1]), float(high[1]), spacing, clear), spacing, start)
    return clipped(lines, room.free, LEAST * spacing, HUG * spacing)[0]


def waves(room: Room, axes: Frame, at: Levels, spacing: float, start: float) -> list[Spots]:
    """One wave at each level, all beginning alike."""
    swing = SWING * spacing
    length = max(SLOW * spacing, math.tau * math.sqrt(TIGHTEST * room.rules.inch * swing))
    low, high = reach(room.shape, axes)
    along = np.arange(low[0] - length, high[0] + length, length / STEPS)
    wave = swing * np.sin(math.tau * ((along - low[0]) / length + start))
    return [axes.back(np.column_stack([along, level + wave])) for level in at]


def element() -> tuple[Path, ...]:
    """Two waves, one after the other."""
    along = np.linspace(0, 5.5, 45)
    wave = 0.3 * np.sin(math.tau * along / 5.5)
    there, back = np.column_stack([along, wave]), np.column_stack([along, wave + 1])[::-1]
    return (as_path(np.vstack([there, back])),)


DESIGN: Final = Design(
    name="wavy lines",
    foot="walking foot",
    plain=True,
    kinds=("body", "band", "ground", "border", "piecing"),
    suits=lambda _room: True,
    draw=draw,
    sewn={
        "walking foot": "Steer slowly to the left and to the right as you sew. The next line "
        "keeps the distance from the one before, so only the first has to be marked.",
        "ruler": "With the ruler foot, sew along a thick quilting ruler with a long, flat curve; "
        "slide it on by one wave at a time.",
        "free motion": "Sew the waves freely from side to side, with your eyes on the line before.",
    },
    corner="Let the wave run out at the side, turn with the needle down, and sew along the side "
    "to the next wave.",
    element=element,
)
