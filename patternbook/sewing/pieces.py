"""The step of a unit that is sewn in a way of its own: as often as its method's goes are wanted."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.methods.made import PiecedMade
from patternbook.quilt.hands import in_goes
from patternbook.quilt.pressing import PressingPlan
from patternbook.quilt.records import Unit
from patternbook.sewing.records import PieceStep, Taken


def piece_steps(unit: Unit, made: PiecedMade, plan: PressingPlan, make: int) -> Iterator[PieceStep]:
    """One step: all actions of a go, and how many goes."""
    goes = in_goes(make, min(unit.mirrored, make), made.gives)
    inner = dict.fromkeys(None if at is None else unit.placed[at].part for at in plan.inner)
    yield PieceStep(
        unit=unit.name,
        kind="piece",
        one=1,
        make=make,
        parts=tuple(Taken(part, number, number * goes) for part, number in made.takes),
        measure=unit.measure,
        seams=made.stitched,
        seam_length=made.sewn * goes,
        word=made.word,
        actions=made.actions,
        goes=goes,
        gives=made.gives,
        spare=goes * made.gives - make,
        before=made.before,
        toward=tuple(inner),
    )
