"""A plan of quilting made by hand, for a top whose long seams run from side to side."""

from collections.abc import Sequence
from itertools import pairwise

import shapely
from shapely import LineString

from patternbook.quilt.place import Patch
from patternbook.quilt.records import Quilt
from patternbook.quilting.records import (
    AnchorLine,
    Area,
    AreaKind,
    BobbinChange,
    Divided,
    Drawn,
    Filled,
    Gap,
    Leg,
    Marked,
    Path,
    QuiltingPlan,
    Stage,
    Sums,
    Top,
    Walk,
    Wishes,
)
from patternbook.quilting.top import top

TALL = 4.0  # rows at least so high are bands of open ground
SPACING = 1.5


def plan_by_hand(quilt: Quilt, patches: Sequence[Patch]) -> QuiltingPlan:
    """The long seams one after the other, then wavy lines in the bands, straight in the rows."""
    laid = top(quilt, patches)
    assert laid is not None
    left, high, right, low = laid.edge.bounds
    seams = [run for run in laid.runs if run.through and run.start[1] == run.end[1]]
    levels = [high, *sorted({round(run.start[1], 6) for run in seams}), low]
    areas = tuple(_areas(left, right, levels))
    fills = tuple(_filled(area) for area in areas)
    marked = Marked(
        ((left + 3, high), (left + 3, levels[1])),
        "cut",
        "A line down from the top edge, 3″ from the left edge, to the first long seam.",
    )
    lines = [AnchorLine(((left, y), (right, y)), "ditch") for y in levels[1:-1]]
    lines.append(AnchorLine(marked.path, "marked"))
    stages = (_anchor(lines, left, right), *_fills(fills))
    return QuiltingPlan(
        laid,
        Wishes("walking foot", 4.0, limit_stated=False),
        Divided(areas, (marked,)),
        fills,
        tuple(lines),
        stages,
        Gap(2.125, 2.126, (right - 3, low - 3)),
        Gap(3.5, 3.501, (right, low)),
        _sums(laid, stages),
        {
            "P": {"walking foot": "wavy lines", "free motion": "meander"},
            "Q": {"walking foot": "straight lines", "ruler": "straight lines"},
        },
    )


def _areas(left: float, right: float, levels: Sequence[float]) -> list[Area]:
    counts = {"P": 0, "Q": 0}
    found = []
    for one, other in pairwise(levels):
        letter = "P" if other - one >= TALL else "Q"
        counts[letter] += 1
        shape = shapely.box(left, one, right, other)
        kind: AreaKind = "band" if letter == "P" else "piecing"
        busy = 0.0 if letter == "P" else 0.4
        found.append(Area(letter, counts[letter], kind, shape, busy, ("A",)))
    return sorted(found, key=lambda area: (area.letter, area.number))


def _filled(area: Area) -> Filled:
    left, high, right, low = area.shape.bounds
    spots: list[tuple[float, float]] = []
    x, down = left + 0.5, True
    while x <= right - 0.5:
        ends = (high + 0.25, low - 0.25) if down else (low - 0.25, high + 0.25)
        spots += [(x, ends[0]), (x, ends[1])]
        x, down = x + SPACING, not down
    path: Path = tuple(spots)
    design = "straight lines"
    return Filled(area, design, "walking foot", Drawn((path,), SPACING), SPACING, 0.6)


def _anchor(lines: Sequence[AnchorLine], left: float, right: float) -> Stage:
    legs: list[Leg] = []
    at = left
    for line in lines[:-1]:
        path = line.path if at == left else line.path[::-1]
        if legs:
            legs.append(Leg("edge", (legs[-1].path[-1], path[0])))
        legs.append(Leg("ditch", path))
        at = right if at == left else left
    needed = sum(right - left for _ in lines[:-1])
    last = Walk((Leg("marked", lines[-1].path),))
    return Stage("anchor", "walking foot", (Walk(tuple(legs)), last), needed, 12.0, 12.0, True)


def _fills(fills: Sequence[Filled]) -> list[Stage]:
    legs: list[Leg] = []
    for fill in fills:
        path = fill.drawn.paths[0]
        if legs:
            end = legs[-1].path[-1]
            corner = (end[0], path[0][1])
            legs.append(Leg("ditch", (end, corner, path[0]), again=True))
        legs.append(Leg("fill", path, fill.area.key))
    return [Stage("lines", "walking foot", (Walk(tuple(legs)),), 900.0, 60.0)]


def _sums(laid: Top, stages: Sequence[Stage]) -> Sums:
    _, _, right, low = laid.edge.bounds
    paths = [leg.path for stage in stages for walk in stage.walks for leg in walk.legs]
    stitched = sum(float(LineString(path).length) for path in paths)
    change = BobbinChange(1, 0, (right, low / 2), "edge", 0.9)
    passes = {1: stitched * 0.9, 2: stitched * 0.05}
    once = stitched * 0.95
    return Sums(stitched, once, passes, 3, 2, (change,), 58.0, 52.0, (1.25, 2.5), 0.05)
