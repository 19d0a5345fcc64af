"""Along a line of stitches: how long it is, where a place on it lies, and what a window shows."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import accumulate, pairwise
from typing import Final, NamedTuple

import shapely

from patternbook.quilting.records import Path, Spot, measured
from patternbook.strokes.pen import Pen

Box = tuple[float, float, float, float]
FINE: Final = 0.12  # points: what a drawn line may lie beside the true one
TURNED: Final = math.radians(25)  # a bend of more than this is a corner
NEAR: Final = 1e-9


class Place(NamedTuple):
    """A place on a line, and the way the needle goes there."""

    at: Spot
    along: Spot


class Along:
    """A line, on which places are found by how far along they lie."""

    def __init__(self, path: Path) -> None:
        steps = [(one, other) for one, other in pairwise(path) if math.dist(one, other) > NEAR]
        self._steps = steps or [(path[0], (path[0][0] + NEAR, path[0][1]))]
        ends = accumulate(math.dist(one, other) for one, other in self._steps)
        self._ends = list(ends)

    @property
    def length(self) -> float:
        """How long it is."""
        return self._ends[-1]

    def place(self, share: float) -> Place:
        """The place after that share of it."""
        far = min(max(share, 0.0), 1.0) * self.length
        at = min(bisect_left(self._ends, far), len(self._steps) - 1)
        (ax, ay), (bx, by) = self._steps[at]
        before = self._ends[at - 1] if at else 0.0
        long = self._ends[at] - before
        part, along = (far - before) / long, ((bx - ax) / long, (by - ay) / long)
        return Place((ax + (bx - ax) * part, ay + (by - ay) * part), along)


def fine(pen: Pen, path: Path) -> Path:
    """The line with no more points than can be seen."""
    if len(path) < 3:
        return path
    line = shapely.simplify(shapely.LineString(path), pen.pt(FINE), preserve_topology=False)
    return tuple((float(x), float(y)) for x, y in shapely.get_coordinates(line))


def straights(path: Path, least: float) -> Iterator[Path]:
    """The line in its straight parts; what is shorter than `least` goes with its neighbour."""
    held: list[Spot] = list(path[:1])
    for number, spot in enumerate(path[1:], start=1):
        held.append(spot)
        rest = path[number:]
        turned = len(rest) > 1 and _bend(path[number - 1], spot, path[number + 1]) > TURNED
        if turned and measured(tuple(held)) >= least and measured(rest) >= least:
            yield tuple(held)
            held = [spot]
    if len(held) > 1:
        yield tuple(held)


def _bend(before: Spot, at: Spot, after: Spot) -> float:
    one = math.atan2(at[1] - before[1], at[0] - before[0])
    other = math.atan2(after[1] - at[1], after[0] - at[0])
    return abs((other - one + math.pi) % math.tau - math.pi)


def windowed(path: Path, box: Box) -> Iterator[Path]:
    """The parts of a line inside a box, in the way that it runs."""
    held: list[Spot] = []
    for one, other in pairwise(path):
        part = _clipped(one, other, box)
        if part is None:
            if len(held) > 1:
                yield tuple(held)
            held = []
            continue
        start, end = part
        if not held or math.dist(held[-1], start) > NEAR:
            if len(held) > 1:
                yield tuple(held)
            held = [start]
        held.append(end)
    if len(held) > 1:
        yield tuple(held)


def _clipped(one: Spot, other: Spot, box: Box) -> tuple[Spot, Spot] | None:
    """What of a straight way lies in the box."""
    dx, dy = other[0] - one[0], other[1] - one[1]
    first, last = 0.0, 1.0
    sides = ((-dx, one[0] - box[0]), (dx, box[2] - one[0]))
    for by, room in (*sides, (-dy, one[1] - box[1]), (dy, box[3] - one[1])):
        if abs(by) < NEAR:
            if room < 0:
                return None
        elif by < 0:
            first = max(first, room / by)
        else:
            last = min(last, room / by)
    if first > last:
        return None
    return (one[0] + dx * first, one[1] + dy * first), (one[0] + dx * last, one[1] + dy * last)


def joined(parts: Sequence[Path]) -> Path:
    """Lines that follow one another as one."""
    found: list[Spot] = []
    for part in parts:
        found += part[1:] if found and math.dist(found[-1], part[0]) < NEAR else part
    return tuple(found)
