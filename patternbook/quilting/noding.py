"""Lines cut wherever they meet: the ways that the needle may go, each from one meeting to the
next."""

from __future__ import annotations

import itertools
import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from patternbook.quilting.records import AnchorLine, LegKind, Path, Spot, Top, measured

NEAR: Final = 1e-3  # nothing on a top is finer; nearer than this is the same place
SAME: Final = 1e-5  # coordinates that differ by less are equal but for floats


class Way(NamedTuple):
    """A stretch between two meetings. `needed`: it must be stitched."""

    kind: LegKind
    path: Path
    needed: bool = False


def ways(top: Top, lines: Sequence[AnchorLine], more: Sequence[Way]) -> list[Way]:
    """All ways over a top: its seams, its finished edge, the anchor lines and what else there is,
    cut where they meet. What lies on a seam is the seam."""
    seams = [Way("ditch", seam.path) for seam in top.seams]
    others = [Way(line.kind, line.path, True) for line in lines if line.kind != "ditch"]
    others += more
    ditches = [line.path for line in lines if line.kind == "ditch"]
    cut = _cut(seams, others, [spot for path in ditches for spot in (path[0], path[-1])])
    rim = _rim(top, cut)
    return _marked(_single([*cut, *rim]), ditches)


def _lines(paths: Iterable[Path]) -> NDArray[np.object_]:
    found = [shapely.LineString(path) for path in paths]
    return np.array(found, dtype=object)


def _cut(seams: Sequence[Way], others: Sequence[Way], ends: Sequence[Spot]) -> list[Way]:
    every = [*seams, *others]
    at: dict[int, list[Spot]] = defaultdict(list)
    if others:
        _meetings(_lines(way.path for way in every), len(seams), at)
    if ends and seams:
        _touched(_lines(way.path for way in seams), ends, at)
    return [part for number, way in enumerate(every) for part in _parts(way, at.get(number, ()))]


def _meetings(lines: NDArray[np.object_], first: int, at: dict[int, list[Spot]]) -> None:
    """Where the lines from `first` on meet any line."""
    tree = shapely.STRtree(lines)
    ours, theirs = tree.query(lines[first:], predicate="dwithin", distance=NEAR)
    ours = ours + first
    apart = (ours != theirs) & ((theirs < first) | (ours < theirs))
    ours, theirs = ours[apart], theirs[apart]
    crossed = shapely.intersection(lines[ours], lines[theirs])
    for one, other, meeting in zip(ours.tolist(), theirs.tolist(), crossed, strict=True):
        spots = [(float(x), float(y)) for x, y in shapely.get_coordinates(meeting)]
        spots += _ends_on(lines[one], lines[other]) + _ends_on(lines[other], lines[one])
        at[one] += spots
        at[other] += spots


def _ends_on(line: shapely.LineString, other: shapely.LineString) -> list[Spot]:
    ends = shapely.get_coordinates(line)[[0, -1]]
    near = shapely.distance(shapely.points(ends), other) < NEAR
    return [(float(x), float(y)) for x, y in ends[near]]


def _touched(lines: NDArray[np.object_], ends: Sequence[Spot], at: dict[int, list[Spot]]) -> None:
    """Where an end lies on a line, and not at an end of it."""
    points = shapely.points(ends)
    numbers, touched = shapely.STRtree(lines).query(points, predicate="dwithin", distance=NEAR)
    for number, line in zip(numbers.tolist(), touched.tolist(), strict=True):
        at[line].append(ends[number])


def _parts(way: Way, spots: Sequence[Spot]) -> Iterator[Way]:
    if not spots:
        yield way
        return
    line = shapely.LineString(way.path)
    places = shapely.line_locate_point(line, shapely.points(spots))
    inner = {round(float(p), 6): s for p, s in zip(places, spots, strict=True)}
    marks = [(p, s) for p, s in sorted(inner.items()) if NEAR < p < line.length - NEAR]
    thinned = [m for i, m in enumerate(marks) if i == 0 or m[0] - marks[i - 1][0] > SAME]
    for path in split(way.path, thinned):
        yield way._replace(path=path)


def split(path: Path, marks: Sequence[tuple[float, Spot]]) -> Iterator[Path]:
    """A path cut at so far along it, each cut made at the given spot; marks in order."""
    part, reached, waiting = [path[0]], 0.0, list(marks)
    for start, end in itertools.pairwise(path):
        far = reached + math.dist(start, end)
        while waiting and waiting[0][0] < far - SAME:
            place, spot = waiting.pop(0)
            if place > reached + SAME:
                part.append(spot)
            yield tuple(part)
            part = [spot]
        if waiting and waiting[0][0] <= far + SAME:
            _, spot = waiting.pop(0)
            yield (*part, spot)
            part = [spot]
        else:
            part.append(end)
        reached = far
    if len(part) > 1:
        yield tuple(part)


def _rim(top: Top, cut: Sequence[Way]) -> list[Way]:
    """The finished edge, cut where anything ends on it, else at its first corner."""
    rim = top.edge.exterior
    ends = np.array([spot for way in cut for spot in (way.path[0], way.path[-1])])
    corners = tuple((float(x), float(y)) for x, y in rim.coords)
    if not len(ends):
        return [Way("edge", corners)]
    points = np.array(shapely.points(ends), dtype=object)
    shapely.prepare(rim)
    on = shapely.dwithin(points, rim, NEAR)
    spots = [(float(x), float(y)) for x, y in ends[on]]
    if not spots:
        return [Way("edge", corners)]
    places = shapely.line_locate_point(rim, points[on])
    marks = sorted({round(float(p), 6): s for p, s in zip(places, spots, strict=True)}.items())
    thinned = [m for i, m in enumerate(marks) if i == 0 or m[0] - marks[i - 1][0] > NEAR]
    parts = list(split(corners, [m for m in thinned if NEAR < m[0] < rim.length - NEAR]))
    starts_cut = marks[0][0] <= NEAR or marks[-1][0] >= rim.length - NEAR
    if len(parts) > 1 and not starts_cut:
        parts = [(*parts[-1], *parts[0][1:]), *parts[1:-1]]
    return [Way("edge", part) for part in parts]


def _single(found: Sequence[Way]) -> list[Way]:
    """Of ways that lie on one another only the first, needed if one of them is."""
    by_ends: dict[tuple[int, int], list[int]] = defaultdict(list)
    nodes = numbered([spot for way in found for spot in (way.path[0], way.path[-1])])[0]
    kept: list[Way | None] = list(found)
    for number, way in enumerate(found):
        one, other = int(nodes[2 * number]), int(nodes[2 * number + 1])
        others = by_ends[min(one, other), max(one, other)]
        twin = next((o for o in others if _alike(found[o].path, way.path)), None)
        if twin is None:
            others.append(number)
            continue
        kept[number] = None
        first = kept[twin]
        if first is not None and way.needed:
            kept[twin] = first._replace(needed=True)
    return [way for way in kept if way is not None and measured(way.path) > NEAR]


def _alike(one: Path, other: Path) -> bool:
    if len(one) == 2 == len(other):
        return True
    middle = shapely.LineString(one).interpolate(0.5, normalized=True)
    return float(shapely.LineString(other).distance(middle)) < NEAR


def _marked(found: list[Way], ditches: Sequence[Path]) -> list[Way]:
    """The ways that lie on a line to be stitched in the ditch are needed."""
    if not ditches:
        return found
    tree = shapely.STRtree(_lines(ditches))
    middles = shapely.line_interpolate_point(_lines(w.path for w in found), 0.5, normalized=True)
    numbers, _ = tree.query(middles, predicate="dwithin", distance=NEAR)
    on = set(numbers.tolist())
    return [way._replace(needed=True) if n in on else way for n, way in enumerate(found)]


def numbered(spots: Sequence[Spot]) -> tuple[NDArray[np.int64], list[Spot]]:
    """The number of the node at each spot, and the nodes: spots that differ by floats' own
    errors only are one."""
    if not spots:
        return np.zeros(0, dtype=np.int64), []
    array = np.array(spots)
    cells = _clusters(array[:, 0]) * (len(spots) + 1) + _clusters(array[:, 1])
    _, first, numbers = np.unique(cells, return_index=True, return_inverse=True)
    order = np.argsort(first, kind="stable")  # numbered as they come, not by where they are
    rank = np.empty_like(order)
    rank[order] = np.arange(len(order))
    return rank[numbers.reshape(-1)], [spots[int(n)] for n in first[order]]


def _clusters(values: NDArray[np.float64]) -> NDArray[np.int64]:
    order = np.argsort(values, kind="stable")
    steps = np.concatenate(([0], np.cumsum(np.diff(values[order]) > SAME)))
    found = np.empty(len(values), dtype=np.int64)
    found[order] = steps
    return found
