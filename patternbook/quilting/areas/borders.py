"""The sides of the borders, as they are sewn on."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Final, Literal, NamedTuple

import shapely
from shapely import Polygon

from patternbook.quilting.areas.parts import Part
from patternbook.quilting.areas.piecing import unholed
from patternbook.quilting.areas.shapes import NOTHING, joined, less, polygons, sewn
from patternbook.quilting.records import Cloth, Seam, Top

Box = tuple[float, float, float, float]
LEAST: Final = 2.0  # in: a narrower border is quilted with its neighbour


class Border(NamedTuple):
    """One border, or several that are quilted as one: its cloths, and the boxes of what lies
    within it and of all up to its outer rim."""

    cloths: tuple[Cloth, ...]
    inner: Box
    outer: Box

    @property
    def width(self) -> float:
        """Of its widest side."""
        return max(abs(one - other) for one, other in zip(self.inner, self.outer, strict=True))


def bordered(top: Top) -> tuple[tuple[Part, ...], Polygon]:
    """The sides of the borders, and what is left within them. A narrow border goes with the next
    one outward, the last one with the one before it or, where it is alone, with the inside."""
    borders = _wide(list(_borders(top)), LEAST * top.rules.inch)
    if not borders:
        return (), top.edge
    found = [Part("border", side) for border in borders for side in _sides(border, top.seams)]
    left = polygons(less(top.edge, joined(part.shape for part in found)))
    return tuple(found), max(left, key=lambda part: float(part.area), default=top.edge)


def _borders(top: Top) -> list[Border]:
    found: list[Border] = []
    inner = top.inside.bounds
    cloths = sorted((cloth for cloth in top.cloths if cloth.border), key=lambda cloth: cloth.border)
    for _, group in groupby(cloths, key=lambda cloth: cloth.border):
        held = tuple(group)
        outer = _around([inner, *(cloth.shape.bounds for cloth in held)])
        found.append(Border(held, inner, outer))
        inner = outer
    return found


def _around(boxes: Sequence[Box]) -> Box:
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return min(lefts), min(tops), max(rights), max(bottoms)


def _wide(borders: list[Border], least: float) -> list[Border]:
    """Borders wide enough to be quilted on their own."""
    found: list[Border] = []
    narrow: Border | None = None
    for border in borders:
        both = _both(narrow, border) if narrow else border
        narrow = both if both.width < least - NOTHING else None
        if narrow is None:
            found.append(both)
    if narrow and found:
        found[-1] = _both(found[-1], narrow)
    return found


def _both(one: Border, other: Border) -> Border:
    return Border((*one.cloths, *other.cloths), one.inner, other.outer)


def _sides(border: Border, seams: Sequence[Seam]) -> list[Polygon]:
    """One shape a side: four boxes that meet as the outermost strips do, or, where the top is no
    rectangle, what was cut out for each."""
    (x0, y0, x1, y1), (x2, y2, x3, y3) = border.outer, border.inner
    ring = shapely.box(x0, y0, x1, y1).difference(shapely.box(x2, y2, x3, y3))
    whole = sewn(cloth.shape for cloth in border.cloths)
    if whole.symmetric_difference(ring).area > 1e-3:
        return [side for part in polygons(whole) for side in unholed(part)]
    corners = {
        corner: _runs_across(box, border.cloths, seams)
        for corner, box in {
            "top left": (x0, y0, x2, y2),
            "top right": (x3, y0, x1, y2),
            "bottom left": (x0, y3, x2, y1),
            "bottom right": (x3, y3, x1, y1),
        }.items()
    }
    boxes = (
        (x0 if corners["top left"] else x2, y0, x1 if corners["top right"] else x3, y2),
        (x0, y2 if corners["top left"] else y0, x2, y3 if corners["bottom left"] else y1),
        (x3, y2 if corners["top right"] else y0, x1, y3 if corners["bottom right"] else y1),
        (x0 if corners["bottom left"] else x2, y3, x1 if corners["bottom right"] else x3, y1),
    )
    return [shapely.box(*box) for box in boxes if _more(box)]


def _more(box: Box) -> bool:
    return box[2] - box[0] > NOTHING and box[3] - box[1] > NOTHING


Way = Literal["across", "down"]


def _runs_across(corner: Box, cloths: Sequence[Cloth], seams: Sequence[Seam]) -> bool:
    """Whether the corner belongs to the strip across the top; a square in the corner, and so to
    both, belongs to the one that it is sewn to deeper down, or else goes across."""
    left, top, right, bottom = corner
    at = shapely.Point((left + right) / 2, (top + bottom) / 2)
    held = next((cloth for cloth in cloths if cloth.shape.distance(at) < NOTHING), None)
    if held is None:
        return True
    box = held.shape.bounds
    out_across = max(left - box[0], box[2] - right)
    out_down = max(top - box[1], box[3] - bottom)
    if max(out_across, out_down) > NOTHING:
        return out_across >= out_down
    deepest: dict[Way, int] = {"across": 0, "down": 0}
    numbers = {cloth.number for cloth in cloths}
    for seam in seams:
        if held.number in seam.patches and numbers.issuperset(seam.patches):
            way: Way = "across" if seam.path[0][0] == seam.path[-1][0] else "down"
            deepest[way] = max(deepest[way], seam.depth)
    return deepest["across"] >= deepest["down"]
