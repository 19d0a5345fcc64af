"""Seams that run on in one straight line."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import Final

from shapely import LinearRing, Point, Polygon

from patternbook.quilting.records import Run, Seam, Spot

NEAR: Final = 1e-4
Line = tuple[float, float]


def runs(seams: Sequence[Seam], edge: Polygon, inside: Polygon) -> tuple[Run, ...]:
    """The straight runs, by slope, place and start. A run is broken where it comes to a gap, or
    from a seam pressed open to one that is not, or from a border's seam to another's."""
    lines: dict[tuple[Line, bool, bool], list[tuple[float, float, Seam]]] = defaultdict(list)
    for seam in seams:
        if len(seam.path) == 2:
            line, start, end = _on_line(seam)
            lines[line, seam.opened, seam.border].append((start, end, seam))
    rims = edge.exterior, inside.exterior
    return tuple(
        run for (line, *_), parts in sorted(lines.items()) for run in _joined(line, parts, rims)
    )


def _on_line(seam: Seam) -> tuple[Line, float, float]:
    """The line as its direction (0 up to half a turn) and distance from the corner of the top, and
    where on it the seam starts and ends."""
    (x0, y0), (x1, y1) = seam.path
    angle = round(math.atan2(y1 - y0, x1 - x0) % math.pi, 6) % round(math.pi, 6)
    along, across = (math.cos(angle), math.sin(angle)), (-math.sin(angle), math.cos(angle))
    at = round((x0 * across[0] + y0 * across[1]) / NEAR) * NEAR
    first, last = (x * along[0] + y * along[1] for x, y in seam.path)
    return (angle, round(at, 4)), min(first, last), max(first, last)


def _joined(
    line: Line, parts: list[tuple[float, float, Seam]], rims: Sequence[LinearRing]
) -> Iterator[Run]:
    run: list[Seam] = []
    reached = -math.inf
    for start, end, seam in sorted(parts, key=lambda part: part[:2]):
        if run and start > reached + NEAR:
            yield _run(line, run, rims)
            run = []
        run.append(seam)
        reached = end if len(run) == 1 else max(reached, end)
    if run:
        yield _run(line, run, rims)


def _on(rim: LinearRing, spot: Spot) -> bool:
    return float(rim.distance(Point(spot))) < 10 * NEAR


def _run(line: Line, seams: Sequence[Seam], rims: Sequence[LinearRing]) -> Run:
    along = (math.cos(line[0]), math.sin(line[0]))

    def place(spot: Spot) -> float:
        return spot[0] * along[0] + spot[1] * along[1]

    ends = sorted((spot for seam in seams for spot in seam.path), key=place)
    start, end = ends[0], ends[-1]
    through = any(all(_on(rim, spot) for spot in (start, end)) for rim in rims)
    depth = min(seam.depth for seam in seams)
    return Run(start, end, depth, seams[0].opened, seams[0].border, through)
