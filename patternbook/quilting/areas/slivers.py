"""Parts too narrow to be quilted on their own join a neighbour."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np
import shapely
from shapely import Polygon, STRtree

from patternbook.quilting.areas.parts import Part
from patternbook.quilting.areas.shapes import grown, holds_circle, place, polygons, sewn

LEAST: Final = 1.5  # in
SCRAP: Final = 12.0  # sq in of piecing
ALONG: Final = 0.4  # of its rim
REACH: Final = 1e-3


def without_slivers(parts: Sequence[Part], inch: float) -> list[Part]:
    """The parts, each narrow one joined to the neighbour with the longest rim in common; of two
    as long, to the one above or to the left. A scrap that lies along a neighbour joins it too."""
    kept = list(parts)
    for _ in range(len(parts)):
        homes = dict(_homes(kept, inch))
        if not homes:
            break
        kept = list(_moved(kept, homes))
    return kept


def shared(one: Polygon, others: np.ndarray[tuple[int], np.dtype[np.object_]]) -> list[float]:
    """How long the rims are that a shape has in common with others."""
    near = shapely.intersection(grown(one, REACH), others)
    return [round(float(area) / REACH, 3) for area in shapely.area(near)]


def _homes(parts: Sequence[Part], inch: float) -> Iterator[tuple[int, int]]:
    """Where parts go: each into a part that does not move itself in this round."""
    shapes = np.array([part.shape for part in parts])
    tree = STRtree(shapes)
    grown: dict[int, Polygon] = {}
    moving: set[int] = set()
    for number, part in enumerate(parts):
        least = _least(part, inch)
        if least is None or number in grown:
            continue
        near = sorted(int(n) for n in tree.query(part.shape) if n != number and n not in moving)
        rims = shared(part.shape, shapes[near]) if near else []
        ways = sorted(
            (-rim, place(shapes[n]), n) for n, rim in zip(near, rims, strict=True) if rim > least
        )
        for *_, home in ways:
            both = polygons(sewn([part.shape, grown.get(home, shapes[home])]))
            if len(both) == 1 and len(both[0].interiors) <= len(shapes[home].interiors):
                grown[home] = both[0]
                moving.add(number)
                yield number, home
                break


def _least(part: Part, inch: float) -> float | None:
    """How much rim a part that cannot stay on its own must share with the one it joins; None for
    a part that can."""
    if not holds_circle(part.shape, LEAST * inch):
        return 10 * REACH
    scrap = part.kind == "piecing" and part.shape.area < SCRAP * inch**2
    return ALONG * float(part.shape.length) if scrap else None


def _moved(parts: Sequence[Part], homes: dict[int, int]) -> Iterator[Part]:
    coming: dict[int, list[Polygon]] = {}
    for number, home in homes.items():
        coming.setdefault(home, []).append(parts[number].shape)
    for number, part in enumerate(parts):
        if number not in homes:
            yield _with(part, coming.get(number, []))


def _with(part: Part, coming: Sequence[Polygon]) -> Part:
    if not coming:
        return part
    both = polygons(sewn([part.shape, *coming]))
    return part._replace(shape=max(both, key=lambda one: float(one.area)))
