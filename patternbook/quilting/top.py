"""The finished top as shapes and seams: what the quilting is laid upon."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Final

import shapely
from shapely import Polygon

from patternbook.methods.made import Outline
from patternbook.quilt.joins import Stretch, stretches
from patternbook.quilt.place import Patch
from patternbook.quilt.points import arc_points, outlined, points_of
from patternbook.quilt.pressing import PressingPlan, pressed
from patternbook.quilt.records import LayoutMade, Quilt, Sides, Unit
from patternbook.quilting.records import Cloth, Path, Rules, Seam, Top
from patternbook.quilting.runs import runs

# To the inch and to the centimetre: eighths and half an inch kept free for the binding are in
# booklets everywhere (common practice, no source); metric marks are the next whole ones.
RULES: Final[Mapping[str, Rules]] = {
    "in": Rules(inch=1.0, step=0.125, edge=0.5, seam=0.25, beside=0.25),
    "cm": Rules(inch=2.54, step=0.25, edge=1.25, seam=0.5, beside=0.5),
}
GRID: Final = 1e-4  # shapes are joined on this grid; finer differences are floats' own


def top(quilt: Quilt, patches: Sequence[Patch]) -> Top | None:
    """The top of one size; None where there is none."""
    if quilt.finished is None or not patches or quilt.top is None:
        return None
    made = quilt.units[quilt.top].made
    borders = _border_boxes(made) if isinstance(made, LayoutMade) else ()
    cloths = tuple(_cloths(quilt, patches, borders))
    edge = _edge(quilt.finished, made.edge if isinstance(made, LayoutMade) else None)
    seams = tuple(_seams(quilt, patches, cloths))
    inside = _inside(edge, cloths)
    return Top(RULES[quilt.system.unit], edge, inside, cloths, seams, runs(seams, edge, inside))


def _edge(finished: Sides, outline: Outline | None) -> Polygon:
    if outline is not None:
        return Polygon(outlined(outline))
    return shapely.box(0.0, 0.0, float(finished.across), float(finished.down))


def _inside(edge: Polygon, cloths: Iterable[Cloth]) -> Polygon:
    """What lies within the borders."""
    borders = [cloth.shape for cloth in cloths if cloth.border]
    if not borders:
        return edge
    left = shapely.difference(edge, shapely.union_all(borders, grid_size=GRID), grid_size=GRID)
    parts = [part for part in shapely.get_parts(left) if part.geom_type == "Polygon"]
    return max(parts, key=lambda part: float(part.area), default=edge)


Box = tuple[float, float, float, float]


def _border_boxes(made: LayoutMade) -> tuple[tuple[int, Box], ...]:
    return tuple(
        (
            border.number,
            (
                float(part.x),
                float(part.y),
                float(part.x + part.across),
                float(part.y + part.down),
            ),
        )
        for border in made.borders
        for part in border.parts
    )


def _cloths(
    quilt: Quilt, patches: Sequence[Patch], borders: Sequence[tuple[int, Box]]
) -> Iterator[Cloth]:
    for number, patch in enumerate(patches):
        fabric = quilt.pieces[patch.letter].fabric or ""
        cloth = quilt.fabrics.get(fabric)
        shape = Polygon(points_of(patch))
        at = shape.representative_point()
        border = next((n for n, box in borders if _holds(box, at.x, at.y)), 0)
        plain = cloth is not None and cloth.prints == 1
        units = tuple(dict.fromkeys(name.split()[0] for name in patch.within[1:]))
        panel = cloth is not None and cloth.form == "panel"
        yield Cloth(number, patch.letter, fabric, shape, plain, patch.laid_on, border, units, panel)


def _holds(box: Box, x: float, y: float) -> bool:
    return box[0] < x < box[2] and box[1] < y < box[3]


def _seams(quilt: Quilt, patches: Sequence[Patch], cloths: Sequence[Cloth]) -> Iterator[Seam]:
    opened = Opened(quilt, patches)
    for stretch in stretches(patches):
        one, other = stretch.patches
        border = cloths[one].border != cloths[other].border
        depth = _depth(patches[one].within, patches[other].within)
        is_open = not border and opened.told(one, other, depth)
        yield Seam(_path(stretch), stretch.patches, depth, is_open, border)


def _path(stretch: Stretch) -> Path:
    if stretch.centre is None:
        return stretch.start, stretch.end
    return arc_points(stretch.start, stretch.end, stretch.centre)


def _depth(one: tuple[str, ...], other: tuple[str, ...]) -> int:
    """How many units around them two patches share."""
    number = 0
    for here, there in zip(one, other, strict=False):
        if here != there:
            break
        number += 1
    return max(1, number)


class Opened:
    """Which seams are pressed open: by the plan of the unit that they lie in."""

    def __init__(self, quilt: Quilt, patches: Sequence[Patch]) -> None:
        self._quilt = quilt
        self._patches = patches
        self._plans, _ = pressed(quilt)
        self._known: dict[str, bool] = {}

    def told(self, one: int, other: int, depth: int) -> bool:
        """Whether the seam between two patches is; where a unit is pressed in several ways, as
        most of its seams are."""
        within = self._patches[one].within
        if depth > len(within) or depth > len(self._patches[other].within):
            return False
        unit = self._unit(within, depth)
        if unit is None:
            return False
        if unit.name not in self._known:
            self._known[unit.name] = _mostly_open(self._plans[unit.name])
        return self._known[unit.name]

    def _unit(self, within: tuple[str, ...], depth: int) -> Unit | None:
        name = within[depth - 1].split()[0]
        return self._quilt.units.get(name)


def _mostly_open(plan: PressingPlan) -> bool:
    ways = [way == "open" for line in plan.lines for way in line.seams]
    ways += [way == "open" for way in plan.between]
    ways += [toward is None for toward in plan.inner]
    return sum(ways) * 2 > len(ways)
