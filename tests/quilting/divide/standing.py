"""Pieces that stand on open ground, for the tests of dividing it."""

import random
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

import shapely
from shapely import LineString, Polygon

from patternbook.quilting.areas.divide import Division, divide
from patternbook.quilting.areas.parts import Part
from patternbook.quilting.records import Cloth, Marked, Path, Seam, Top, Wish, Wishes
from patternbook.quilting.runs import runs
from patternbook.quilting.top import RULES

Piece = tuple[str, Polygon]


def box(x: float, y: float, across: float, down: float) -> Polygon:
    return Polygon([(x, y), (x + across, y), (x + across, y + down), (x, y + down)])


def pile(letter: str, x: float, y: float, bars: int, long: float, high: float = 2.0) -> list[Piece]:
    """Bars on top of one another."""
    return [(letter, box(x, y + n * high, long, high)) for n in range(bars)]


def on_ground(
    across: float, down: float, pieces: Sequence[Piece], *seams: Path, unit: str = "in"
) -> tuple[Top, list[Polygon]]:
    """A top, and its open ground: all but the pieces. `seams`: those of the ground itself."""
    edge = box(0, 0, across, down)
    bare = shapely.difference(edge, shapely.union_all([shape for _, shape in pieces]))
    grounds = [one for one in shapely.get_parts(bare) if one.area > 0]
    cloths = [
        Cloth(n, letter, letter, shape, plain=False, laid_on=False)
        for n, (letter, shape) in enumerate(pieces)
    ]
    sewn = [*_sides(cloths, edge), *(Seam(seam, (0, 0), 1, False, False) for seam in seams)]
    return Top(RULES[unit], edge, edge, tuple(cloths), tuple(sewn), runs(sewn, edge, edge)), grounds


def _sides(cloths: Sequence[Cloth], edge: Polygon) -> Iterator[Seam]:
    for cloth in cloths:
        for one, other in pairwise(cloth.shape.exterior.coords):
            if not edge.exterior.buffer(1e-6).covers(LineString([one, other])):
                side = path((one[0], one[1]), (other[0], other[1]))
                yield Seam(side, (cloth.number, cloth.number), 1, opened=False, border=False)


def wished(seed: int = 1, move: Mapping[str, float] | None = None) -> Wishes:
    about = (Wish("ground", move=move),) if move else ()
    return Wishes("walking foot", 3.0, limit_stated=False, seed=seed, areas=about)


def divided(
    laid: tuple[Top, list[Polygon]], seed: int = 1, move: Mapping[str, float] | None = None
) -> Division:
    top, grounds = laid
    return divide(grounds, top, wished(seed, move))


def of_kind(kind: str, parts: Sequence[Part]) -> list[Part]:
    return [part for part in parts if part.kind == kind]


def lines(kind: str, marked: Sequence[Marked]) -> list[Path]:
    return [line.path for line in marked if line.kind == kind]


def wrong(parts: Sequence[Part], grounds: Sequence[Polygon]) -> float:
    """How much of the grounds lies in no part or in two, or of a part outside of them."""
    whole = shapely.union_all([part.shape for part in parts])
    twice = sum(part.shape.area for part in parts) - whole.area
    return float(abs(twice) + whole.symmetric_difference(shapely.union_all(grounds)).area)


def is_sound(part: Part) -> bool:
    return bool(part.shape.is_valid) and not part.shape.interiors and not part.shape.is_empty


def path(*spots: tuple[float, float]) -> Path:
    return tuple((float(x), float(y)) for x, y in spots)


def lot(seed: int) -> random.Random:
    return random.Random(seed)  # noqa: S311 (for the look, not for a secret)
