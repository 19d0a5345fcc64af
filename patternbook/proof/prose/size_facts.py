"""All that one size knows of lengths and numbers, each with the part it is of and what it is."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import ruler_near
from patternbook.proof.evidence import Evidence
from patternbook.proof.prose.fact_counts import Number, numbers
from patternbook.proof.prose.fact_finishing import of_finishing
from patternbook.proof.prose.fact_lengths import Length, of_pieces, of_quilt, of_units
from patternbook.quilt.records import LayoutMade

QUILT: Final = "top"


@dataclass(frozen=True)
class Facts:
    """The facts of one size."""

    known: Evidence

    @cached_property
    def lengths(self) -> tuple[Length, ...]:
        """Every length and size."""
        known = self.known
        return (*of_pieces(known), *of_units(known), *of_quilt(known), *of_finishing(known))

    @cached_property
    def values(self) -> frozenset[Fraction]:
        """Every length as it may be written: exact, or where no ruler shows it the nearest mark
        or its decimals."""
        return frozenset(
            way for fact in self.lengths for side in fact.sides for way in self.ways(side)
        )

    def ways(self, value: Exact) -> Iterator[Fraction]:
        """How a length may be written."""
        if value.rational and value.fraction.denominator <= 64:
            yield value.fraction
            return
        system = self.known.quilt.system
        yield from (value.up(system.step), value.down(system.step), ruler_near(value, system))
        yield from (Fraction(round(float(value) * 10**n), 10**n) for n in (0, 1, 2))

    @cached_property
    def numbers(self) -> tuple[Number, ...]:
        """Every number that is counted."""
        return tuple(numbers(self.known))

    @cached_property
    def counted(self) -> frozenset[int]:
        """The numbers alone."""
        return frozenset(number.value for number in self.numbers)

    @cached_property
    def parts(self) -> frozenset[str]:
        """Letters, units and cloths."""
        quilt = self.known.quilt
        return frozenset((*quilt.pieces, *quilt.units, *quilt.fabrics))

    def kin(self, part: str | None) -> frozenset[str]:
        """A part and all parts it is made of; of a cloth what is cut from it; of the whole all."""
        quilt = self.known.quilt
        if part is None or part == QUILT:
            return self.parts | {f.part for f in self.lengths}
        if part in quilt.fabrics:
            letters = (p.letter for p in quilt.pieces.values() if p.fabric == part)
            return frozenset((part, *letters))
        found, fresh = {part}, [part]
        while fresh:
            for other in self._takes(fresh.pop()):
                if other not in found:
                    found.add(other)
                    fresh.append(other)
        return frozenset(found)

    def _takes(self, part: str) -> Iterable[str]:
        unit = self.known.quilt.units.get(part)
        if unit is not None:
            return (*unit.uses, *(placed.part for placed in unit.placed))
        return dict(self.borders).get(part, ())

    @cached_property
    def borders(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """Each border of the top by its number, and its parts."""
        top = self.known.quilt.units.get(QUILT)
        made = top.made if top else None
        if not isinstance(made, LayoutMade):
            return ()
        return tuple(
            (f"border {one.number}", tuple(filter(None, (one.side, one.end, one.stones))))
            for one in made.borders
        )

    @cached_property
    def blocks(self) -> tuple[str, ...]:
        """The units that the top is laid of, which a reader calls the blocks; in a fragment the
        units that are in no other."""
        quilt = self.known.quilt
        top = quilt.units.get(QUILT)
        if top is not None:
            inside = dict.fromkeys(placed.part for placed in top.placed)
            return tuple(part for part in inside if part in quilt.units)
        used = {part for unit in quilt.units.values() for part in unit.uses}
        return tuple(name for name in quilt.units if name not in used)
