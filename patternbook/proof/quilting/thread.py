"""Thread and hours, reckoned anew from the length of the walks."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.quilting.starts import ONE_INCH, WASTE
from patternbook.proof.quilting.stitched import Stitched

ENDS: Final = 28.0  # inches of thread left at a start and its stop (common practice, no source)
INCHES: Final = {"yd": 36.0, "m": 1 / 0.0254}
FASTEST: Final = 60.0  # inches a minute that nobody quilts faster than
SLACK: Final = 2e-3


def thread(stitched: Stitched) -> Iterator[Notice]:
    sums, unit = stitched.plan.sums, stitched.quilt.system.bolt_unit
    starts = sum(len(stage.walks) for stage in stitched.plan.stages) + len(sums.changes)
    inches = (stitched.length / stitched.inch * ONE_INCH + starts * ENDS) * (1 + WASTE)
    each = inches / INCHES[unit] / 2
    for name, told in (("top", sums.thread_top), ("bobbin", sums.thread_bobbin)):
        if abs(told - each) > SLACK * each:
            message = f"{told:.1f} {unit} of {name} thread are told, and {each:.1f} are used."
            yield stitched.wrong("quilting-thread", message)
    low, high = sums.hours
    least = stitched.length / stitched.inch / FASTEST / 60
    if not (least <= low <= high):
        message = f"{low:.1f} to {high:.1f} hours are told, and the needle runs for {least:.1f}."
        yield stitched.wrong("quilting-thread", message)
