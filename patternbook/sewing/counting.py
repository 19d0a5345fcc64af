"""How many of each unit are sewn, counted from the top down, and what the steps take again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from patternbook.quilt.hands import in_goes
from patternbook.quilt.records import PiecedMade, Placed, Quilt, StripSetMade, Unit
from patternbook.sewing.records import Laid, PieceStep, SegmentStep, Step, Taken


def to_make(quilt: Quilt) -> Mapping[str, int]:
    """How many of each unit the top takes; in a fragment as many as the author says of those
    that nothing takes."""
    need: Counter[str] = Counter({quilt.top: 1} if quilt.top else {})
    for unit in reversed(tuple(quilt.units.values())):
        name = unit.name
        if quilt.top is None and not need[name]:
            need[name] = unit.make
        for part, number in _parts(unit, need[name]).items():
            if part in quilt.units:
                need[part] += number
    return need


def _parts(unit: Unit, make: int) -> Mapping[str, int]:
    """What so many of a unit take; whole goes of one that is sewn in a way of its own."""
    if isinstance(unit.made, PiecedMade):
        goes = in_goes(make, min(unit.mirrored, make), unit.made.gives)
        return {part: number * goes for part, number in unit.made.takes}
    if isinstance(unit.made, StripSetMade):
        return {}
    placed = [part for line in unit.made.lines for part in line.parts]
    placed += [part for border in unit.made.borders for part in border.parts]
    return {part: number * make for part, number in Counter(p.part for p in placed).items()}


def taken(parts: Iterable[str], make: int) -> tuple[Taken, ...]:
    """How many of each part, in order of first meeting, for one and for all."""
    return tuple(Taken(part, one, one * make) for part, one in Counter(parts).items())


def laid(parts: Sequence[Placed]) -> tuple[Laid, ...]:
    """The parts in order, like neighbours together."""
    runs: list[Laid] = []
    for part in parts:
        if runs and (runs[-1].part, runs[-1].turn) == (part.part, part.turn):
            runs[-1] = runs[-1]._replace(times=runs[-1].times + 1)
        else:
            runs.append(Laid(part.part, part.turn, 1))
    return tuple(runs)


def sewn_in(steps: Iterable[Step], units: Iterable[str]) -> tuple[Counter[str], Counter[str]]:
    """The pieces and the units that all steps sew into something."""
    pieces: Counter[str] = Counter()
    joined: Counter[str] = Counter()
    names = set(units)
    for step in steps:
        for part in step.parts:
            (joined if part.part in names else pieces)[part.part] += part.all
    return pieces, joined


def made_by(steps: Iterable[Step]) -> Mapping[str, int]:
    """How many of each unit the steps leave finished; of a strip set, the slices cut."""
    return {step.unit: _finished(step) for step in steps if step.last}


def _finished(step: Step) -> int:
    if isinstance(step, SegmentStep):
        return step.cut
    return step.goes * step.gives if isinstance(step, PieceStep) else step.make


def patches(quilt: Quilt, unit: str) -> int:
    """How many patches one unit holds."""
    held: dict[str, int] = {}
    for name, of in quilt.units.items():
        held[name] = sum(held.get(part.part, 1) for part in of.placed)
    return held[unit]
