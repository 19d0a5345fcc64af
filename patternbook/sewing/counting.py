"""How many of each unit are sewn, counted from the top down, and what the steps take again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from patternbook.quilt.records import LayoutMade, Placed, Quilt, Unit
from patternbook.sewing.records import Laid, SegmentStep, Step, Taken


def to_make(quilt: Quilt) -> Mapping[str, int]:
    """How many of each unit the top takes; in a fragment as many as the author says of those
    that nothing takes."""
    need: Counter[str] = Counter({quilt.top: 1} if quilt.top else {})
    for unit in reversed(tuple(quilt.units.values())):
        name = unit.name
        if quilt.top is None and not need[name]:
            need[name] = unit.make
        for part, number in _parts(unit).items():
            if part in quilt.units:
                need[part] += number * need[name]
    return need


def _parts(unit: Unit) -> Counter[str]:
    if not isinstance(unit.made, LayoutMade):
        return Counter()
    placed = [part for line in unit.made.lines for part in line.parts]
    placed += [part for border in unit.made.borders for part in border.parts]
    return Counter(part.part for part in placed)


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
    return {
        step.unit: step.cut if isinstance(step, SegmentStep) else step.make
        for step in steps
        if step.last
    }


def patches(quilt: Quilt, unit: str) -> int:
    """How many patches one unit holds."""
    held: dict[str, int] = {}
    for name, of in quilt.units.items():
        held[name] = sum(held.get(part.part, 1) for part in of.placed)
    return held[unit]
