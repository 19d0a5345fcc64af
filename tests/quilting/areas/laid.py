"""Tops for the tests of areas: laid out from a source, or straight from shapes."""

from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path

import shapely
from shapely import Polygon, STRtree

from patternbook.edition.pipeline import examine
from patternbook.quilting.areas import areas
from patternbook.quilting.areas.shapes import sewn
from patternbook.quilting.records import Area, Cloth, Divided, Seam, Top, Wish, Wishes
from patternbook.quilting.runs import runs
from patternbook.quilting.top import RULES, top
from tests.support import ROOT

PATTERNS = sorted(path.parent.name for path in (ROOT / "patterns").glob("*/pattern.yaml"))


def tops(path: Path) -> dict[str, Top]:
    """The top of each size of a pattern."""
    known = examine(path, path.parent.name).sizes
    laid = {size: top(one.quilt, one.patches) for size, one in known.items()}
    return {size: one for size, one in laid.items() if one is not None}


@cache
def demo(slug: str) -> dict[str, Top]:
    """The tops of a pattern that comes with patternbook."""
    return tops(ROOT / "patterns" / slug / "pattern.yaml")


def wished(*about: Wish, seed: int = 1) -> Wishes:
    return Wishes("walking foot", 3.0, limit_stated=False, seed=seed, areas=about)


def divided(laid: Top, *about: Wish) -> Divided:
    """Its areas, where nothing is to be told."""
    found, told = areas(laid, wished(*about))
    assert told == ()
    return found


def counted(found: Divided) -> dict[str, int]:
    """How many areas there are of each kind."""
    counts: dict[str, int] = {}
    for area in found.areas:
        counts[area.kind] = counts.get(area.kind, 0) + 1
    return counts


def at(found: Divided, x: float, y: float) -> Area:
    """The area at a spot."""
    (area,) = (one for one in found.areas if one.shape.covers(shapely.Point(x, y)))
    return area


def laid(
    patches: Sequence[tuple[str, Polygon]], *, plain: str = "", border: str = "", unit: str = "in"
) -> Top:
    """A top of patches: a letter that is its fabric too, and a shape. `plain`: the letters of
    fabrics of one print; `border`: those of the patches in border 1."""
    cloths = tuple(
        Cloth(number, letter, letter, shape, letter in plain, False, int(letter in border))
        for number, (letter, shape) in enumerate(patches)
    )
    seams = tuple(_seams(cloths))
    edge = sewn(cloth.shape for cloth in cloths)
    inside = sewn(cloth.shape for cloth in cloths if not cloth.border)
    assert isinstance(edge, Polygon)
    assert isinstance(inside, Polygon)
    return Top(RULES[unit], edge, inside, cloths, seams, runs(seams, edge, inside))


def _seams(cloths: Sequence[Cloth]) -> Iterator[Seam]:
    shapes = [cloth.shape for cloth in cloths]
    for one, other in sorted(STRtree(shapes).query(shapes).T.tolist()):
        if one < other:
            shared = shapely.get_parts(shapes[one].intersection(shapes[other]))
            for line in (part for part in shared if part.geom_type == "LineString"):
                (x0, y0), *_, (x1, y1) = line.coords
                border = cloths[one].border != cloths[other].border
                yield Seam(((x0, y0), (x1, y1)), (one, other), 1, opened=False, border=border)


def box(x: float, y: float, across: float, down: float) -> Polygon:
    return shapely.box(x, y, x + across, y + down)
