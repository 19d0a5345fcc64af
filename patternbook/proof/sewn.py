"""The steps of sewing use what lies in the top, and make every unit that they use."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.quilt.records import Made, PiecedMade, Quilt, Sides, StripSetMade
from patternbook.sewing.records import Step, StripStep


def sewn(evidence: Evidence) -> Iterator[Notice]:
    """Errors where the steps and the top differ in pieces, in units, or in a measure."""
    quilt, sewing = evidence.quilt, evidence.sewing
    for piece in quilt.pieces.values():
        taken = sewing.sewn.get(piece.letter, 0)
        if evidence.patches and taken != piece.count:
            message = f"the steps sew {taken} {piece.letter}, {piece.count} are sewn into the top."
            yield recounted(quilt, "steps-count", "R3", message, piece.place)
    yield from _units(evidence)
    for step in sewing.steps:
        if step.last:
            yield from _step(quilt, step)


def _units(evidence: Evidence) -> Iterator[Notice]:
    quilt, sewing = evidence.quilt, evidence.sewing
    for unit in quilt.units.values():
        made, joined = sewing.made.get(unit.name, 0), sewing.joined.get(unit.name, 0)
        hands = 2 if evidence.other_hand.get(unit.name) else 1
        enough = unit.make <= made <= unit.make + hands * _spare(unit.made)
        placed = unit.make if unit.name == quilt.top or not evidence.patches else joined
        if not enough or placed != unit.make:
            message = (
                f"'{unit.name}': the steps make {made} and sew {joined} into something; "
                f"{unit.make} are to be made."
            )
            yield recounted(quilt, "steps-count", "R10", message, unit.place)


def _spare(made: Made) -> float:
    """What may be left over of a hand: any number of slices, less than a go of pieced units."""
    if isinstance(made, StripSetMade):
        return inf
    return made.gives - 1 if isinstance(made, PiecedMade) else 0


def _step(quilt: Quilt, step: Step) -> Iterator[Notice]:
    """The last step of a unit leaves what the unit measures."""
    unit = quilt.units.get(step.unit)
    if unit is None:
        message = f"step {step.number} makes '{step.unit}', which nothing describes."
        yield recounted(quilt, "steps-unit", "R10", message, part_place(quilt, step.unit))
    elif not isinstance(step, StripStep) and step.measure != unit.measure:
        message = (
            f"step {step.number} leaves '{step.unit}' at {_sides(step.measure, quilt)} from raw "
            f"edge to raw edge; it measures {_sides(unit.measure, quilt)}."
        )
        yield recounted(quilt, "steps-measure", "R20", message, unit.place)


def _sides(sides: Sides, quilt: Quilt) -> str:
    return f"{shown(sides.across, quilt)} × {shown(sides.down, quilt)}"
