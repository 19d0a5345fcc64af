"""Starts and bobbins, counted from the walks."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

import numpy as np
from shapely import LineString, Point

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import Stitched
from patternbook.quilting.records import BobbinChange

# A lockstitch of 10 stitches an inch through 0.04 in takes 2 + 2 × 0.04 × 10 inches an inch, half
# of it from the bobbin, and 15 % more is wasted; 65 yards on a bobbin (common practice, no
# source).
STITCHES, THICK, WASTE, YARDS = 10, 0.04, 0.15, 65
ONE_INCH: Final = 2 + 2 * THICK * STITCHES
LASTS: Final = YARDS * 36 / (ONE_INCH / 2 * (1 + WASTE))


def starts(stitched: Stitched) -> Iterator[Notice]:
    plan, sums = stitched.plan, stitched.plan.sums
    walks = sum(1 for stage in plan.stages for _ in stage.walks)
    if sums.starts != walks:
        message = f"{sums.starts} starts are told, and {walks} walks are sewn."
        yield stitched.wrong("quilting-starts", message)
    if walks and sums.bobbins != len(sums.changes) + 1:
        message = f"{sums.bobbins} bobbins are told, and {len(sums.changes)} changes."
        yield stitched.wrong("quilting-starts", message)
    needed = math.ceil(stitched.length / (LASTS * stitched.inch) - 1e-6)
    if sums.bobbins < needed:
        message = f"{sums.bobbins} bobbins are told, and {needed} are emptied."
        yield stitched.wrong("quilting-starts", message)
    yield from _changes(stitched)


def _changes(stitched: Stitched) -> Iterator[Notice]:
    """Each change lies on its walk, in order, and no bobbin runs out before it."""
    order = [(one.stage, one.walk) for one in stitched.plan.sums.changes]
    if order != sorted(order):
        yield stitched.wrong("quilting-starts", "the changes of the bobbin are not in order.")
        return
    for number, change in enumerate(stitched.plan.sums.changes, start=1):
        name = f"change {number} of the bobbin"
        if not _on_walk(stitched, change):
            yield stitched.wrong("quilting-starts", f"{name} does not lie on its walk.")
        if not 0 < change.used <= 1 + 1e-6:
            message = f"{name} comes after {change.used:.0%} of a bobbin."
            yield stitched.wrong("quilting-starts", message)
    yield from _lengths(stitched)


def _on_walk(stitched: Stitched, change: BobbinChange) -> bool:
    stages = stitched.plan.stages
    if not (0 <= change.stage < len(stages) and 0 <= change.walk < len(stages[change.stage].walks)):
        return False
    path = stages[change.stage].walks[change.walk].path
    return LineString(path).distance(Point(change.at)) <= stitched.same


def _lengths(stitched: Stitched) -> Iterator[Notice]:
    """What is stitched up to each change, by the shares that are told."""
    lasts = LASTS * stitched.inch
    used = np.cumsum([one.used for one in stitched.plan.sums.changes]) * lasts
    rest = stitched.length - (float(used[-1]) if len(used) else 0.0)
    if rest > lasts * (1 + 1e-3):
        message = f"{stitched.told(rest)} are left for the last bobbin, which lasts for less."
        yield stitched.wrong("quilting-starts", message)
