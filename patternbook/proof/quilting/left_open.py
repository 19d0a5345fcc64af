"""Whether the areas that the author leaves out are left open."""

from __future__ import annotations

from collections.abc import Iterator

import shapely

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import Stitched, bundle


def left_open(stitched: Stitched) -> Iterator[Notice]:
    """No design and no step in them; lines of the first stage on their seams are no design."""
    legs = [n for n, leg in enumerate(stitched.legs) if leg.kind in {"fill", "step"}]
    lines = bundle(stitched.lines[legs])
    for area in stitched.plan.divided.areas:
        if area.excluded:
            inner = area.shape.buffer(-stitched.same)
            length = float(shapely.intersection(lines, inner).length)
            if length > stitched.same:
                yield stitched.wrong(
                    "quilting-excluded",
                    f"area {area.key} is excluded, and {stitched.told(length)} are stitched in it.",
                )
