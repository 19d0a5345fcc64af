"""Whether everything is stitched: each line of the first stage, and each design in its area."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import APART, Stitched, along, as_lines
from patternbook.quilting.records import Path


def complete(stitched: Stitched) -> Iterator[Notice]:
    plan = stitched.plan
    filled = {fill.area.key for fill in plan.fills}
    for area in plan.divided.areas:
        if area.key not in filled and not area.excluded:
            yield stitched.wrong("quilting-missed", f"area {area.key} has no design.")
    lines = [(f"a line of the first stage ({line.kind})", line.path) for line in plan.lines]
    designs = [
        (f"the design of area {fill.area.key}", path)
        for fill in plan.fills
        for path in fill.drawn.paths
    ]
    yield from _missed(stitched, [one for one in (*lines, *designs) if len(one[1]) > 1])


def _missed(stitched: Stitched, wanted: Sequence[tuple[str, Path]]) -> Iterator[Notice]:
    """Each line that is not stitched from end to end."""
    if not wanted:
        return
    spots, which = along(as_lines([path for _, path in wanted]), APART * stitched.inch)
    bare = np.ones(len(spots), dtype=bool)
    if stitched.legs:
        hit, _ = stitched.stretches.hits(spots, stitched.same)
        bare[hit] = False
    for number in np.unique(which[bare]):
        first = spots[bare & (which == number)][0]
        yield stitched.wrong(
            "quilting-missed", f"{wanted[number][0]} is not stitched at {stitched.at(first)}."
        )
