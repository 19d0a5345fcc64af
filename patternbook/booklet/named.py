"""The figures that an author's sentence may name, as `{{ cut.A }}` names the cut size of A."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.order import number_of
from patternbook.cutting.records import BINDING
from patternbook.proof.evidence import Evidence

Named = Callable[[str, Evidence], str | None]
BACKING: Final = "backing"
BATTING: Final = "batting"
STEP: Final = "step"


def _count(name: str, known: Evidence) -> str | None:
    """Patches as sewn, or the lengths that a strip piece is cut into."""
    piece = known.quilt.pieces.get(name)
    if piece is None:
        return None
    return str(sum(run.number for run in piece.runs) if piece.is_strip else piece.count)


def _cut(name: str, known: Evidence) -> str | None:
    piece = known.quilt.pieces.get(name)
    if piece is not None:
        return wording.cut_size(piece.cut, known.quilt.system)
    if name == BINDING and known.quilt.binding:
        width = wording.length(known.quilt.binding.cut, known.quilt.system)
        return f"{width}{wording.NBSP}× {wording.WIDTH}"
    return None


def _strips(name: str, known: Evidence) -> str | None:
    if name == BINDING and known.cutting.binding:
        return str(known.cutting.binding.strips)
    plan = known.cutting.letters.get(name)
    return str(plan.strips) if plan else None


def _squares(name: str, known: Evidence) -> str | None:
    plan = known.cutting.letters.get(name)
    return str(plan.cuts) if plan else None


def _finished(name: str, known: Evidence) -> str | None:
    quilt = known.quilt
    part = quilt.units.get(name) or quilt.pieces.get(name)
    return wording.sides(part.finished, quilt.system) if part else None


def _measure(name: str, known: Evidence) -> str | None:
    unit = known.quilt.units.get(name)
    return wording.sides(unit.measure, known.quilt.system) if unit else None


def _make(name: str, known: Evidence) -> str | None:
    unit = known.quilt.units.get(name)
    return str(unit.make) if unit else None


def _yards(name: str, known: Evidence) -> str | None:
    cloth = known.cutting.fabrics.get(name)
    if cloth is None or cloth.buy.amount is None:
        return None
    return wording.amount(cloth.buy.amount, cloth.buy.unit)


def _packs(name: str, known: Evidence) -> str | None:
    cloth = known.cutting.fabrics.get(name)
    return str(cloth.buy.packs) if cloth and cloth.buy.packs is not None else None


def _length(name: str, known: Evidence) -> str | None:
    """A piece's length as cut, what a strip is cut into, or how long the binding is."""
    system = known.quilt.system
    if name == BINDING and known.cutting.binding:
        return wording.length(known.cutting.binding.length, system)
    piece = known.quilt.pieces.get(name)
    if piece is None:
        return None
    if piece.cut.down is not None:
        return wording.length(piece.cut.down, system)
    lengths = dict.fromkeys(run.length for run in piece.runs)
    return wording.lengths(tuple(lengths), system) if lengths else None


def _number(name: str, known: Evidence) -> str | None:
    number = known.quilt.numbers.get(name)
    return str(number) if number is not None else None


def _size(name: str, known: Evidence) -> str | None:
    """A pre-cut cloth's size; of the backing, the batting and the parts their own."""
    plan, system = known.cutting, known.quilt.system
    whole = {BACKING: plan.backing, BATTING: plan.batting}.get(name)
    if whole is not None:
        return wording.cut_size(whole.size, system)
    cloth = known.quilt.fabrics.get(name)
    if cloth is not None:
        return wording.cut_size(cloth.size, system) if cloth.size else None
    return _cut(name, known) or _measure(name, known)


def _step(name: str, known: Evidence) -> str | None:
    """Alone in its booklet; among other sizes `sentences` numbers the steps of them all."""
    number = number_of(name, (known,))
    return str(number) if number is not None else None


# Each word, what it is of, and how the figure is found.
NAMED: Final[Mapping[str, tuple[str, Named]]] = {
    "count": ("a piece", _count),
    "cut": ("a piece, or the binding", _cut),
    "strips": ("a piece, or the binding", _strips),
    "squares": ("a piece", _squares),
    "finished": ("a piece or a unit", _finished),
    "measure": ("a unit", _measure),
    "make": ("a unit", _make),
    "yards": ("a fabric that is bought off the bolt", _yards),
    "packs": ("a fabric that is bought in packs", _packs),
    "length": ("a piece, or the binding", _length),
    "number": ("one of the size's own numbers", _number),
    "size": ("a pre-cut fabric, a part, the backing or the batting", _size),
    STEP: ("a unit", _step),
}


def said(word: str, name: str, known: Evidence) -> str | None:
    """The figure in this size, or None where there is none of that name."""
    entry = NAMED.get(word)
    return entry[1](name, known) if entry else None
