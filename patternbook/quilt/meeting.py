"""Where seams meet at the seam between two parts, in every joining of one quilt."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from itertools import pairwise
from math import lcm

from patternbook.exact import Exact
from patternbook.quilt.edges import (
    Block,
    Direction,
    Ends,
    Joining,
    Meet,
    Number,
    deeper,
    joined,
    met,
    turned,
)
from patternbook.quilt.inner_ends import block_of
from patternbook.quilt.press_words import Way
from patternbook.quilt.pressing import PressingPlan
from patternbook.quilt.records import (
    Border,
    LayoutMade,
    PiecedMade,
    Placed,
    Quilt,
    Turn,
    Unit,
)
from patternbook.quilt.slanting import slants, straightened, triangle


class Meetings:
    """All joinings of one quilt, each worked out once."""

    def __init__(self, quilt: Quilt, plans: Mapping[str, PressingPlan]) -> None:
        self._quilt, self._plans = quilt, plans
        self._scale = _scale(quilt)
        self._blocks: dict[tuple[str, Turn], Block] = {}
        self._lines: dict[tuple[object, ...], Joining] = {}
        self._units: dict[str, Joining] = {}
        self._borders: dict[tuple[str, int], tuple[Joining, Joining]] = {}

    def line(self, unit: str, number: int) -> Joining:
        """One line of a layout, its parts joined; or all strips of a set."""
        of, plan = self._quilt.units[unit], self._plans[unit]
        if isinstance(of.made, PiecedMade) or hexagons(of):
            return Joining(self._whole(of), ())  # sewn otherwise: nothing to match
        parts = of.made.lines[number].parts if isinstance(of.made, LayoutMade) else of.placed
        pressing = plan.lines[number]
        direction = _direction(of)
        key = (direction, pressing, *((part.part, part.turn) for part in parts))
        if key not in self._lines:
            blocks = self._laid(of, number)
            made = joined(blocks, pressing.seams, direction, stated=pressing.stated)
            self._lines[key] = made
        return self._lines[key]

    def _laid(self, unit: Unit, number: int) -> list[Block]:
        """The parts of one line in order, as they lie when they are joined."""
        if not isinstance(unit.made, LayoutMade):
            return [self._placed(part) for part in unit.placed]
        line = unit.made.lines[number]
        if line.role == "slant":
            return [self._slanted(part, line.down) for part in line.parts]
        return [self._placed(part) for part in line.parts]

    def lines(self, unit: str) -> Joining:
        """All lines of a layout joined to one another, without borders."""
        if unit not in self._units:
            self._units[unit] = self._joined_lines(unit)
        return self._units[unit]

    def _joined_lines(self, unit: str) -> Joining:
        of, plan = self._quilt.units[unit], self._plans[unit]
        if not isinstance(of.made, LayoutMade) or not of.made.lines:
            return self.line(unit, 0) if of.placed else Joining(Block(0, 0), ())
        if hexagons(of):
            return Joining(self._whole(of), ())
        blocks = [self.line(unit, number).block for number in range(len(of.made.lines))]
        if of.made.setting == "on point":
            return Joining(self._whole(of), self._met_on_slant(of.made, blocks))
        other: Direction = "down" if _direction(of) == "across" else "across"
        return joined(blocks, plan.between, other, stated=bool(of.press))

    def _met_on_slant(self, made: LayoutMade, rows: Sequence[Block]) -> tuple[Meet, ...]:
        """Where seams of neighbouring rows on the slant meet; each pair of rows shares the lower
        edge of the first. At its ends lies the quilt's edge, where nothing has to match."""
        side, meets = self._number(made.lines[0].down), []
        for number, ((one, above), (other, below)) in enumerate(
            pairwise(zip(slants(made), rows, strict=True))
        ):
            low, high = (place * side for place in one.lower)
            meets += met(
                number,
                _moved(above.bottom, one.start * side, low, high),
                _moved(below.top, other.start * side, low, high),
            )
        return tuple(meets)

    def _whole(self, unit: Unit) -> Block:
        """A unit at whose edges no seam ends that has to be matched; borders apart."""
        seams = self._quilt.seam * 2
        size = unit.finished
        if isinstance(unit.made, LayoutMade):
            size = unit.made.before_borders
            return Block(self._number(size.across - seams), self._number(size.down - seams))
        return Block(self._number(size.across), self._number(size.down))

    def border(self, unit: str, number: int) -> tuple[Joining, Joining]:
        """One border sewn on, counted from 0: the pair that is first, then the other."""
        if (unit, number) not in self._borders:
            self._borders[unit, number] = self._bordered(unit, number)
        return self._borders[unit, number]

    def _bordered(self, unit: str, number: int) -> tuple[Joining, Joining]:
        made = self._quilt.units[unit].made
        if not isinstance(made, LayoutMade):
            raise TypeError(f"{unit} has no borders")
        inside = self.border(unit, number - 1)[1].block if number else self.lines(unit).block
        border = made.borders[number]
        if border.corners == "mitred":
            seams = self._quilt.seam * 2
            across, down = (self._number(side - seams) for side in border.after)
            return Joining(inside, ()), Joining(Block(across, down), ())
        pairs = around(border)
        order: tuple[Direction, Direction] = (
            ("across", "down") if border.first == "sides" else ("down", "across")
        )
        first = self._pair(inside, pairs[order[0]], order[0])
        return first, self._pair(first.block, pairs[order[1]], order[1])

    def _pair(
        self, inside: Block, pair: Sequence[Sequence[Placed]], direction: Direction
    ) -> Joining:
        """Both strips of a border sewn on; a strip with cornerstones is joined before."""
        if not all(pair):
            return Joining(inside, ())
        along: Direction = "down" if direction == "across" else "across"
        strips = [self._strip(parts, along) for parts in pair]
        out: tuple[Way, Way] = ("left", "right") if direction == "across" else ("up", "down")
        return joined([strips[0], inside, strips[1]], out, direction, stated=False)

    def _strip(self, parts: Sequence[Placed], along: Direction) -> Block:
        blocks = [self._placed(part) for part in parts]
        inward: tuple[Way, Way] = ("right", "left") if along == "across" else ("down", "up")
        return joined(blocks, inward[: len(blocks) - 1], along, stated=False).block

    def _placed(self, part: Placed) -> Block:
        key = (part.part, part.turn)
        if part.part not in self._quilt.units:
            return Block(self._number(part.across), self._number(part.down))
        if key not in self._blocks:
            self._blocks[key] = turned(self._unit(part.part), part.turn)
        return self._blocks[key]

    def _slanted(self, part: Placed, side: Exact) -> Block:
        """A part of a row on the slant, once that is laid straight."""
        if triangle(part) or part.part not in self._quilt.units:
            return Block(self._number(side), self._number(side))
        return self._placed(part._replace(turn=straightened(part.turn)))

    def _unit(self, name: str) -> Block:
        unit = self._quilt.units[name]
        borders = unit.made.borders if isinstance(unit.made, LayoutMade) else ()
        if borders:
            return deeper(self.border(name, len(borders) - 1)[1].block, 2)
        if isinstance(unit.made, PiecedMade):
            return block_of(unit, unit.made, self._plans[name].inner, self._number)
        lines = len(unit.made.lines) if isinstance(unit.made, LayoutMade) else 1
        return deeper(self.lines(name).block, 1 if lines == 1 else 2)

    def _number(self, length: Exact) -> Number:
        whole = length * self._scale
        return whole.numerator if whole.rational and whole.denominator == 1 else whole


def hexagons(unit: Unit) -> bool:
    """Whether the unit is sewn edge to edge over papers."""
    return isinstance(unit.made, LayoutMade) and unit.made.setting == "hexagons"


def _moved(ends: Ends, by: Number, low: Number, high: Number) -> Ends:
    """The ends so far to the right, of which those strictly between two places are kept."""
    moved = {at + by: end for at, end in ends.items()}
    return {at: end for at, end in moved.items() if low < at < high}


def around(border: Border) -> dict[Direction, tuple[tuple[Placed, ...], tuple[Placed, ...]]]:
    """A border's parts: left and right, top and bottom, each in order, the cornerstones with
    the ends. A side is what reaches past the middle of the height."""
    parts = sorted(border.parts, key=lambda part: (part.x, part.y))
    if not parts:
        return {"across": ((), ()), "down": ((), ())}
    left, top = parts[0].x, min(part.y for part in parts)
    right = max(part.x + part.across for part in parts)
    bottom = max(part.y + part.down for part in parts)
    middle, centre = (top + bottom) / 2, (left + right) / 2
    sides = [part for part in parts if part.y < middle < part.y + part.down]
    ends = [part for part in parts if not part.y < middle < part.y + part.down]
    return {
        "across": (
            tuple(part for part in sides if part.x < centre),
            tuple(part for part in sides if part.x >= centre),
        ),
        "down": (
            tuple(part for part in ends if part.y < middle),
            tuple(part for part in ends if part.y >= middle),
        ),
    }


def _direction(unit: Unit) -> Direction:
    across = not isinstance(unit.made, LayoutMade) or unit.made.by == "rows"
    return "across" if across else "down"


def _scale(quilt: Quilt) -> Fraction:
    """How many of the smallest length one unit of length holds."""
    lengths = (
        length for unit in quilt.units.values() for part in unit.placed for length in part[4:6]
    )
    return Fraction(lcm(*{length.denominator for length in lengths if length.rational}))
