"""Units and pieces of two hands: what is not the same mirrored is counted apart."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from patternbook.methods.made import Placed, Sides, Turn
from patternbook.quilt.place import lying
from patternbook.quilt.resolve import Resolver


@dataclass(frozen=True)
class Lain:
    """A unit as it is laid."""

    placed: tuple[Placed, ...]
    finished: Sides


class Hands:
    """Which units are handed, found from how their patches lie; nothing is worked out where no
    cell is mirrored."""

    def __init__(self, resolver: Resolver) -> None:
        self._resolver = resolver
        self._units: dict[str, Lain] = {}
        self._handed: dict[str, bool] = {}
        self.mirrored: Counter[str] = Counter()

    def placed(self, name: str) -> tuple[Placed, ...]:
        """The parts of a unit in place."""
        return self._lain(name).placed

    def handed(self, name: str) -> bool:
        """Whether a unit, mirrored, is none of its own turns."""
        if name not in self._handed:
            plain = [self._map(name, Turn(quarters)) for quarters in range(4)]
            self._handed[name] = self._map(name, Turn(0, True)) not in plain
        return self._handed[name]

    def lay(self, name: str, units: int) -> int:
        """Pass on how many parts of so many of a unit lie mirrored; how many of the units
        themselves are of the other hand."""
        resolver, mirrored = self._resolver, self.mirrored[name]
        if not resolver.mirrors or name in resolver.broken:
            return 0
        for part in self.placed(name):
            if part.part in resolver.units:
                turned = units - mirrored if part.turn.mirrored else mirrored
                self.mirrored[part.part] += turned
        return mirrored if mirrored and self.handed(name) else 0

    def _lain(self, name: str) -> Lain:
        if name not in self._units:
            resolver = self._resolver
            unit = resolver.units[name]
            placed = resolver.work(name).make(name, unit, resolver, 1).placed
            span = resolver.sum_of(name)
            finished = Sides(resolver.length(span.across), resolver.length(span.down))
            self._units[name] = Lain(placed, finished)
            for part in {part.part for part in placed} & resolver.units.keys():
                self._lain(part)
        return self._units[name]

    def _map(self, name: str, turn: Turn) -> frozenset[object]:
        self._lain(name)
        return frozenset(
            (patch.letter, patch.x, patch.y, patch.across, patch.down, _corners(patch.outline))
            for patch in lying(self._units, name, turn)
        )


def _corners(outline: object) -> object:
    corners = getattr(outline, "corners", None)
    return frozenset(corners) if corners is not None else None


def in_goes(units: int, mirrored: int, gives: int) -> int:
    """Whole goes, those of each hand apart."""
    return -(-(units - mirrored) // gives) - (-mirrored // gives)
