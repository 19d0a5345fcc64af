"""The cloth that strips are cut from: how long a strip of it is, and how wide one may be."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from patternbook.cutting.records import UNNAMED
from patternbook.inch import System
from patternbook.quilt.records import CutSize, Fabric, Quilt

SHEETS: Final = ("squares", "fat quarter", "fat eighth", "panel")
SINGLY: Final = ("fat quarter", "fat eighth", "panel")  # bought one at a time, if no pack is named

# Smallest usable quarters and eighths in the shops: 18 × 21 and 9 × 21 in (trade facts 4.4, 4.5);
# 50 × 53.5 cm from cloth of 107 cm (3.6), and half of that.
QUARTERS: Final = {
    ("fat quarter", "in"): CutSize(Fraction(18), Fraction(21)),
    ("fat eighth", "in"): CutSize(Fraction(9), Fraction(21)),
    ("fat quarter", "cm"): CutSize(Fraction(50), Fraction(107, 2)),
    ("fat eighth", "cm"): CutSize(Fraction(25), Fraction(107, 2)),
}


@dataclass(frozen=True)
class Cloth:
    """One fabric as it lies on the table.

    `run` is the length of one strip, `roll` the width of a pre-cut strip, `deep` how far strips
    can lie one above the other (None: the bolt has no end). `long_side`: strips are as wide as
    the longer side of their pieces, where she has not said how wide.
    """

    fabric: Fabric
    run: Fraction
    roll: Fraction | None = None
    deep: Fraction | None = None
    turned: bool = False
    long_side: bool = False


def pre_cut_size(fabric: Fabric, system: System) -> CutSize | None:
    """The size of one square, quarter or panel; None where nobody says."""
    size = fabric.size or QUARTERS.get((fabric.form, system.unit))
    return size if size and size.down else None


def ways_to_lay(fabric: Fabric, system: System) -> Iterator[Cloth]:
    """The ways in which strips may run in this fabric: one, or four in a pre-cut square."""
    if fabric.form == "strip roll":
        strip = fabric.size or CutSize(Fraction(0), None)
        yield Cloth(fabric, strip.down or fabric.width, strip.across or None)
        return
    size = pre_cut_size(fabric, system) if fabric.form in SHEETS else None
    if size is None or size.down is None:
        yield Cloth(fabric, fabric.width)
        return
    straight = Cloth(fabric, size.across, deep=size.down)
    turned = Cloth(fabric, size.down, deep=size.across, turned=True)
    for cloth in (straight, turned):
        yield cloth
        if not fabric.one_way:
            yield replace(cloth, long_side=True)


def cloth_named(quilt: Quilt, name: str | None) -> Fabric:
    """The fabric of this name; in a fragment, bolt cloth of the pattern's usual width."""
    key = name or UNNAMED
    return quilt.fabrics.get(key) or Fabric(key, key, "yardage", quilt.width)
