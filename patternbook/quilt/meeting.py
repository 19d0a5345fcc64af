"""Where seams meet at the seam between two parts, in every joining of one quilt."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import lcm

from patternbook.exact import Exact
from patternbook.quilt.edges import Block, Direction, Joining, Number, deeper, joined, turned
from patternbook.quilt.press_words import Way
from patternbook.quilt.pressing import PressingPlan
from patternbook.quilt.records import Border, LayoutMade, Placed, Quilt, StripSetMade, Turn, Unit


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
        parts = of.made.lines[number].parts if isinstance(of.made, LayoutMade) else of.placed
        pressing = plan.lines[number]
        direction = _direction(of)
        key = (direction, pressing, *((part.part, part.turn) for part in parts))
        if key not in self._lines:
            blocks = [self._placed(part) for part in parts]
            made = joined(blocks, pressing.seams, direction, stated=pressing.stated)
            self._lines[key] = made
        return self._lines[key]

    def lines(self, unit: str) -> Joining:
        """All lines of a layout joined to one another, without borders."""
        if unit not in self._units:
            self._units[unit] = self._joined_lines(unit)
        return self._units[unit]

    def _joined_lines(self, unit: str) -> Joining:
        of, plan = self._quilt.units[unit], self._plans[unit]
        if not isinstance(of.made, LayoutMade) or not of.made.lines:
            return self.line(unit, 0) if of.placed else Joining(Block(0, 0), ())
        blocks = [self.line(unit, number).block for number in range(len(of.made.lines))]
        other: Direction = "down" if _direction(of) == "across" else "across"
        return joined(blocks, plan.between, other, stated=bool(of.press))

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

    def _unit(self, name: str) -> Block:
        unit = self._quilt.units[name]
        borders = unit.made.borders if isinstance(unit.made, LayoutMade) else ()
        if borders:
            return deeper(self.border(name, len(borders) - 1)[1].block, 2)
        lines = len(unit.made.lines) if isinstance(unit.made, LayoutMade) else 1
        return deeper(self.lines(name).block, 1 if lines == 1 else 2)

    def _number(self, length: Exact) -> Number:
        whole = length * self._scale
        return whole.numerator if whole.rational else whole


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
    across = isinstance(unit.made, StripSetMade) or unit.made.by == "rows"
    return "across" if across else "down"


def _scale(quilt: Quilt) -> Fraction:
    """How many of the smallest length one unit of length holds."""
    lengths = (
        length for unit in quilt.units.values() for part in unit.placed for length in part[4:]
    )
    return Fraction(lcm(*{length.denominator for length in lengths if length.rational}))
