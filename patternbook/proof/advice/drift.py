"""How far a line of many seams is off when each seam is a hair too deep (rule R1)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from patternbook.inch import length, printed
from patternbook.notice import Notice
from patternbook.proof.advice.told import advised, place_of
from patternbook.proof.evidence import Evidence

# Common practice, no source: about half an inch can still be eased in, more cannot.
EASED: Final = {"in": Fraction(1, 2), "cm": Fraction(5, 4)}
ROLES: Final = {"slant": "row", "sash": "sash row"}


def drift(sizes: Sequence[Evidence]) -> Iterator[Notice]:
    """The line with most seams of each size, where it is off by more than can be eased in."""
    found = {one.quilt.size: words for one in sizes if (words := _worst(one))}
    hint = "Sew a test of three strips first, and measure each row before it is joined."
    yield from advised(
        "seam-drift", "R1", found, place_of(sizes), "If every seam is a hair too deep,", hint=hint
    )


def _worst(one: Evidence) -> str | None:
    seams, what = max(_lines(one), default=(0, ""), key=lambda line: line[0])
    system, deep = one.quilt.system, one.quilt.settings.drift
    off = seams * 2 * deep
    if off <= EASED[system.unit]:
        return None
    hair = printed(deep, system.unit == "cm")
    return f"{what} comes out {seams} seams × 2 × {hair} = {length(off, system)} short"


def _lines(one: Evidence) -> Iterator[tuple[int, str]]:
    """Each line of a layout and all its lines joined, with the seams between the parts as they
    lie; the sewing's own count is not read. Across rows on the slant two of the corners lie.
    Parts that are sewn over papers keep the papers' size."""
    for unit, made in one.layouts():
        if made.setting == "hexagons":
            continue
        for line in made.lines:
            yield len(line.parts) - 1, f"a {ROLES.get(line.role, line.role)} of {unit.name}"
        ends = min(2, len(made.corners))
        yield len(made.lines) - 1 + ends, f"{unit.name}, its {made.by} joined,"
