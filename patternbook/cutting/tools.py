"""Which ruler a cut needs, and how often the cloth is folded for it.

The sizes of rulers and mats are common practice, no source.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import Final, Literal, NamedTuple

from patternbook.cutting.records import Ruler
from patternbook.inch import System

LAYERS: Final = 4  # more slip under the ruler (common practice, no source)
MOST_FOLDS: Final = 3  # as many layers as a blade goes through


def _rulers(*sides: tuple[str, str]) -> tuple[Ruler, ...]:
    return tuple(Ruler(Fraction(across), Fraction(down)) for across, down in sides)


class Table(NamedTuple):
    """The tools of one system, the smallest ruler and mat first."""

    rulers: tuple[Ruler, ...]
    mats: tuple[Ruler, ...]

    @property
    def long_ruler(self) -> Ruler:
        """The one that cuts strips."""
        return max(self.rulers, key=lambda ruler: ruler.down)

    @property
    def mat(self) -> Ruler:
        """The largest mat, on which every cut can be made."""
        return self.mats[-1]

    @property
    def square(self) -> Ruler:
        """The widest one, laid beside the long one for wide strips."""
        return max(self.rulers, key=lambda ruler: ruler.across)


TABLES: Final = {
    "in": Table(
        _rulers(("13/2", "13/2"), ("25/2", "25/2"), ("6", "24")),
        _rulers(("12", "18"), ("18", "24"), ("24", "36")),
    ),
    "cm": Table(
        _rulers(("16", "16"), ("30", "30"), ("15", "60")),
        _rulers(("30", "45"), ("45", "60"), ("60", "90")),
    ),
}


class Handling(NamedTuple):
    """How one cut is made: `measure` from the edge, or from a fold under the ruler, the cloth
    being folded so often for it."""

    measure: Fraction
    folds: int
    rulers: tuple[Ruler, ...]


def folds_for(span: Fraction, system: System) -> int:
    """How often the cloth is folded so that one stroke of the long ruler crosses it: once,
    selvedge to selvedge, and again with parallel edges where it is too wide."""
    folds, long_ruler = 1, TABLES[system.unit].long_ruler.down
    while span / 2**folds > long_ruler and folds < MOST_FOLDS:
        folds += 1
    return folds


def edge_folds(width: Fraction, system: System) -> int:
    """How often a strip that is wider than the long ruler is folded, edge to edge, so that one
    stroke crosses it."""
    folds, long_ruler = 0, TABLES[system.unit].long_ruler.down
    while width / 2**folds > long_ruler and folds < MOST_FOLDS:
        folds += 1
    return folds


def for_strip(width: Fraction, system: System) -> Handling:
    """A strip across the folded cloth: a wide one takes two rulers, a wider one a fold."""
    table = TABLES[system.unit]
    narrow, both = table.long_ruler.across, table.long_ruler.across + table.square.across
    folds = 0
    while width / 2**folds > both and folds < MOST_FOLDS:
        folds += 1
    measure = width / 2**folds
    two = (table.long_ruler, table.square)
    return Handling(measure, folds, two[:1] if measure <= narrow else two)


def for_subcut(along: Fraction, width: Fraction, system: System) -> Handling:
    """A cut across a strip: the smallest ruler that covers the piece, else two rulers, else the
    piece folded."""
    return _for_subcut(along, width, system.unit)


# The same few pieces come back in every size and fabric.
@lru_cache(maxsize=1024)
def _for_subcut(along: Fraction, width: Fraction, unit: Literal["in", "cm"]) -> Handling:
    table = TABLES[unit]
    both = table.long_ruler.across + table.square.across
    for folds in range(MOST_FOLDS + 1):
        measure = along / 2**folds
        for ruler in table.rulers:
            if _covers(ruler, measure, width):
                return Handling(measure, folds, (ruler,))
        if measure <= both:
            break
    return Handling(measure, folds, (table.long_ruler, table.square))


def mat_for(span: Fraction, measure: Fraction, system: System) -> Ruler:
    """The smallest mat on which so much of the cloth lies flat, or the largest there is."""
    mats = TABLES[system.unit].mats
    return next((mat for mat in mats if _covers(mat, span, measure)), mats[-1])


def _covers(ruler: Ruler, along: Fraction, width: Fraction) -> bool:
    short, long = sorted(ruler)
    return min(along, width) <= short and max(along, width) <= long
