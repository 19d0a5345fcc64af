"""Whether every stitch lies on the top, and the place of the binding is kept free."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import numpy as np
import shapely

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import Stitched

# A line that crosses the margin slantwise is in it for no longer than this, in margins.
SLANT: Final = 4.0


def inside(stitched: Stitched) -> Iterator[Notice]:
    """Nothing beyond the finished edge; in the last half inch only lines that cross it or run on
    the edge itself. Lines of the first stage lie on seams, wherever these are."""
    edge = stitched.plan.top.edge
    whole = edge.buffer(stitched.same, join_style="mitre")
    shapely.prepare(whole)
    for number in np.flatnonzero(~shapely.covers(whole, stitched.lines)):
        beyond = shapely.difference(stitched.lines[number], whole)
        at = shapely.get_coordinates(beyond)[0]
        kind = stitched.legs[number].kind
        message = f"a leg ({kind}) is stitched beyond the edge, at {stitched.at(at)}."
        yield stitched.wrong("quilting-outside", message)
    yield from _margin(stitched)


def _margin(stitched: Stitched) -> Iterator[Notice]:
    edge, margin = stitched.plan.top.edge, stitched.plan.top.rules.edge
    inner = edge.buffer(-margin + stitched.same, join_style="mitre")
    band = edge.buffer(-stitched.same, join_style="mitre").difference(inner)
    designs = [n for n, leg in enumerate(stitched.legs) if leg.kind in {"fill", "edge", "step"}]
    lines = stitched.lines[designs]
    shapely.prepare(inner)
    lines = lines[~shapely.covers(inner, lines)]
    parts = shapely.get_parts(shapely.line_merge(shapely.intersection(lines, band)))
    parts = parts[shapely.length(parts) > 4 * stitched.same]
    short = shapely.length(parts) <= SLANT * margin
    ends = shapely.distance(parts, edge.boundary) <= 4 * stitched.same
    for part in parts[~(short & ends)]:
        at = shapely.get_coordinates(part)[0]
        yield stitched.wrong(
            "quilting-outside",
            f"{stitched.told(part.length)} of a design lie in the {stitched.told(margin)} kept "
            f"free for the binding, at {stitched.at(at)}.",
        )
