"""A second pair of eyes on the first stage: shapes and lengths alone, no nodes and no programme.
Also plain tops to try on."""

import math
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import pairwise

import shapely
from shapely import LineString

from patternbook.edition.pipeline import examine
from patternbook.quilting.records import AnchorLine, Leg, Path, Seam, Spot, Stage, Top
from patternbook.quilting.runs import runs
from patternbook.quilting.top import RULES, top
from tests.support import ROOT

NEAR = 2e-3


def wrong(laid: Top, lines: Sequence[AnchorLine], stage: Stage) -> list[str]:
    """All that is wrong with the stage, in words."""
    return [
        *_jumps(stage),
        *_missing(lines, stage),
        *_off_the_ways(laid, lines, stage),
        *_not_at_the_edge(laid, stage),
        *_wrong_again(stage),
        *_wrong_sums(lines, stage),
    ]


def legs(stage: Stage) -> Iterator[Leg]:
    for walk in stage.walks:
        yield from walk.legs


def length(path: Path) -> float:
    return sum(math.dist(one, other) for one, other in pairwise(path))


def _jumps(stage: Stage) -> Iterator[str]:
    for walk in stage.walks:
        for one, other in pairwise(walk.legs):
            if math.dist(one.path[-1], other.path[0]) > NEAR:
                yield f"a jump from {one.path[-1]} to {other.path[0]}"


def _missing(lines: Sequence[AnchorLine], stage: Stage) -> Iterator[str]:
    sewn = shapely.union_all([LineString(leg.path) for leg in legs(stage)]).buffer(NEAR)
    for line in lines:
        left = LineString(line.path).difference(sewn).length
        if left > NEAR:
            yield f"{left:.3f} of {line.path} is not stitched"


def _off_the_ways(laid: Top, lines: Sequence[AnchorLine], stage: Stage) -> Iterator[str]:
    """In the ditch of seams, on the edge, on lines beside and marked ones, nowhere else."""
    ways: dict[str, list[shapely.Geometry]] = {
        "ditch": [LineString(seam.path) for seam in laid.seams],
        "edge": [laid.edge.exterior],
        "beside": [LineString(line.path) for line in lines if line.kind == "beside"],
        "marked": [LineString(line.path) for line in lines if line.kind == "marked"],
    }
    trees = {kind: shapely.STRtree(shapes) for kind, shapes in ways.items()}
    for leg in legs(stage):
        path = LineString(leg.path)
        near = trees[leg.kind].query(path, predicate="dwithin", distance=NEAR)
        cloth = shapely.union_all([ways[leg.kind][n].buffer(NEAR) for n in near.tolist()])
        if path.difference(cloth).length > NEAR:
            yield f"{leg.kind} leaves its way: {leg.path}"


def _not_at_the_edge(laid: Top, stage: Stage) -> Iterator[str]:
    for walk in stage.walks:
        for spot in (walk.legs[0].path[0], walk.legs[-1].path[-1]):
            if laid.edge.exterior.distance(shapely.Point(spot)) > NEAR:
                yield f"a walk starts or stops inside of the top, at {spot}"


def _wrong_again(stage: Stage) -> Iterator[str]:
    paths = [LineString(leg.path) for leg in legs(stage)]
    wide = [path.buffer(NEAR) for path in paths]
    tree = shapely.STRtree(wide)
    for number, leg in enumerate(legs(stage)):
        # Legs that only cross share no length to speak of.
        before = [wide[n] for n in tree.query(paths[number]).tolist() if n < number]
        twice = paths[number].intersection(shapely.union_all(before)).length
        if (twice > paths[number].length / 2) != leg.again:
            yield f"told wrongly whether it is stitched again: {leg.path}"


def _wrong_sums(lines: Sequence[AnchorLine], stage: Stage) -> Iterator[str]:
    needed = shapely.union_all([LineString(line.path) for line in lines], grid_size=1e-4).length
    if abs(needed - stage.needed) > NEAR * (1 + len(lines)):
        yield f"needed {stage.needed}, counted {needed}"
    stitched = sum(length(leg.path) for leg in legs(stage))
    if abs(stitched - stage.needed - stage.extra) > NEAR:
        yield f"stitched {stitched}, told {stage.needed} and {stage.extra}"


def squares(across: int, down: int, side: float = 6.0, *, opened: bool = False) -> Top:
    """A top of squares of one size."""

    def number(x: int, y: int) -> int:
        return y * across + x

    seams = []
    for y in range(down):
        for x in range(across):
            right, below = (x + 1) * side, (y + 1) * side
            if x + 1 < across:
                path = ((right, y * side), (right, below))
                seams.append(_seam(path, (number(x, y), number(x + 1, y)), opened))
            if y + 1 < down:
                path = ((x * side, below), (right, below))
                seams.append(_seam(path, (number(x, y), number(x, y + 1)), opened))
    edge = shapely.box(0, 0, across * side, down * side)
    found = tuple(seams)
    return Top(RULES["in"], edge, edge, (), found, runs(found, edge, edge))


def _seam(path: tuple[Spot, Spot], patches: tuple[int, int], opened: bool) -> Seam:
    return Seam(path, patches, 1, opened=opened, border=False)


@cache
def _sizes(slug: str) -> dict[str, Top]:
    known = examine(ROOT / "patterns" / slug / "pattern.yaml", slug).sizes
    laid = {size: top(one.quilt, one.patches) for size, one in known.items()}
    return {size: one for size, one in laid.items() if one is not None}


def laid_demo(slug: str, size: str) -> Top:
    """The top of one size of a pattern that comes with patternbook."""
    return _sizes(slug)[size]


def every_size(slug: str) -> Iterator[tuple[str, Top]]:
    yield from _sizes(slug).items()
