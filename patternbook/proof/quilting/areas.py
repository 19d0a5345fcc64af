"""Whether the areas are the top: no spot in two of them, and none in no area."""

from __future__ import annotations

from collections.abc import Iterator

import shapely

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import Stitched


def areas(stitched: Stitched) -> Iterator[Notice]:
    top = stitched.plan.top.edge
    shapes = [area.shape for area in stitched.plan.divided.areas]
    together = shapely.union_all(shapes, grid_size=stitched.same / 10)
    rims = top.length + sum(shape.length for shape in shapes)
    slack = stitched.same / 10 * rims + 1e-9
    twice = sum(shape.area for shape in shapes) - together.area
    for name, size in (
        ("lies in two areas", twice),
        ("lies in no area", shapely.difference(top, together).area),
        ("lies beyond the top", shapely.difference(together, top).area),
    ):
        if size > slack:
            amount = f"{size:.2f} square {stitched.quilt.system.unit}"
            yield stitched.wrong("quilting-tiling", f"{amount} {name} of the quilting.")
