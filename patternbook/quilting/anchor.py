"""The first stage: which lines hold the three layers before anything is filled, and the walks
over them."""

from __future__ import annotations

import itertools
import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon

from patternbook.quilting.least import least
from patternbook.quilting.net import Net
from patternbook.quilting.noding import NEAR
from patternbook.quilting.offers import offered
from patternbook.quilting.records import AnchorLine, Divided, Path, Run, Seam, Spot, Stage, Top
from patternbook.quilting.runs import runs
from patternbook.quilting.strands import Strands, strands
from patternbook.quilting.trails import trails, walk

# Inches between the long lines: nearer ones than the first are thinned, to about the second.
# They are to hold the layers, at the distance that basting has (common practice, no source).
CLOSE: Final = 6.0
USUAL: Final = 8.0


def anchor_lines(top: Top, divided: Divided) -> tuple[AnchorLine, ...]:
    """The lines of the first stage: the seams of the borders, the long seams between the parts
    of the top, the outlines of the areas where they are seams, and the marked lines."""
    borders = [run for run in top.runs if run.border]
    long = list(_long(top))
    chosen = borders + [run for run in long if not run.opened]
    ditches = [AnchorLine((run.start, run.end), "ditch", run.border) for run in chosen]
    beside = [line for run in long if run.opened for line in _beside(top, run)]
    outlines = [AnchorLine(path, "ditch") for path in _outlines(top, divided, chosen)]
    marked = [AnchorLine(line.path, "marked") for line in divided.marked]
    return (*ditches, *beside, *outlines, *marked)


def _long(top: Top) -> Iterator[Run]:
    """Those that run right through between the parts of the top, thinned where they are close."""
    ways: dict[float, list[Run]] = defaultdict(list)
    for run in top.runs:
        if run.through and run.depth == 1 and not run.border:
            ways[_slope(run)].append(run)
    for slope, group in sorted(ways.items()):
        yield from _thinned(top, slope, group)


def _slope(run: Run) -> float:
    (x0, y0), (x1, y1) = run.start, run.end
    return round(math.atan2(y1 - y0, x1 - x0) % math.pi, 4) % round(math.pi, 4)


def _across(slope: float) -> Spot:
    """The way across lines of a slope: down, or to the right."""
    x, y = -math.sin(slope), math.cos(slope)
    return (x, y) if y > NEAR else (abs(x), 0.0) if abs(y) <= NEAR else (-x, -y)


def _thinned(top: Top, slope: float, group: Sequence[Run]) -> Iterator[Run]:
    x, y = _across(slope)
    places = [(round(run.start[0] * x + run.start[1] * y, 4), run) for run in group]
    places.sort(key=lambda pair: (pair[0], pair[1].start))
    rim = [px * x + py * y for px, py in top.inside.exterior.coords]
    marks = [min(rim), *dict.fromkeys(place for place, _ in places), max(rim)]
    inch = top.rules.inch
    gaps = [b - a for a, b in itertools.pairwise(marks)]
    if min(gaps[1:-1], default=math.inf) >= CLOSE * inch - NEAR:
        yield from group
        return
    kept = set(_even(marks, USUAL * inch))
    yield from (run for place, run in places if place in kept)


def _even(marks: Sequence[float], usual: float) -> list[float]:
    """Of the marks between the first and the last those that divide the way most evenly."""
    middle = (marks[0] + marks[-1]) / 2
    best: list[tuple[float, int]] = [(0.0, 0)]
    for number in range(1, len(marks)):
        aside = 1e-6 * abs(marks[number] - middle)  # of two as even the one nearer to the middle
        best.append(
            min(
                (round(best[n][0] + aside + _uneven(marks[number] - marks[n], usual), 9), n)
                for n in range(number)
            )
        )
    found, number = [], best[-1][1]
    while number:
        found.append(marks[number])
        number = best[number][1]
    return found


def _uneven(gap: float, usual: float) -> float:
    return gap * (gap / usual - 1) ** 2


def _beside(top: Top, run: Run) -> Iterator[AnchorLine]:
    """The line beside a seam that is pressed open, from rim to rim."""
    far = top.rules.beside
    (x0, y0), (x1, y1) = run.start, run.end
    x, y = (y0 - y1) / run.length, (x1 - x0) / run.length
    if (round(y, 6), round(x, 6)) < (0, 0):
        x, y = -x, -y
    stretch = 2 * far / max(run.length, far)
    dx, dy = (x1 - x0) * stretch, (y1 - y0) * stretch
    line = LineString(
        [(x0 - dx + x * far, y0 - dy + y * far), (x1 + dx + x * far, y1 + dy + y * far)]
    )
    whole = top.edge if _reaches(top.edge, run) else top.inside
    for part in shapely.get_parts(shapely.intersection(line, whole)):
        if part.geom_type == "LineString" and part.length > NEAR:
            ends = shapely.get_coordinates(part)
            yield AnchorLine(tuple((float(a), float(b)) for a, b in ends), "beside")


def _reaches(edge: Polygon, run: Run) -> bool:
    ends = shapely.points([run.start, run.end])
    return bool((shapely.distance(ends, edge.exterior) < NEAR).all())


def _outlines(top: Top, divided: Divided, chosen: Sequence[Run]) -> Iterator[Path]:
    """The outlines of the areas where they are seams, but for those chosen before; a seam that is
    pressed open is left out."""
    rims = [area.shape.boundary for area in divided.areas if area.kind not in ("body", "border")]
    offered = [seam for seam in top.seams if not seam.opened and not seam.border]
    if not rims or not offered:
        return
    lines = [LineString((run.start, run.end)) for run in chosen]
    on = _lying(offered, rims) & ~_lying(offered, lines)
    found = [seam for seam, here in zip(offered, on.tolist(), strict=True) if here]
    yield from ((run.start, run.end) for run in runs(found, top.edge, top.inside))
    yield from (seam.path for seam in found if len(seam.path) > 2)


def _lying(seams: Sequence[Seam], lines: Iterable[shapely.Geometry]) -> NDArray[np.bool_]:
    """Which seams lie wholly on one of the lines or another."""
    tree = shapely.STRtree(np.array(list(lines), dtype=object))
    found = np.full(len(seams), True)
    paths = np.array([LineString(seam.path) for seam in seams], dtype=object)
    for share in (0.1, 0.5, 0.9):
        spots = shapely.line_interpolate_point(paths, share, normalized=True)
        numbers, _ = tree.query(spots, predicate="dwithin", distance=NEAR)
        near = np.full(len(seams), False)
        near[numbers] = True
        found &= near
    return found


def anchor_stage(top: Top, lines: Sequence[AnchorLine]) -> Stage:
    """The walks over all anchor lines that need the least stitching besides, of all walks that go
    straight on where lines cross (but for lines that can be reached in no other way) and come
    from line to line along the finished edge or over a line again; where lines end inside of
    the top, in the ditch of the seams that lead on from there, too."""
    net = Net.of(top, lines)
    if not any(net.needed):
        return Stage("anchor", "walking foot", (), 0.0, 0.0, 0.0, proven=True)
    ways = strands(net, offered(net))
    found = least(ways, top.rules.inch, _from_corners(top, net, ways))
    walks = tuple(walk(net, steps) for steps in trails(net, ways, found))
    needed = sum(length for length, need in zip(net.lengths, net.needed, strict=True) if need)
    return Stage("anchor", "walking foot", walks, needed, found.extra, found.bound, found.proven)


def _from_corners(top: Top, net: Net, ways: Strands) -> dict[int, float]:
    """How little each start is liked, in inches: by how far it is from the nearest corner of the
    quilt; best of all the one at the top left, where the first row begins."""
    left, above, right, below = top.edge.bounds
    corners = [(x, y) for x in (left, right) for y in (above, below)]
    spots = {start: net.spots[ways.nodes[start]] for start in ways.starts}
    far = {s: min(math.dist(at, corner) for corner in corners) for s, at in spots.items()}
    first = min(spots, key=lambda s: (round(math.dist(spots[s], corners[0]), 4), spots[s]))
    wide = right - left + below - above
    return {s: (0.0 if s == first else wide + far[s]) / top.rules.inch for s in spots}
