"""The straight lines that seams at the open ground lie on."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import Final

import shapely
from shapely import LineString, Polygon

from patternbook.quilting.areas.roots import NEAR
from patternbook.quilting.areas.splitting import Key, carried, line_key
from patternbook.quilting.records import Rules, Top

SHORT: Final = 1 / 4  # inch: nothing so short is marked
LEAST: Final = 1 / 2  # inch: shorter seams (steps of a round one) give no direction


class SeamLines:
    """The seams at the grounds of a top, by the line that they lie on."""

    def __init__(self, top: Top, grounds: Sequence[Polygon]) -> None:
        self._rules: Rules = top.rules
        x0, y0, x1, y1 = top.edge.bounds
        self._reach = math.hypot(x1 - x0, y1 - y0)
        least = LEAST * top.rules.inch
        runs = [LineString((run.start, run.end)) for run in top.runs if run.length > least]
        near: set[int] = set()
        if grounds:
            found = shapely.STRtree(runs).query(list(grounds), predicate="dwithin", distance=NEAR)
            near.update(found[1].tolist())
        self._runs = [runs[n] for n in sorted(near)]
        self._keys = [line_key(run) for run in self._runs]
        self._tree = shapely.STRtree(self._runs)
        self._spans: dict[Key, list[tuple[float, float]]] = defaultdict(list)
        for key, run in zip(self._keys, self._runs, strict=True):
            self._spans[key].append(_span(key, run))

    def at(self, part: Polygon) -> list[LineString]:
        """The lines of the seams at a part, each once, carried on through all of it."""
        near = sorted(int(n) for n in self._tree.query(part, predicate="dwithin", distance=NEAR))
        lines = {self._keys[n]: self._runs[n] for n in reversed(near)}
        return [carried(lines[key], self._reach) for key in sorted(lines)]

    def sewn(self, chord: LineString) -> float:
        """How much of a chord lies on seams."""
        return float(chord.length) - sum(end - start for start, end in self._free(chord))

    def bare(self, chord: LineString) -> list[LineString]:
        """What of a chord lies on no seam, each from the seam that it carries on."""
        key = line_key(chord)
        long = [
            (start, end)
            for start, end in self._free(chord)
            if end - start > SHORT * self._rules.inch
        ]
        sewn = {place for span in self._spans.get(key, []) for place in span}
        found = []
        for start, end in long:
            piece = LineString([_spot(key, chord, start), _spot(key, chord, end)])
            begins, ends = (any(abs(at - one) < NEAR for one in sewn) for at in (start, end))
            found.append(piece.reverse() if ends and not begins else piece)
        return found

    def _free(self, chord: LineString) -> Iterator[tuple[float, float]]:
        """The stretches of a chord, along its line, that no seam covers."""
        key = line_key(chord)
        at, end = _span(key, chord)
        for first, last in sorted(self._spans.get(key, [])):
            if first > at + NEAR:
                yield at, min(first, end)
            at = max(at, last)
            if at > end - NEAR:
                return
        if end > at + NEAR:
            yield at, end


def _span(key: Key, line: LineString) -> tuple[float, float]:
    """Where along its line a stretch begins and ends."""
    ends = line.coords[0], line.coords[-1]
    first, last = (x * math.cos(key[0]) + y * math.sin(key[0]) for x, y in ends)
    return min(first, last), max(first, last)


def _spot(key: Key, chord: LineString, at: float) -> tuple[float, float]:
    """The point so far along the line of a chord."""
    (ax, ay), (bx, by) = chord.coords[0], chord.coords[-1]
    first, last = (x * math.cos(key[0]) + y * math.sin(key[0]) for x, y in ((ax, ay), (bx, by)))
    share = (at - first) / (last - first)
    return ax + (bx - ax) * share, ay + (by - ay) * share
