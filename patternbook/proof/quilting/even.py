"""How densely each area is quilted, and how evenly the top, measured on what is stitched."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np
import shapely

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import Floats, Stitched, bundle
from patternbook.quilting.records import Area

SLACK: Final = 0.01
GRID: Final = 1e-4


def even(stitched: Stitched) -> Iterator[Notice]:
    fills = [fill for fill in stitched.plan.fills if fill.drawn.paths]
    if not fills:
        return
    found = _densities(stitched, [fill.area for fill in fills])
    for fill, density in zip(fills, found, strict=True):
        if abs(fill.density - density) > SLACK * max(density, fill.density) + 1e-6:
            yield stitched.wrong(
                "quilting-even",
                f"area {fill.area.key} is told as {fill.density:.3f} of line a square unit; "
                f"{density:.3f} are stitched.",
            )
    spread = _spread(np.array([fill.area.shape.area for fill in fills]), found)
    if abs(spread - stitched.plan.sums.evenness) > SLACK:
        message = (
            f"the density is told to differ by {stitched.plan.sums.evenness:.1%} from area to "
            f"area; it differs by {spread:.1%}."
        )
        yield stitched.wrong("quilting-even", message)


def _spread(sizes: Floats, found: Floats) -> float:
    mean = float(np.average(found, weights=sizes))
    spread = math.sqrt(float(np.average((found - mean) ** 2, weights=sizes)))
    return spread / mean if mean else 0.0


def _densities(stitched: Stitched, areas: Sequence[Area]) -> Floats:
    """Of each area: the legs of its design that do not lie on its rim, for a square unit."""
    legs: dict[str, list[int]] = {}
    for number, leg in enumerate(stitched.legs):
        if leg.kind == "fill" and not leg.again:
            legs.setdefault(leg.area, []).append(number)
    lines = [bundle(stitched.lines[np.array(legs.get(a.key, []), dtype=np.intp)]) for a in areas]
    shapes = np.array([area.shape for area in areas])
    within = shapely.buffer(shapes, -stitched.same, join_style="mitre")
    # A line that is begun half way is a hair off itself where it is stitched twice.
    stitched_in = shapely.intersection(lines, within, grid_size=GRID)
    return np.asarray(shapely.length(stitched_in) / shapely.area(shapes))
