"""The whole sewing of one size in order: each unit after the units it is made of, the top last."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.notice import Notice
from patternbook.quilt.meeting import Meetings
from patternbook.quilt.nesting import clashes
from patternbook.quilt.pressing import PressingPlan, pressed
from patternbook.quilt.prints import nameless
from patternbook.quilt.records import PiecedMade, Quilt, StripSetMade, Unit
from patternbook.sewing.border_steps import border_steps
from patternbook.sewing.counting import made_by, patches, sewn_in, to_make
from patternbook.sewing.finishing import finishing
from patternbook.sewing.layouts import LayoutSteps
from patternbook.sewing.pieces import piece_steps
from patternbook.sewing.records import PieceStep, SewingPlan, Step, Totals
from patternbook.sewing.sets import set_steps

# Thread for a seam of top and bobbin together, and what is lost at starts and ends.
THREAD: Final = Fraction(5, 2) * Fraction(115, 100)


def plan(quilt: Quilt) -> tuple[SewingPlan, tuple[Notice, ...]]:
    """All steps of one size, and what pressing and prints leave unclear or clashing."""
    pressing, told = pressed(quilt)
    meetings = Meetings(quilt, pressing)
    steps = _numbered(_steps(quilt, pressing, meetings))
    sewn, joined = sewn_in(steps, quilt.units)
    made = SewingPlan(
        size=quilt.size,
        steps=steps,
        pressing=pressing,
        sewn=sewn,
        joined=joined,
        made=made_by(steps),
        totals=_totals(steps, quilt),
        finishing=tuple(finishing(quilt)),
    )
    return made, (*told, *clashes(quilt, pressing, meetings), *nameless(quilt))


def _steps(
    quilt: Quilt, pressing: Mapping[str, PressingPlan], meetings: Meetings
) -> Iterator[Step]:
    need = to_make(quilt)
    for name, unit in quilt.units.items():
        if not need[name]:
            continue  # nothing takes it, which the author is told elsewhere
        steps = tuple(_unit_steps(unit, pressing[name], need[name], quilt, meetings))
        yield from steps[:-1]
        for step in steps[-1:]:
            yield replace(step, note=_notes(step.note, unit.note), last=True)


def _unit_steps(
    unit: Unit, pressing: PressingPlan, make: int, quilt: Quilt, meetings: Meetings
) -> Iterator[Step]:
    if isinstance(unit.made, PiecedMade):
        yield from piece_steps(unit, unit.made, pressing, make)
        return
    if isinstance(unit.made, StripSetMade):
        yield from set_steps(unit, unit.made, pressing.lines[0], make, quilt)
        return
    layout = LayoutSteps(unit, unit.made, pressing, quilt, meetings)
    yield from layout.steps(make)
    centre = layout.alone() if len(unit.made.lines) == 1 else ()
    yield from border_steps(unit, unit.made, centre, make, quilt, meetings)


def times(step: Step) -> int:
    """How often its seams are sewn."""
    return step.goes if isinstance(step, PieceStep) else step.make


def _notes(*notes: str | None) -> str | None:
    return "\n".join(note for note in notes if note) or None


def _numbered(steps: Iterable[Step]) -> tuple[Step, ...]:
    return tuple(replace(step, number=number) for number, step in enumerate(steps, 1))


def _totals(steps: Sequence[Step], quilt: Quilt) -> Totals:
    length = sum((step.seam_length for step in steps), Exact(0))
    return Totals(
        seams=sum(step.seams * times(step) for step in steps),
        seam_length=length,
        thread=length * THREAD,
        matches=sum(step.matches * step.make for step in steps),
        same_way=sum(step.same_way * step.make for step in steps),
        pieces=patches(quilt, quilt.top) if quilt.top else 0,
    )
