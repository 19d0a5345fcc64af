"""Shapes laid on the top, and the ground around them."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from typing import NamedTuple

from shapely import Polygon, STRtree
from shapely.geometry.base import BaseGeometry

from patternbook.quilting.areas.shapes import common, joined, less, polygons, sewn
from patternbook.quilting.records import Cloth, Top

WITHIN = 1e-3  # a shape that comes so close to a seam does not cross it


class Around(NamedTuple):
    """The ground around shapes that are laid on it (with a hole for each), and the numbers of the
    patches that it is."""

    shapes: tuple[Polygon, ...]
    cloths: frozenset[int]


def motifs(top: Top, inside: Polygon) -> list[Polygon]:
    """The shapes laid on the inside; those that touch or overlap (a pear and its leaf) are one."""
    laid = [cloth.shape for cloth in top.cloths if cloth.laid_on]
    if not laid:
        return []
    whole = [Polygon(part.exterior) for part in polygons(joined(laid))]
    return polygons(common(joined(whole), inside))


def around(top: Top, laid: Sequence[Polygon]) -> Around:
    """The ground around the shapes, block by block: it ends at the seams of the patch that a
    shape lies on, or of all that it lies on."""
    if not laid:
        return Around((), frozenset())
    cloths = [cloth for cloth in top.cloths if not cloth.border and not cloth.laid_on]
    inner = [shape.buffer(-WITHIN) for shape in laid]
    lies, on = STRtree([cloth.shape for cloth in cloths]).query(inner, predicate="intersects")
    held: dict[int, set[int]] = {}
    for shape, cloth in sorted(zip(lies.tolist(), on.tolist(), strict=True)):
        held.setdefault(shape, set()).add(cloth)
    groups = list(_together(held.values()))
    bare = joined(laid)
    rings = [ring for group in groups for ring in _ring(group, cloths, bare)]
    return Around(tuple(rings), frozenset(cloths[n].number for group in groups for n in group))


def _together(held: Collection[set[int]]) -> Iterator[set[int]]:
    """Patches under one shape, and under others on the same patches, together."""
    groups: list[set[int]] = []
    for cloths in held:
        apart = [group for group in groups if not group & cloths]
        groups = [*apart, cloths.union(*(group for group in groups if group & cloths))]
    return iter(sorted(groups, key=min))


def _ring(group: set[int], cloths: Sequence[Cloth], bare: BaseGeometry) -> list[Polygon]:
    return polygons(less(sewn(cloths[number].shape for number in sorted(group)), bare))
