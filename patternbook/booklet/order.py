"""The steps of all sizes as one list: a step that several sizes have stands in it once."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import BorderStep, LineStep, Step

Key = tuple[str, ...]


@dataclass(frozen=True)
class Together:
    """One step of the booklet: its number, and the step that it is in each size that has it."""

    number: int
    found: Mapping[str, Step]

    @property
    def any(self) -> Step:
        """The step of the first size that has it."""
        return next(iter(self.found.values()))

    @property
    def unit(self) -> str:
        """The unit it is a step of."""
        return self.any.unit


def together(sizes: Sequence[Evidence]) -> tuple[Together, ...]:
    """The steps in order; one that only some sizes have stands where they have it."""
    found: dict[Key, dict[str, Step]] = {}
    for known in sizes:
        before: Key | None = None
        for key, step in _keyed(known.sewing.steps):
            if key not in found:
                found = _behind(found, before, key)
            found[key][known.quilt.size] = step
            before = key
    return tuple(Together(number, steps) for number, steps in enumerate(found.values(), start=1))


def _behind(
    found: Mapping[Key, dict[str, Step]], before: Key | None, key: Key
) -> dict[Key, dict[str, Step]]:
    """The list with a new place right behind the step that comes before it."""
    places = list(found.items())
    at = 1 + next((at for at, (name, _) in enumerate(places) if name == before), -1)
    return dict([*places[:at], (key, {}), *places[at:]])


def _keyed(steps: Sequence[Step]) -> Iterator[tuple[Key, Step]]:
    """Each step by what it does, and the how manieth of its kind it is in its unit."""
    seen: Counter[Key] = Counter()
    for step in steps:
        does: Key = (step.unit, step.kind)
        if isinstance(step, LineStep):
            does = (*does, step.role)
        elif isinstance(step, BorderStep):
            does = (*does, str(step.border), step.pair)
        seen[does] += 1
        yield (*does, str(seen[does])), step


def number_of(unit: str, sizes: Sequence[Evidence]) -> int | None:
    """The booklet's first step of a unit."""
    return next((step.number for step in together(sizes) if step.unit == unit), None)
