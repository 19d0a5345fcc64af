"""The cloth that strips are cut from: how long a strip of it is, and how wide one may be."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from patternbook.cutting.records import UNNAMED
from patternbook.forms import by_name
from patternbook.forms.form import ClothForm, Stock
from patternbook.inch import System
from patternbook.quilt.records import CutSize, Fabric, Quilt


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


def form_of(fabric: Fabric) -> ClothForm:
    """How the fabric is sold."""
    return by_name[fabric.form]


def on_trust(fabric: Fabric) -> str | None:
    """What nobody but the packet knows of it; of a stated pack only that it holds so many."""
    form = form_of(fabric)
    if form.trusted is None:
        return None
    return form.trusted if fabric.pack is None else f"{fabric.pack} {form.many} to a pack"


def pre_cut_size(fabric: Fabric, system: System) -> CutSize | None:
    """The size of one square, quarter or panel; None where nobody says."""
    size = form_of(fabric).size(fabric.size, system)
    return CutSize(*size) if size else None


def ways_to_lay(fabric: Fabric, system: System) -> Iterator[Cloth]:
    """The ways in which strips may run in this fabric: one, or four in a pre-cut square."""
    form = form_of(fabric)
    stock = Stock(fabric.width, form.size(fabric.size, system), fabric.one_way)
    for lie in form.ways(stock):
        yield Cloth(fabric, *lie)


def cloth_named(quilt: Quilt, name: str | None) -> Fabric:
    """The fabric of this name; in a fragment, bolt cloth of the pattern's usual width."""
    key = name or UNNAMED
    return quilt.fabrics.get(key) or Fabric(key, key, "yardage", quilt.width)
