"""The steps of a strip set: strips sewn side by side in pairs of pairs, then cut across."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.exact import Exact
from patternbook.quilt.pressing import LinePressing
from patternbook.quilt.records import Quilt, Sides, StripSetMade, Unit
from patternbook.sewing.counting import taken
from patternbook.sewing.records import SegmentStep, Step, StripStep
from patternbook.sewing.rounds import Joined, rounds


def set_steps(
    unit: Unit, made: StripSetMade, pressing: LinePressing, make: int, quilt: Quilt
) -> Iterator[Step]:
    """Sew the sets, then cut them; a set of one strip is only cut."""
    strips = taken(made.strips, made.sets)
    if len(made.strips) > 1:
        yield _sew(unit, made, pressing, quilt)
    cut = made.sets * made.per_set
    yield SegmentStep(
        unit=unit.name,
        kind="segments",
        one=1,
        make=make,
        parts=() if len(made.strips) > 1 else strips,
        measure=unit.measure,
        seams=0,
        seam_length=Exact(0),
        segment=made.segment,
        sets=made.sets,
        per_set=made.per_set,
        fits=made.fits,
        cut=cut,
        spare=cut - make,
    )


def _sew(unit: Unit, made: StripSetMade, pressing: LinePressing, quilt: Quilt) -> StripStep:
    widths = [part.across for part in unit.placed]
    length = Exact(made.strip_length)
    strips = Joined(widths, length, "across", Exact(quilt.seam * 2), Exact(0))
    seams = len(made.strips) - 1
    return StripStep(
        unit=unit.name,
        kind="strips",
        one=1,
        make=made.sets,
        parts=taken(made.strips, made.sets),
        measure=Sides(made.set_width, length),
        seams=seams,
        seam_length=length * (seams * made.sets),
        rounds=rounds(made.strips, strips, made.sets),
        press=pressing.seams,
        strips=made.strips,
        strip_length=made.strip_length,
        word=pressing.word,
        stated=pressing.stated,
    )
