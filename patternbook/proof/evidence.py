"""What the checks look at: the finished records of one size, and what is recounted from them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from patternbook.cutting.records import CuttingPlan
from patternbook.notice import Notice
from patternbook.proof.boxes import NOUGHT, Whole, whole
from patternbook.proof.turned_over import other_hand
from patternbook.quilt.place import Patch
from patternbook.quilt.records import LayoutMade, PiecedMade, Quilt, StripSetMade, Unit
from patternbook.sewing.records import SewingPlan

if TYPE_CHECKING:  # its shapes are only loaded when the quilting is planned
    from patternbook.quilting.records import QuiltingPlan

Quilted = tuple["QuiltingPlan | None", tuple[Notice, ...]]
Quilter = Callable[[], Quilted]


def nothing_quilted() -> Quilted:
    """No plan."""
    return None, ()


@dataclass(frozen=True)
class Evidence:
    """One size: the quilt, every patch of its top in place, what is cut and what is sewn.

    `sound`: its lengths hold. Where they have been told not to, their recounts would only
    follow from that. `quilter` plans the quilting, which takes long and is not always wanted.
    """

    quilt: Quilt
    patches: tuple[Patch, ...]
    cutting: CuttingPlan
    sewing: SewingPlan
    sound: bool = True
    quilter: Quilter = field(default=nothing_quilted, compare=False, repr=False)

    @cached_property
    def quilted(self) -> Quilted:
        """The plan of the quilting and what is told of it, made when it is first asked for."""
        return self.quilter()

    @property
    def quilting(self) -> QuiltingPlan | None:
        """The plan of the quilting."""
        return self.quilted[0]

    @cached_property
    def whole(self) -> Whole:
        """The patches of the top itself as boxes of whole numbers, and the finished top behind
        them."""
        top = self.quilt.finished or (NOUGHT, NOUGHT)
        return whole([*(patch[1:5] for patch in self.flat), (NOUGHT, NOUGHT, *top)])

    @cached_property
    def flat(self) -> tuple[Patch, ...]:
        """The patches that are sewn edge to edge; the others lie on them."""
        return tuple(patch for patch in self.patches if not patch.laid_on)

    @cached_property
    def lie(self) -> Mapping[tuple[str, str], int]:
        """How many patches of a letter lie in the top, by the unit each is sewn into."""
        return Counter((patch.letter, home(patch)) for patch in self.patches)

    @cached_property
    def lies(self) -> Mapping[str, int]:
        """How many patches of each letter lie in the top."""
        found: Counter[str] = Counter()
        for (letter, _), number in self.lie.items():
            found[letter] += number
        return found

    @cached_property
    def lying(self) -> Mapping[str, int]:
        """How many of each unit lie in the top whole, from the places of the parts."""
        found: Counter[str] = Counter({self.quilt.top: 1} if self.quilt.top else {})
        for unit in reversed(tuple(self.quilt.units.values())):
            for part in unit.placed:
                if part.part in self.quilt.units:
                    found[part.part] += found[unit.name]
        return found

    @cached_property
    def taken(self) -> Mapping[str, int]:
        """How many of each unit are sewn into something. What a unit is cut from lies in the top
        in parts only: whole goes of it are taken."""
        found: Counter[str] = Counter({self.quilt.top: 1} if self.quilt.top else {})
        for unit in reversed(tuple(self.quilt.units.values())):
            if isinstance(unit.made, PiecedMade):
                goes = self.goes(unit, unit.made, found[unit.name])
                takes = [(part, number * goes) for part, number in unit.made.takes]
            else:
                takes = [(part.part, found[unit.name]) for part in unit.placed]
            for part, number in takes:
                if part in self.quilt.units:
                    found[part] += number
        return found

    @cached_property
    def other_hand(self) -> Mapping[str, int]:
        """How many of each unit are wanted as in a mirror."""
        return other_hand(self.quilt, self.lying)

    def goes(self, unit: Unit, made: PiecedMade, units: int) -> int:
        """Whole goes for so many units, those of each hand apart."""
        over = min(units, self.other_hand.get(unit.name, 0))
        return -(-(units - over) // made.gives) - (-over // made.gives)

    def strip_sets(self) -> tuple[tuple[Unit, StripSetMade], ...]:
        """The units that are slices of strip sets."""
        units = self.quilt.units.values()
        return tuple((unit, unit.made) for unit in units if isinstance(unit.made, StripSetMade))

    def layouts(self) -> tuple[tuple[Unit, LayoutMade], ...]:
        """The units that are laid in rows or columns."""
        units = self.quilt.units.values()
        return tuple((unit, unit.made) for unit in units if isinstance(unit.made, LayoutMade))

    def pieced(self) -> tuple[tuple[Unit, PiecedMade], ...]:
        """The units that a method of its own makes."""
        units = self.quilt.units.values()
        return tuple((unit, unit.made) for unit in units if isinstance(unit.made, PiecedMade))


def home(patch: Patch) -> str:
    """The unit that a patch is sewn into."""
    return patch.within[-1].partition(" ")[0]
