"""What every diagram is drawn from: the plans of all sizes, and one set of tones for all."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Protocol

from patternbook.cutting.records import CuttingPlan
from patternbook.diagrams.cloths import Cloths
from patternbook.diagrams.shape import Points, box
from patternbook.diagrams.shown import Shown, shown_top
from patternbook.inch import System
from patternbook.quilt.heading import Heading
from patternbook.quilt.place import Patch, patches
from patternbook.quilt.points import outlined
from patternbook.quilt.records import LayoutMade, PiecedMade, Quilt, Unit
from patternbook.sewing.records import SewingPlan
from patternbook.strokes.stroke import Fill

if TYPE_CHECKING:  # its shapes are only loaded when the quilting is drawn
    from patternbook.quilting.records import QuiltingPlan


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
    @property
    def quilting(self) -> QuiltingPlan | None: ...


@dataclass(frozen=True)
class Size:
    """One size as it is drawn: its plans, and the tones it is drawn in.

    `prints` are the prints of the top's patches, by their number among them.
    """

    name: str
    plans: Plans
    cloths: Cloths
    prints: Mapping[int, int]

    @property
    def quilt(self) -> Quilt:
        return self.plans.quilt

    @property
    def system(self) -> System:
        return self.plans.quilt.system

    @property
    def quilting(self) -> QuiltingPlan | None:
        """The plan of the quilting, made when a drawing first asks for it."""
        return self.plans.quilting

    @cached_property
    def shown(self) -> tuple[Shown, ...]:
        """Every patch of the top in its place, in order."""
        return shown_top(self.plans.patches, self.fills)

    @cached_property
    def edge(self) -> Points:
        """The finished edge of the top: where rows end in points, no rectangle."""
        made = self.quilt.units[self.quilt.top].made if self.quilt.top else None
        if isinstance(made, LayoutMade) and made.edge is not None:
            return outlined(made.edge)
        return box(0, 0, *self.top)

    @cached_property
    def top(self) -> tuple[float, float]:
        """Width and length of the finished top."""
        across, down = self.quilt.finished or (0, 0)
        return float(across), float(down)

    @cached_property
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
        found = self._first(unit)
        if found is None:
            inside = patches(self.quilt, unit)
            return [self.fill(one.letter, number) for number, one in enumerate(inside, start=1)]
        first, path = found
        end = first
        while end < len(self.fills) and self.plans.patches[end].within[: len(path)] == path:
            end += 1
        return self.fills[first:end]

    def _first(self, unit: str) -> tuple[int, tuple[str, ...]] | None:
        """The number of the first patch in such a unit, and the way down to that unit."""
        for number, patch in enumerate(self.plans.patches):
            for depth, step in enumerate(patch.within, start=1):
                if step.split()[0] == unit:
                    return number, patch.within[:depth]
        return None


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
        """Every unit in order of making, with the first size that has it; the top only where it
        is sewn in a way of its own."""
        found: dict[str, tuple[Size, Unit]] = {}
        for size in self.sizes:
            for unit in size.quilt.units.values():
                if unit.name != size.quilt.top or isinstance(unit.made, PiecedMade):
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
