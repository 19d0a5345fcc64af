"""How busy each part of a top is, and which pieces, units and borders lie in it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import shapely
from shapely import STRtree

from patternbook.quilting.areas.parts import Part
from patternbook.quilting.areas.shapes import grown
from patternbook.quilting.records import Area, Cloth, Top

WITHIN = 1e-3  # a seam on the rim of a part is not in it


class Held(NamedTuple):
    """What a part holds: seams (their length per square unit), letters of pieces, names of units,
    numbers of borders."""

    piecing: float
    letters: tuple[str, ...]
    units: tuple[str, ...]
    borders: tuple[int, ...]


def held(parts: Sequence[Part], top: Top) -> list[Held]:
    """What each part holds."""
    inner = np.array([grown(part.shape, -WITHIN) for part in parts])
    shapely.prepare(inner)
    piecing = _seamed(inner, top)
    cloths = _cloths(inner, top)
    return [
        Held(
            round(seamed / float(part.shape.area), 6),
            tuple(sorted({cloth.letter for cloth in within})),
            tuple(sorted({unit for cloth in within for unit in cloth.units})),
            tuple(sorted({cloth.border for cloth in within if cloth.border})),
        )
        for part, seamed, within in zip(parts, piecing, cloths, strict=True)
    ]


def area_of(part: Part, key: tuple[str, int], within: Held) -> Area:
    """The area that a part is, once it has its letter and number."""
    return Area(
        letter=key[0],
        number=key[1],
        kind=part.kind,
        shape=part.shape,
        piecing=within.piecing,
        letters=within.letters,
        centre=part.centre,
        borders=within.borders,
        units=within.units,
    )


Shapes = np.ndarray[tuple[int], np.dtype[np.object_]]


def _seamed(inner: Shapes, top: Top) -> list[float]:
    """The length of the seams within each shape."""
    if not top.seams:
        return [0.0] * len(inner)
    points = [spot for seam in top.seams for spot in seam.path]
    owner = [number for number, seam in enumerate(top.seams) for _ in seam.path]
    seams: Shapes = np.array(shapely.linestrings(points, indices=owner), dtype=object)
    at, seam = STRtree(seams).query(inner, predicate="intersects")
    lengths = shapely.length(shapely.intersection(inner[at], seams[seam]))
    return [float(sum_) for sum_ in np.bincount(at, lengths, minlength=len(inner))]


def _cloths(inner: Shapes, top: Top) -> list[list[Cloth]]:
    """The patches that have a part in each shape."""
    shapes = np.array([cloth.shape for cloth in top.cloths])
    found: list[list[Cloth]] = [[] for _ in inner]
    for at, number in sorted(STRtree(shapes).query(inner, predicate="intersects").T.tolist()):
        found[at].append(top.cloths[number])
    return found
