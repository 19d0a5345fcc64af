"""What the checks look at: the finished records of one size, and what is recounted from them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from patternbook.cutting.records import CuttingPlan
from patternbook.proof.boxes import NOUGHT, Whole, whole
from patternbook.quilt.place import Patch
from patternbook.quilt.records import LayoutMade, Quilt, StripSetMade, Unit
from patternbook.sewing.records import SewingPlan


@dataclass(frozen=True)
class Evidence:
    """One size: the quilt, every patch of its top in place, what is cut and what is sewn.

    `sound`: its lengths hold. Where they have been told not to, their recounts would only
    follow from that.
    """

    quilt: Quilt
    patches: tuple[Patch, ...]
    cutting: CuttingPlan
    sewing: SewingPlan
    sound: bool = True

    @cached_property
    def whole(self) -> Whole:
        """The patches as boxes of whole numbers, and the finished top behind them."""
        top = self.quilt.finished or (NOUGHT, NOUGHT)
        return whole([*(patch[1:5] for patch in self.patches), (NOUGHT, NOUGHT, *top)])

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

    def strip_sets(self) -> tuple[tuple[Unit, StripSetMade], ...]:
        """The units that are slices of strip sets."""
        units = self.quilt.units.values()
        return tuple((unit, unit.made) for unit in units if isinstance(unit.made, StripSetMade))

    def layouts(self) -> tuple[tuple[Unit, LayoutMade], ...]:
        """The units that are laid in rows or columns."""
        units = self.quilt.units.values()
        return tuple((unit, unit.made) for unit in units if isinstance(unit.made, LayoutMade))


def home(patch: Patch) -> str:
    """The unit that a patch is sewn into."""
    return patch.within[-1].partition(" ")[0]
