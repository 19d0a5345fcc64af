"""Strip sets: the slices that are cut are enough for those that lie in the top, and fit a set."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.forms import by_length
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown
from patternbook.quilt.records import Quilt, StripSetMade, Unit
from patternbook.sewing.records import SegmentStep


def slices(evidence: Evidence) -> Iterator[Notice]:
    """Errors where too few slices are cut, or more than a set has room for."""
    for unit, made in evidence.strip_sets():
        yield from _fit(evidence.quilt, unit, made)
        yield from _enough(evidence, unit, made)
        yield from _steps(evidence, unit, made)


def _fit(quilt: Quilt, unit: Unit, made: StripSetMade) -> Iterator[Notice]:
    used = made.per_set * made.segment
    if used > made.strip_length:
        message = (
            f"'{unit.name}': {made.per_set} × {shown(made.segment, quilt)} = "
            f"{shown(used, quilt)} to a set, its strips are {shown(made.strip_length, quilt)}."
        )
        yield recounted(quilt, "slices-fit", "R6", message, unit.place)
    for letter in dict.fromkeys(made.strips):
        piece = quilt.pieces.get(letter)
        fabric = quilt.fabrics.get(piece.fabric or "") if piece else None
        if fabric and by_length(fabric.form) and made.strip_length > fabric.width:
            message = (
                f"'{unit.name}': sets {shown(made.strip_length, quilt)} long from {letter}, whose "
                f"cloth is {shown(fabric.width, quilt)} wide."
            )
            yield recounted(quilt, "slices-fit", "R6", message, unit.place)


def _enough(evidence: Evidence, unit: Unit, made: StripSetMade) -> Iterator[Notice]:
    """Slices in the top, counted from the patches, and those that other units are cut from,
    against sets times slices."""
    lie = sum(n for (_, home), n in evidence.lie.items() if home == unit.name)
    cut_up = evidence.taken[unit.name] - evidence.lying[unit.name]
    sewn = lie // len(unit.placed) + cut_up if evidence.patches and unit.placed else unit.make
    cut = made.sets * made.per_set
    if sewn > cut or sewn != unit.make or cut - sewn >= made.per_set > unit.make:
        message = (
            f"'{unit.name}': {made.sets} sets of {made.per_set} give {cut} slices; {sewn} lie in "
            f"the top, {unit.make} are to be made."
        )
        yield recounted(evidence.quilt, "slices", "R3", message, unit.place)


def _steps(evidence: Evidence, unit: Unit, made: StripSetMade) -> Iterator[Notice]:
    for step in evidence.sewing.of(unit.name):
        if isinstance(step, SegmentStep) and (step.cut, step.segment) != (
            made.sets * made.per_set,
            made.segment,
        ):
            message = (
                f"'{unit.name}': the step cuts {step.cut} slices of "
                f"{shown(step.segment, evidence.quilt)}, the sets give "
                f"{made.sets * made.per_set} of {shown(made.segment, evidence.quilt)}."
            )
            yield recounted(evidence.quilt, "slices", "R20", message, unit.place)
