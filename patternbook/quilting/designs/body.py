"""Lines over the whole of a busy top: from the middle out, and not along its seams."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from patternbook.quilting.designs.form import Room
from patternbook.quilting.designs.frame import FINE, Frame, Spots, frame, reach
from patternbook.quilting.designs.lines import Levels, kept, levels
from patternbook.quilting.designs.rim import Rim, serpentine

CLOSEST: Final = 0.25  # spacings: no line comes nearer to the edge
LONG: Final = 0.5  # seams with this share of the corners of the fullest count as long


def halves(pieces: Sequence[Spots], numbers: Sequence[int]) -> list[list[Spots]]:
    """The pieces of lines in two parts: from the middle line to the last, and from the one before
    it to the first."""
    if not pieces:
        return []
    middle = (min(numbers) + max(numbers) + 1) // 2
    order = sorted(range(len(pieces)), key=lambda n: numbers[n])
    later = [pieces[n] for n in order if numbers[n] >= middle]
    earlier = [pieces[n] for n in order[::-1] if numbers[n] < middle]
    return [half for half in (later, earlier) if half]


def middle_out(rim: Rim, pieces: Sequence[Spots], numbers: Sequence[int]) -> list[Spots]:
    """Two paths, one for each half; the second begins on the side where the first ends."""
    paths: list[Spots] = []
    for half in halves(pieces, numbers):
        paths += after(rim, paths, half)
    return paths


def after(rim: Rim, paths: Sequence[Spots], lines: Sequence[Spots]) -> list[Spots]:
    """Lines sewn from the first of them on, from that end of it which is nearer to the end of the
    last path."""
    starts = [nearer_end(rim, paths[-1][-1], lines[0])] if paths else [0, 1]
    return serpentine(rim, lines, starts)


def nearer_end(rim: Rim, spot: Spots, line: Spots) -> int:
    """Which end of a line lies nearer to a spot along the rim."""
    ring, at = rim.places(np.array([spot, line[0], line[-1]]))
    if ring[0] != ring[1] or ring[0] != ring[2]:
        return 0
    whole = rim.rings[int(ring[0])].length
    apart = np.abs(at[1:] - at[0])
    return int(np.argmin(np.round(np.minimum(apart, whole - apart), 4)))


def seam_places(room: Room, axes: Frame) -> NDArray[np.float64]:
    """Across the lines, where long seams run along them: many corners of patches lie on each."""
    values, counts = _lined_up(room, axes)
    _, others = _lined_up(room, axes.across)
    fullest = max([*counts, *others], default=0)
    return values[counts >= LONG * fullest]


def _lined_up(room: Room, axes: Frame) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    if not room.corners:
        return np.zeros(0), np.zeros(0, dtype=np.int64)
    low, high = reach(room.shape, axes)
    places = np.round(axes.turned(np.array(room.corners))[:, 1], 3)
    places = places[(places > low[1] + room.rules.step) & (places < high[1] - room.rules.step)]
    return np.unique(places, return_counts=True)


def body_frame(room: Room) -> Frame:
    """Lines down the top, or across it where fewer long seams run that way."""
    down, level = frame(270), frame(0)
    return level if len(seam_places(room, level)) < len(seam_places(room, down)) else down


def clear_levels(room: Room, axes: Frame, spacing: float, swing: float = 0.0) -> Levels:
    """Lines the spacing apart, moved by as little as keeps them off the long seams; with one line
    more where they cannot be moved without leaving a side too wide. They keep free of the finished
    edge, also where they swing to the sides."""
    low, high = (float(end[1]) for end in reach(room.shape, axes))
    keep = 0.0 if room.free.is_empty else kept(room, axes)
    least = max(CLOSEST * spacing, keep + swing)
    even = levels(low, high, spacing, least)
    seams = seam_places(room, axes)
    if not len(seams):
        return even
    rest = float(even[0]) - low
    tried = list(_moved(even, min(spacing - rest, rest - least), room.rules.step / 2))
    if rest - spacing / 2 >= least:
        more = np.append(even, even[-1] + spacing) - spacing / 2
        tried += _moved(
            more, min(spacing * 3 / 2 - rest, rest - spacing / 2 - least), room.rules.step / 2
        )
    return min(tried, key=lambda one: _badness(one, even, seams, spacing))


def _moved(at: Levels, free: float, step: float) -> Iterator[Levels]:
    """Lines moved to both sides by steps, no further than is free."""
    most = max(0, int((free + FINE) / step))
    for move in range(-most, most + 1):
        yield at + move * step


def _badness(
    at: Levels, even: Levels, seams: NDArray[np.float64], spacing: float
) -> tuple[float, int, float]:
    """How near to a long seam the lines come, up to a quarter of the spacing; then by how much
    they are moved."""
    away = np.abs((seams - at[0] + spacing / 2) % spacing - spacing / 2)
    near = float(np.minimum(away, spacing / 4).mean() + np.minimum(away, spacing / 4).min())
    return -round(near, 4), len(at), round(abs(float(at[0] - even[0])) % spacing, 6)
