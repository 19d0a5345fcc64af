"""Straight lines side by side. No open spot is wider than 1.3 times the spacing."""

from __future__ import annotations

from typing import Final

import numpy as np

from patternbook.quilting.designs.body import body_frame, clear_levels, middle_out
from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import Frame, Spots, as_path, long_ways, on_step, reach
from patternbook.quilting.designs.lines import clipped, kept, levels, straight_lines
from patternbook.quilting.designs.rim import Rim, serpentine
from patternbook.quilting.records import Drawn, Path

LEAST: Final = 0.3  # of the spacing: shorter pieces are left out
HUG: Final = 0.2  # of the spacing: pieces that keep nearer to the rim are left out


def draw(room: Room, spacing: float, _seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    return over_all(room, told) if room.kind == "body" else serpentined(room, told)


def over_all(room: Room, spacing: float) -> Drawn | None:
    """From edge to edge of a busy top, in two paths from the middle out."""
    axes = body_frame(room)
    lines = straight_lines(room.shape, axes, clear_levels(room, axes, spacing))
    pieces, numbers = clipped(lines, room.shape, LEAST * spacing)
    paths = middle_out(Rim(room.shape), pieces, numbers)
    return Drawn(tuple(map(as_path, paths)), spacing, touches=True) if paths else None


def serpentined(room: Room, spacing: float) -> Drawn | None:
    """To and fro within the free part of an area, along its longer sides."""
    if room.free.is_empty:
        return None
    pieces = min((laid(room, spacing, axes) for axes in long_ways(room.shape)), key=len)
    paths = serpentine(Rim(room.free), pieces)
    return Drawn(tuple(map(as_path, paths)), spacing) if paths else None


def laid(room: Room, spacing: float, axes: Frame) -> list[Spots]:
    low, high = reach(room.shape, axes)
    at = levels(float(low[1]), float(high[1]), spacing, kept(room, axes) + HUG * spacing)
    lines = straight_lines(room.shape, axes, at)
    return clipped(lines, room.free, LEAST * spacing, HUG * spacing)[0]


def element() -> tuple[Path, ...]:
    """Four lines, turning at the ends."""
    turns = [(0.0, 0.0), (4.0, 0.0), (4.0, 1.0), (0.0, 1.0), (0.0, 2.0), (4.0, 2.0), (4.0, 3.0)]
    return (as_path(np.array([*turns, (0.0, 3.0)])),)


DESIGN: Final = Design(
    name="straight lines",
    foot="walking foot",
    plain=True,
    kinds=("body", "band", "border", "ground", "piecing", "square", "channel", "corner"),
    suits=lambda _room: True,
    draw=draw,
    sewn={
        "walking foot": "Sew one line, turn at its end, sew along the side to the next line, and "
        "come back. The guide bar of the foot, laid on the line before, keeps the distance.",
        "ruler": "Mark the lines. Lay the thick quilting ruler so that the ruler foot runs on "
        "the mark, and stop with the needle down to move it on.",
        "free motion": "Let the lines sway a little, as grass does: straight ones without a "
        "ruler show each wobble.",
    },
    corner="With the needle down, lift the foot, turn the quilt a quarter and sew along the side "
    "to the next line.",
    element=element,
)
