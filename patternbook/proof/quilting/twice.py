"""How much is stitched over again, counted once more by laying all lines together."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import shapely

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import Stitched

SLACK: Final = 2e-3  # of the length


def twice(stitched: Stitched) -> Iterator[Notice]:
    sums = stitched.plan.sums
    together = float(shapely.union_all(stitched.lines, grid_size=stitched.same / 2).length)
    slack = SLACK * stitched.length + stitched.same
    each = sum(number * length for number, length in sums.passes.items())
    for name, told, found in (
        ("the whole length", sums.stitched, stitched.length),
        ("the length without doubles", sums.once, together),
        ("the length by how often it is stitched", each, stitched.length),
        ("the same, each line once", sum(sums.passes.values()), together),
    ):
        if abs(told - found) > slack:
            message = f"{name} is told as {stitched.told(told)}, and is {stitched.told(found)}."
            yield stitched.wrong("quilting-again", message)
