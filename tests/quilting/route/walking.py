"""A second pair of eyes on the stages of fills: it goes over the cloth with shapes alone, and knows
nothing of graphs, costs or orders. Also tops of plain squares to try on."""

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import pairwise

import shapely
from shapely import LineString, Polygon

from patternbook.quilting.records import (
    AnchorLine,
    Area,
    AreaKind,
    Drawn,
    Filled,
    Foot,
    Leg,
    Path,
    Seam,
    Spot,
    Stage,
    Top,
)
from patternbook.quilting.top import RULES

INCHES = RULES["in"]
NEAR = 2e-3


def wrong(
    top: Top,
    lines: Sequence[AnchorLine],
    anchor: Stage | None,
    fills: Sequence[Filled],
    stages: Sequence[Stage],
) -> list[str]:
    """All that is wrong with the stages, in words."""
    found = [*_jumps(stages), *_not_filled(fills, stages), *_astray(top, lines, fills, stages)]
    found += _wrong_again(anchor, stages)
    found += _wrong_sums(stages)
    return found


def _legs(stages: Sequence[Stage]) -> Iterator[Leg]:
    for stage in stages:
        for walk in stage.walks:
            yield from walk.legs


def _jumps(stages: Sequence[Stage]) -> Iterator[str]:
    for stage in stages:
        for walk in stage.walks:
            if not walk.legs:
                yield f"{stage.name}: a walk of nothing"
            for one, other in pairwise(walk.legs):
                if one.path[-1] != other.path[0]:
                    yield f"{stage.name}: a jump from {one.path[-1]} to {other.path[0]}"


def _not_filled(fills: Sequence[Filled], stages: Sequence[Stage]) -> Iterator[str]:
    sewn: dict[str, list[Path]] = defaultdict(list)
    for leg in _legs(stages):
        if leg.area:
            sewn[leg.area].append(leg.path)
    for fill in fills:
        wanted = [LineString(path) for path in fill.drawn.paths]
        made = [LineString(path) for path in sewn.pop(fill.area.key, [])]
        long, done = (sum(line.length for line in those) for those in (wanted, made))
        if abs(long - done) > NEAR * max(1, len(made)):
            yield f"{fill.area.key}: {done} sewn of {long}"
        missing = shapely.difference(
            shapely.union_all(wanted), shapely.union_all(made).buffer(NEAR)
        )
        if missing.length > NEAR:
            yield f"{fill.area.key}: {missing.length} of its lines missing"
    for key in sewn:
        yield f"{key}: sewn and not a fill"


def _astray(
    top: Top, lines: Sequence[AnchorLine], fills: Sequence[Filled], stages: Sequence[Stage]
) -> Iterator[str]:
    seams = [seam.path for seam in top.seams]
    allowed = {
        kind: shapely.union_all(
            [LineString(path) for path in own]
            + [LineString(line.path) for line in lines if line.kind == kind]
        ).buffer(NEAR)
        for kind, own in (("ditch", seams), ("beside", []), ("marked", []))
    }
    allowed["edge"] = top.edge.boundary.buffer(NEAR)
    shapely.prepare(around := top.edge.buffer(NEAR))
    ends = _ends(fills)
    for leg in _legs(stages):
        line = LineString(leg.path)
        if not around.covers(line):
            yield f"{leg.kind} outside the top: {leg.path[0]} to {leg.path[-1]}"
        if leg.kind == "step":
            if line.distance(ends) > NEAR:
                yield f"a step away from all fills at {leg.path[0]}"
        elif leg.kind != "fill" and not allowed[leg.kind].covers(line):
            yield f"{leg.kind} where there is none: {leg.path[0]} to {leg.path[-1]}"


def _ends(fills: Sequence[Filled]) -> shapely.Geometry:
    return shapely.MultiLineString([path for fill in fills for path in fill.drawn.paths])


def _wrong_again(anchor: Stage | None, stages: Sequence[Stage]) -> Iterator[str]:
    """What is told as stitched before must have been, and what is not must not, most of it."""
    before = [LineString(leg.path) for leg in _legs([anchor] if anchor else [])]
    for leg in _legs(stages):
        line = LineString(leg.path)
        old = shapely.union_all([b for b in before if b.distance(line) < NEAR])
        share = line.intersection(old.buffer(NEAR)).length / line.length if before else 0.0
        if leg.kind != "fill" and leg.area == "" and line.length > 20 * NEAR:
            if leg.again and share < 0.999:
                yield f"{leg.kind} at {leg.path[0]} told as stitched before: {share}"
            if not leg.again and share > 0.999:
                yield f"{leg.kind} at {leg.path[0]} told as new"
        before.append(line)


def _wrong_sums(stages: Sequence[Stage]) -> Iterator[str]:
    for stage in stages:
        whole = sum(LineString(leg.path).length for leg in _legs([stage]))
        if abs(stage.needed + stage.extra - whole) > 1e-6 * max(1.0, whole):
            yield f"{stage.name}: {stage.needed} and {stage.extra} are not {whole}"


def winding(box: tuple[float, float, float, float], lines: int, *, upright: bool = False) -> Path:
    """Lines to and fro over a box."""
    left, top, right, bottom = box
    if upright:
        return tuple((y, x) for x, y in winding((top, left, bottom, right), lines))
    spots: list[Spot] = []
    for line in range(lines):
        y = top + (bottom - top) * line / max(1, lines - 1)
        spots += [(left, y), (right, y)] if line % 2 == 0 else [(right, y), (left, y)]
    return tuple(spots)


def ring(centre: Spot, radius: float, steps: int = 40) -> Path:
    """A circle, closed."""
    around = [step / steps * math.tau for step in range(steps)]
    spots = [
        (round(centre[0] + radius * math.cos(a), 6), round(centre[1] + radius * math.sin(a), 6))
        for a in around
    ]
    return (*spots, spots[0])


def filled(
    number: int,
    shape: Polygon,
    path: Path,
    *,
    foot: Foot = "walking foot",
    kind: AreaKind = "square",
    more: tuple[Path, ...] = (),
    touches: bool = False,
) -> Filled:
    area = Area("P", number, kind, shape, 0.0)
    drawn = Drawn((path, *more), 1.0, path[0] == path[-1], touches)
    return Filled(area, "trial", foot, drawn, 1.0, 1.0)


def board(across: int, down: int, size: float = 6.0) -> Top:
    """A top of squares, all seams pressed to a side."""
    seams = []
    for row in range(down):
        for column in range(across):
            x, y = column * size, row * size
            number = row * across + column
            if column + 1 < across:
                path = ((x + size, y), (x + size, y + size))
                seams.append(Seam(path, (number, number + 1), 1, False, False))
            if row + 1 < down:
                path = ((x, y + size), (x + size, y + size))
                seams.append(Seam(path, (number, number + across), 1, False, False))
    edge = shapely.box(0, 0, across * size, down * size)
    return Top(INCHES, edge, edge, (), tuple(seams), ())


def square(column: int, row: int, size: float = 6.0) -> Polygon:
    return shapely.box(column * size, row * size, (column + 1) * size, (row + 1) * size)
