"""Whether the thread travels only where it may: on seams, on the edge, on lines of the plan."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

import numpy as np
import shapely

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import (
    APART,
    Floats,
    Lines,
    Stitched,
    Whole,
    along,
    as_lines,
    rings,
)
from patternbook.quilting.records import LegKind, Path

STEP: Final = 2.0  # inches: no design begins farther from where the thread is
STEPS: Final = 0.03  # of all that is stitched, or
EACH: Final = 2.0  # inches for each design, in and out again


def travel(stitched: Stitched) -> Iterator[Notice]:
    for kind, allowed in _allowed(stitched).items():
        numbers = [n for n, leg in enumerate(stitched.legs) if leg.kind == kind]
        yield from _astray(stitched, numbers, kind, allowed)
    yield from _designs(stitched)
    yield from _again(stitched)
    yield from _steps(stitched)


def _allowed(stitched: Stitched) -> Mapping[LegKind, Sequence[Path]]:
    """Where a leg of each kind has to lie."""
    plan = stitched.plan
    marked = [line.path for line in plan.divided.marked]
    return {
        "ditch": [seam.path for seam in plan.top.seams],
        "beside": [line.path for line in plan.lines if line.kind == "beside"],
        "marked": marked + [line.path for line in plan.lines if line.kind == "marked"],
        "edge": rings(plan.top.edge),
    }


def _astray(
    stitched: Stitched, numbers: Sequence[int], kind: str, allowed: Sequence[Path]
) -> Iterator[Notice]:
    if not numbers:
        return
    spots, which = _along(stitched, numbers)
    off = np.ones(len(spots), dtype=bool)
    if any(len(path) > 1 for path in allowed):
        hit, _ = Lines(allowed, stitched.inch).hits(spots, stitched.same)
        off[hit] = False
    yield from _told(stitched, spots[off], which[off], f"lies on no line for it ({kind})")


def _along(stitched: Stitched, numbers: Sequence[int]) -> tuple[Floats, Whole]:
    """Spots on some of the legs, and the number of the leg that each lies on."""
    spots, which = along(stitched.lines[list(numbers)], APART * stitched.inch)
    return spots, np.asarray(numbers, dtype=np.intp)[which]


def _told(stitched: Stitched, spots: Floats, legs: Whole, what: str) -> Iterator[Notice]:
    """One notice for each leg, at the first spot."""
    for number in np.unique(legs):
        at = stitched.at(spots[legs == number][0])
        yield stitched.wrong("quilting-travel", f"leg {number + 1} {what}, at {at}.")


def _designs(stitched: Stitched) -> Iterator[Notice]:
    """A leg of a design lies on the design of its own area."""
    numbers = [n for n, leg in enumerate(stitched.legs) if leg.kind == "fill"]
    drawn = [(f.area.key, path) for f in stitched.plan.fills for path in f.drawn.paths]
    drawn = [one for one in drawn if len(one[1]) > 1]
    if not numbers:
        return
    spots, which = _along(stitched, numbers)
    off = np.ones(len(spots), dtype=bool)
    if drawn:
        keys = np.array([key for key, _ in drawn])
        own = np.array([leg.area for leg in stitched.legs])
        lines = Lines([path for _, path in drawn], stitched.inch)
        hit, line = lines.hits(spots, stitched.same)
        off[hit[keys[line] == own[which[hit]]]] = False
    yield from _told(stitched, spots[off], which[off], "is no part of the design of its area")


def _again(stitched: Stitched) -> Iterator[Notice]:
    """What is called stitched before, was: an earlier leg lies there; and what was is called so."""
    long = shapely.length(stitched.lines) > 4 * stitched.same
    numbers = np.flatnonzero(long)
    if not len(numbers):
        return
    spots, which = _along(stitched, list(numbers))
    new = np.ones(len(spots), dtype=bool)
    hit, leg = stitched.stretches.hits(spots, stitched.same)
    new[hit[leg < which[hit]]] = False
    again = np.array([leg.again for leg in stitched.legs])
    wrong = new & again[which]
    yield from _told(stitched, spots[wrong], which[wrong], "is called stitched before, and was not")
    fresh = np.zeros(len(stitched.legs), dtype=bool)
    fresh[which[new]] = True
    maybe = [int(n) for n in numbers if not fresh[n] and not again[n]]
    silent = np.isin(which, [n for n in maybe if _whole_again(stitched, n)])
    yield from _told(
        stitched, spots[silent], which[silent], "was stitched before, and not so called"
    )


def _whole_again(stitched: Stitched, number: int) -> bool:
    """Whether a leg lies on earlier ones from end to end, looked at between the spots too."""
    line, near = stitched.lines[number], stitched.same
    earlier = stitched.lines[:number]
    earlier = earlier[shapely.dwithin(earlier, line, near)]
    under = shapely.union_all(shapely.buffer(earlier, near))
    return bool(shapely.difference(line, under).length <= near)


def _steps(stitched: Stitched) -> Iterator[Notice]:
    """Steps lie on nothing, so they are short, and few."""
    steps = as_lines([leg.path for leg in stitched.legs if leg.kind == "step"])
    length = shapely.length(steps)
    for step in steps[length > STEP * stitched.inch + stitched.same]:
        at = stitched.at(shapely.get_coordinates(step)[0])
        message = f"a step of {stitched.told(step.length)} is no step, at {at}."
        yield stitched.wrong("quilting-travel", message)
    designs = EACH * stitched.inch * len(stitched.plan.fills)
    if length.sum() > max(STEPS * stitched.length, designs):
        message = (
            f"steps come to {stitched.told(float(length.sum()))} of "
            f"{stitched.told(stitched.length)}: more than {STEPS:.0%}."
        )
        yield stitched.wrong("quilting-travel", message)
