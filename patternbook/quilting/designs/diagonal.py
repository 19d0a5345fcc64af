"""Slanted lines through the corners of squares, one way or both. Their distance comes from the
squares: no open spot is wider than 1.1 times the spacing told."""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from patternbook.quilting.designs.body import after, halves
from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import Spots, as_path, on_step
from patternbook.quilting.designs.grid import Slant, slants, through
from patternbook.quilting.designs.lines import clipped, straight_lines
from patternbook.quilting.designs.rim import Rim, serpentine
from patternbook.quilting.records import Drawn, Path

LEAST: Final = 0.3
FINEST: Final = 4  # lines lie no closer than a quarter of the grid's step


def drawn(room: Room, spacing: float, ways: tuple[Slant, ...]) -> Drawn | None:
    if not ways:
        return None
    times = fitting(spacing / ways[0].apart)
    told = on_step(times * ways[0].apart, room.rules)
    rim = Rim(room.shape)
    paths = (
        over_all(room, rim, ways, times) if room.kind == "body" else within(room, rim, ways, times)
    )
    return Drawn(tuple(map(as_path, paths)), told, touches=True) if paths else None


def fitting(times: float) -> float:
    """Every line of the grid, every second or third of them, or lines between them: what comes
    nearest to what is wanted."""
    if times >= 1:
        return float(math.floor(times + 0.5))
    return 1 / min(FINEST, max(1, math.floor(1 / times + 0.5)))


def _pieces(room: Room, slant: Slant, times: float) -> tuple[list[Spots], list[int]]:
    lines = straight_lines(room.shape, slant.axes, through(room, slant, times))
    return clipped(lines, room.shape, LEAST * times * slant.apart)


def over_all(room: Room, rim: Rim, ways: tuple[Slant, ...], times: float) -> list[Spots]:
    """From the middle to one corner and, going both ways, on from there; then the other half."""
    first, *second = [halves(*_pieces(room, way, times)) for way in ways]
    paths: list[Spots] = []
    for half in first:
        found = after(rim, paths, half)
        if second and second[0]:
            end = found[-1][-1]
            near = min(range(len(second[0])), key=lambda n: _apart(end, second[0][n][0]))
            found = serpentine(rim, [*found, *after(rim, found, second[0].pop(near))], [0])
        paths += found
    return paths


def _apart(spot: Spots, line: Spots) -> float:
    return round(min(math.dist(spot, end) for end in (line[0], line[-1])), 4)


def within(room: Room, rim: Rim, ways: tuple[Slant, ...], times: float) -> list[Spots]:
    """All lines, whichever way they slant: each goes on where another ends, at the seam."""
    return serpentine(rim, [piece for way in ways for piece in _pieces(room, way, times)[0]])


def element() -> tuple[Path, ...]:
    """Two lines through the corners of four squares."""
    return (as_path(np.array([(0.0, 4.0), (4.0, 0.0), (4.0, 2.0), (2.0, 4.0)])),)


DESIGN: Final = Design(
    name="diagonal lines",
    foot="walking foot",
    plain=True,
    kinds=("body", "piecing"),
    suits=lambda room: bool(slants(room)),
    draw=lambda room, spacing, _seed: drawn(room, spacing, slants(room)),
    sewn={
        "walking foot": "Sew from corner to corner through the squares; at the edge turn and go "
        "on to the next corner. The squares are the marks, so nothing has to be drawn.",
        "ruler": "Lay the thick quilting ruler from corner to corner and sew along it with the "
        "ruler foot; slide it on at each corner.",
    },
    corner="At the edge turn with the needle down, and sew along the edge to where the next line "
    "begins.",
    element=element,
)
