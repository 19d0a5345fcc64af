"""Strip sets: strips sewn side by side, then sliced across."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from fractions import Fraction
from typing import ClassVar, Final

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES, INCHES, length
from patternbook.linear import Sum
from patternbook.methods.fields import Cells, Count, Length
from patternbook.methods.form import MethodForm
from patternbook.methods.made import Placed, StripSetMade, Turn
from patternbook.methods.reading import EachSize
from patternbook.methods.world import (
    MadeUnit,
    Need,
    Rule,
    StripNeed,
    Tally,
    Term,
    World,
    here,
    tally,
)
from patternbook.methods.written import WrittenMade
from patternbook.methods.wrong_figure import wrong_figure
from patternbook.value import Cell

SET = Rule("set-measure", "R1", None)
WHOLE_STRIP = Fraction(40)


class WrittenStripSet(WrittenMade):
    """Drawn as a slice lies: its strips from left to right."""

    called: ClassVar = "a strip set"
    from_: EachSize[Cells]
    segment: EachSize[Length] | None = None
    sets: EachSize[Count] | None = None
    per_set: EachSize[Count] | None = None
    set_measure: EachSize[Length] | None = None


class StripSetWork:
    """Strips joined along their long edges and cut across again."""

    def span(self, name: str, unit: WrittenMade, world: World) -> tuple[Tally, Tally]:
        """As the slice lies: the strips' widths side by side, and the slice's own width."""
        strips = _written(unit)
        place = strips.place
        cells = _cells(strips, world)
        if not cells:
            world.hopeless(name)
        widths = [(str(cell.part), world.strip_width(str(cell.part), place)) for cell in cells]
        for letter in dict.fromkeys(letter for letter, _ in widths):
            if not world.is_strip(letter) and world.exists(letter):
                _no_strip(name, letter, strips, world)
        across = tally(name, widths, place)
        stated = here(strips.set_measure, world.size)
        if stated is not None:
            raw = Tally(f"the set of {name}", (*across.terms, Term("seam", 2, world.seam)), place)
            world.state(("units", name, "set-measure"), raw, stated.number, SET, stated.place)
        return across, Tally(name, (Term("slice", 1, _slice(name, strips, world)),), place)

    def need(self, name: str, unit: WrittenMade, world: World, units: int) -> Need:
        """Whole sets, each a whole strip of every letter."""
        strips = _written(unit)
        counts = Counter(str(cell.part) for cell in _cells(strips, world))
        sets = self._sets(name, strips, world, units)
        runs = [
            StripNeed(letter, name, Exact(world.strip_length(letter)), number * sets, whole=True)
            for letter, number in counts.items()
        ]
        return Need({letter: number * sets for letter, number in counts.items()}, runs)

    def patches(self, name: str, unit: WrittenMade, world: World) -> Mapping[str, int]:
        """One patch of every strip."""
        del name  # told only where there is a fault
        return Counter(str(cell.part) for cell in _cells(_written(unit), world))

    def make(self, name: str, unit: WrittenMade, world: World, units: int) -> MadeUnit:
        """One slice with its strips left to right."""
        strips = _written(unit)
        down = world.length(_slice(name, strips, world))
        placed, x = [], Exact(0)
        for cell in _cells(strips, world):
            across = world.length(world.strip_width(str(cell.part), strips.place))
            placed.append(Placed(str(cell.part), Turn(), x, Exact(0), across, down))
            x = x + across
        seams = world.length(world.seam) * 2
        fits, per_set = self._per_set(name, strips, world)
        made = StripSetMade(
            tuple(part.part for part in placed),
            (down + seams).fraction,
            x + seams,
            _strip_length(strips, world),
            per_set,
            fits,
            self._sets(name, strips, world, units),
        )
        return MadeUnit(tuple(placed), made)

    def _per_set(self, name: str, strips: WrittenStripSet, world: World) -> tuple[int, int]:
        """How many slices fit in a set, and how many are planned."""
        slice_ = world.length(_slice(name, strips, world)) + world.length(world.seam) * 2
        long = _strip_length(strips, world)
        fits = int(long // slice_.down(Fraction(1, 64))) if slice_ > 0 else 0
        stated = world.number(strips.per_set, f"{name}: per-set", least=1)
        value = here(strips.per_set, world.size)
        if stated is not None and stated > fits and value is not None:
            strip, raw = _marked(Exact(long), world), _marked(slice_, world)
            message = (
                f"'{name}': {stated} slices a set stated, {fits} fit: {strip} ÷ {raw} = {fits}; "
                f"{stated} would take {_marked(slice_ * stated, world)}."
            )
            wrong_figure(world, "per-set", "R6", message, value, str(fits))
        return fits, min(stated or fits, fits) or 1

    def _sets(self, name: str, strips: WrittenStripSet, world: World, units: int) -> int:
        _, per_set = self._per_set(name, strips, world)
        needed = -(-units // per_set)
        stated = world.number(strips.sets, f"{name}: sets")
        return max(stated or 0, needed)


def _written(unit: WrittenMade) -> WrittenStripSet:
    if not isinstance(unit, WrittenStripSet):
        raise TypeError(f"{type(unit).__name__} is no strip set")
    return unit


def _cells(strips: WrittenStripSet, world: World) -> tuple[Cell, ...]:
    text = here(strips.from_, world.size)
    laid = world.laid(text) if text is not None else ()
    return tuple(cell for cell in laid if cell.part is not None)


def _strip_length(strips: WrittenStripSet, world: World) -> Fraction:
    """The shortest strip decides how long the set is."""
    lengths = [world.strip_length(str(cell.part)) for cell in _cells(strips, world)]
    return min(lengths, default=WHOLE_STRIP)


def _slice(name: str, strips: WrittenStripSet, world: World) -> Sum:
    """The finished width of a slice: stated as it is cut, or left to the equations."""
    segment = here(strips.segment, world.size)
    if segment is None:
        return world.unknown(("units", name, "segment"))
    key = ("units", name, "segment")
    return world.given(key, segment.number, segment.place) - world.seam * 2


def _marked(value: Exact, world: World) -> str:
    """A length with its mark."""
    return length(value, CENTIMETRES if world.unit == "cm" else INCHES)


def _no_strip(name: str, letter: str, strips: WrittenStripSet, world: World) -> None:
    message = f"'{name}' is a strip set, but {letter} is not cut as a strip."
    hint = f"Write {letter}'s cut as its width × WOF, for example `2 1/2 x WOF`."
    world.error("not-a-strip", "R11", message, strips.place, hint)


METHOD: Final = MethodForm("strip set", WrittenStripSet, StripSetWork())
