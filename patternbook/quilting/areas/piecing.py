"""What is left of a top around its open ground, cut along seams where it is no compact shape."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from typing import Final, NamedTuple

import numpy as np
import shapely
from shapely import LineString, Polygon

from patternbook.quilting.areas.shapes import Line, across, full, holds_circle, slabs
from patternbook.quilting.records import Run, Top

COMPACT: Final = 0.7  # of its hull: such a shape is quilted in one
LEAST: Final = 1.5  # in: what is narrower is a sliver
DEEP: Final = 12  # cuts into cuts, at the most
ROWS: Final = 6  # sets of parallel lines, and
WAYS: Final = 40  # lines, tried for one cut
SHARE: Final = math.pi / 24
WITHIN: Final = 1e-4  # what runs along the rim is not in the shape


class Known(NamedTuple):
    """What is known of a line of seams in a shape: the least depth, and the length."""

    depth: int
    length: float


def regions(left: Sequence[Polygon], top: Top) -> list[Polygon]:
    """The shapes, each compact and without a hole."""
    return [part for shape in left for part in _compact(shape, top, DEEP)]


def whole(shape: Polygon) -> bool:
    """Whether it needs no cut."""
    return not shape.interiors and full(shape) >= COMPACT


def _compact(shape: Polygon, top: Top, deep: int) -> Iterator[Polygon]:
    best = _cut(shape, top) if deep and not whole(shape) else [shape]
    if len(best) > 1:
        for part in best:
            yield from _compact(part, top, deep - 1)
    else:
        yield from unholed(shape)


def _cut(shape: Polygon, top: Top) -> list[Polygon]:
    """The best cut along seams: between rows, columns or blocks if that leaves no ring, else along
    any one line; in one piece where no cut betters it."""
    lines = _lines(shape, top.runs)
    best, cost = [shape], _cost([shape], top.rules.inch)
    for ways in (_rows(lines), [[line] for line in _longest(lines)]):
        for way in ways:
            parts = slabs(shape, way)
            new = _cost(parts, top.rules.inch)
            if new < cost:
                best, cost = parts, new
        if len(best) > 1 and cost[0] == 0:
            break
    return best


def _cost(parts: Sequence[Polygon], inch: float) -> tuple[int, float]:
    """How bad a cut is: rings first, then what the parts lack of their hulls, what is cut off as
    slivers, and how many parts there are."""
    rings = sum(len(part.interiors) for part in parts)
    lack = sum(float(part.convex_hull.area) - float(part.area) for part in parts)
    size = sum(float(part.area) for part in parts)
    narrow = sum(float(p.area) for p in parts if not holds_circle(p, LEAST * inch))
    return rings, round((lack + 2 * narrow) / size + 0.02 * len(parts), 6)


def _rows(lines: Mapping[Line, Known]) -> list[list[Line]]:
    """The lines of one direction and depth, together: the seams between rows or blocks."""
    rows: dict[tuple[int, float], list[Line]] = defaultdict(list)
    for line, known in lines.items():
        rows[known.depth, line.angle].append(line)
    return [rows[key] for key in sorted(rows)[:ROWS]]


def _longest(lines: Mapping[Line, Known]) -> list[Line]:
    def order(line: Line) -> tuple[int, float, Line]:
        return lines[line].depth, -round(lines[line].length, 4), line

    return sorted(lines, key=order)[:WAYS]


def _lines(shape: Polygon, runs: Sequence[Run]) -> dict[Line, Known]:
    """The lines that a shape could be cut along: all that such a line has in the shape is seam."""
    inner = shape.buffer(-WITHIN)
    near = [run for run in runs if _meets(run, shape.bounds)]
    if not near:
        return {}
    paths = np.array([LineString([run.start, run.end]) for run in near])
    lengths = shapely.length(shapely.intersection(paths, inner))
    seamed: dict[Line, Known] = {}
    for run, length in zip(near, lengths, strict=True):
        if length > 10 * WITHIN:
            line = _line(run)
            known = seamed.get(line, Known(run.depth, 0.0))
            seamed[line] = Known(min(known.depth, run.depth), known.length + float(length))
    chords = [_chord(line, shape) for line in seamed]
    within = shapely.length(shapely.intersection(np.array(chords, dtype=object), inner))
    return {
        line: known
        for (line, known), length in zip(seamed.items(), within, strict=True)
        if length <= known.length + 100 * WITHIN
    }


def _meets(run: Run, box: tuple[float, ...]) -> bool:
    left, up, right, down = box
    (x0, y0), (x1, y1) = run.start, run.end
    beside = max(x0, x1) < left or min(x0, x1) > right
    return not (beside or max(y0, y1) < up or min(y0, y1) > down)


def _line(run: Run) -> Line:
    """The line of a run; slopes that are a share of a turn are told exactly, so that no hair is
    left along a cut."""
    (x0, y0), (x1, y1) = run.start, run.end
    slope = math.atan2(y1 - y0, x1 - x0) % math.pi
    share = round(slope / SHARE)
    angle = (share * SHARE if abs(slope - share * SHARE) < 1e-6 else round(slope, 9)) % math.pi
    return Line(angle, round(across(Line(angle, 0.0), run.start), 9))


def _chord(line: Line, shape: Polygon) -> LineString:
    """The line as long as the shape could need it."""
    far = 2 * math.sqrt(2) * max(abs(value) for value in (*shape.bounds, 1.0))
    along = math.cos(line.angle), math.sin(line.angle)
    foot = -line.at * along[1], line.at * along[0]
    return LineString([(foot[0] + way * along[0], foot[1] + way * along[1]) for way in (-far, far)])


def unholed(shape: Polygon) -> Iterator[Polygon]:
    """A shape cut through the middles of its holes, where no seam leads."""
    if not shape.interiors:
        yield shape
        return
    left, up, right, down = Polygon(shape.interiors[0]).bounds
    upright = down - up < right - left
    line = Line(math.pi / 2, -(left + right) / 2) if upright else Line(0.0, (up + down) / 2)
    for part in slabs(shape, [line]):
        yield from unholed(part)
