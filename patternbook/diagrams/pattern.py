"""What every diagram is drawn from: the plans of all sizes, and one set of tones for all."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from patternbook.cutting.records import CuttingPlan
from patternbook.diagrams.cloths import Cloths
from patternbook.inch import System
from patternbook.quilt.place import Patch, patches
from patternbook.quilt.records import Heading, Quilt, Unit
from patternbook.quilting.records import QuiltingMap
from patternbook.sewing.records import SewingPlan
from patternbook.strokes.stroke import Fill


class Plans(Protocol):
    """One size: the quilt, every patch of its top in place, what is cut and what is sewn."""

    @property
    def quilt(self) -> Quilt: ...
    @property
    def patches(self) -> tuple[Patch, ...]: ...
    @property
    def cutting(self) -> CuttingPlan: ...
    @property
    def sewing(self) -> SewingPlan: ...


@dataclass(frozen=True)
class Size:
    """One size as it is drawn: its plans, its quilting, and the tones it is drawn in.

    `prints` are the prints of the top's patches, by their number among them.
    """

    name: str
    plans: Plans
    cloths: Cloths
    prints: Mapping[int, int]
    quilting: QuiltingMap | None

    @property
    def quilt(self) -> Quilt:
        return self.plans.quilt

    @property
    def system(self) -> System:
        return self.plans.quilt.system

    def fills(self) -> tuple[Fill, ...]:
        """The fill of every patch of the top, in order."""
        return tuple(
            self.fill(patch.letter, self.prints.get(number))
            for number, patch in enumerate(self.plans.patches)
        )

    def fill(self, letter: str, print_: int | None = None) -> Fill:
        """The fill of a piece, in one print where its fabric has several."""
        return self.cloths.piece(self.quilt, letter, print_)

    def fills_in(self, unit: str) -> Sequence[Fill]:
        """The fills of a unit's patches, as in the first one of these units in the top."""
        for number, patch in enumerate(self.plans.patches):
            depth = next(
                (at for at, step in enumerate(patch.within) if step.split()[0] == unit), None
            )
            if depth is not None:
                return self._run(number, patch.within[: depth + 1])
        inside = patches(self.quilt, unit)
        return [self.fill(patch.letter, number) for number, patch in enumerate(inside, start=1)]

    def _run(self, first: int, path: tuple[str, ...]) -> Sequence[Fill]:
        """The fills of the patches from that one on that lie in the same unit."""
        fills = []
        for number in range(first, len(self.plans.patches)):
            patch = self.plans.patches[number]
            if patch.within[: len(path)] != path:
                break
            fills.append(self.fill(patch.letter, self.prints.get(number)))
        return fills


@dataclass(frozen=True)
class Pattern:
    """All sizes of one pattern as they are drawn; `cover` is the size on the cover."""

    heading: Heading
    sizes: tuple[Size, ...]
    cover: Size

    @property
    def first(self) -> Size:
        """The size that stands for all where they do not differ."""
        return self.sizes[0]

    @property
    def tops(self) -> tuple[Size, ...]:
        """The sizes that have a top; none in a fragment."""
        return tuple(size for size in self.sizes if size.quilt.finished and size.plans.patches)

    def units(self) -> tuple[tuple[Size, Unit], ...]:
        """Every unit but the top, in order of making, with the first size that has it."""
        found: dict[str, tuple[Size, Unit]] = {}
        for size in self.sizes:
            for unit in size.quilt.units.values():
                if unit.name != size.quilt.top:
                    found.setdefault(unit.name, (size, unit))
        return tuple(found.values())

    def drawn_for(self, size: Size, unit: Unit) -> str:
        """` (drawn for crib)` where the unit is not the same in all sizes, else nothing."""
        others = [one.quilt.units.get(unit.name) for one in self.sizes]
        alike = all(
            other is None or (other.finished, other.placed) == (unit.finished, unit.placed)
            for other in others
        )
        return "" if alike else f" (drawn for {size.name})"
