"""Where seams meet at the seam between two parts, found by joining as she sews: each part
brings the seams that end at its edges, and the way that each is pressed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import reduce
from math import lcm
from typing import Final, Literal, NamedTuple

from patternbook.exact import Exact
from patternbook.quilt.press_words import BACK, Way
from patternbook.quilt.pressing import PressingPlan
from patternbook.quilt.records import Border, LayoutMade, Placed, Quilt, StripSetMade, Turn, Unit

Number = int | Exact  # so many of the smallest length; exact where a root is left in it
Direction = Literal["across", "down"]
CLOCKWISE: Final[Mapping[Way, Way]] = {
    "up": "right",
    "right": "down",
    "down": "left",
    "left": "up",
    "open": "open",
}


class End(NamedTuple):
    """A seam that ends at an edge: pressed which way, and how deep in the part it lies (0: a
    seam of the line itself, 1: of a slice or single row in it, 2: deeper)."""

    way: Way
    depth: int
    stated: bool


Ends = Mapping[Number, End]


@dataclass(frozen=True)
class Block:
    """A part as it lies: its sides, and the seams that end at each edge, by their distance from
    its left or top."""

    across: Number
    down: Number
    top: Ends = field(default_factory=dict)
    right: Ends = field(default_factory=dict)
    bottom: Ends = field(default_factory=dict)
    left: Ends = field(default_factory=dict)

    @property
    def plain(self) -> bool:
        """Whether no seam ends at any edge."""
        return not (self.top or self.right or self.bottom or self.left)


class Meet(NamedTuple):
    """Two seams that meet at the seam behind item `behind` of a joining."""

    behind: int
    one: End
    other: End

    @property
    def same_way(self) -> bool:
        """Whether both are pressed to one side, so that they cannot nest."""
        return self.one.way == self.other.way != "open"


class Joining(NamedTuple):
    """Parts joined in a line, and every place where seams had to meet on the way."""

    block: Block
    meets: tuple[Meet, ...]


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
            return _deeper(self.border(name, len(borders) - 1)[1].block, 2)
        lines = len(unit.made.lines) if isinstance(unit.made, LayoutMade) else 1
        return _deeper(self.lines(name).block, 1 if lines == 1 else 2)

    def _number(self, length: Exact) -> Number:
        whole = length * self._scale
        return whole.one.numerator if whole.rational else whole


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


def joined(
    blocks: Sequence[Block], ways: Sequence[Way], direction: Direction, *, stated: bool
) -> Joining:
    """Blocks joined side by side (`across`) or one under the other (`down`)."""
    if direction == "down":
        made = joined([_flipped(block) for block in blocks], ways, "across", stated=stated)
        return Joining(_flipped(made.block), made.meets)
    top: dict[Number, End] = {}
    bottom: dict[Number, End] = {}
    meets: list[Meet] = []
    x: Number = 0
    for number, block in enumerate(blocks):
        if number:
            top[x] = bottom[x] = End(ways[number - 1], 0, stated)
            meets += _meets(number - 1, blocks[number - 1].right, block.left)
        top.update({x + at: end for at, end in block.top.items()})
        bottom.update({x + at: end for at, end in block.bottom.items()})
        x = x + block.across
    whole = Block(x, blocks[0].down, top, blocks[-1].right, bottom, blocks[0].left)
    return Joining(whole, tuple(meets))


def _meets(behind: int, one: Ends, other: Ends) -> list[Meet]:
    return [Meet(behind, end, other[at]) for at, end in one.items() if at in other]


def _flipped(block: Block) -> Block:
    """Across and down exchanged; the ways stay what they are on the table."""
    return Block(block.down, block.across, block.left, block.bottom, block.right, block.top)


def turned(block: Block, turn: Turn) -> Block:
    """The block mirrored left to right, then turned clockwise, and its ways with it."""
    if block.plain:
        across, down = block.across, block.down
        return Block(down, across) if turn.sideways else block
    start = _mirrored(block) if turn.mirrored else block
    return reduce(lambda made, _: _quarter(made), range(turn.quarters), start)


def _mirrored(block: Block) -> Block:
    def across(ends: Ends) -> Ends:
        return {block.across - at: end._replace(way=_sideways(end.way)) for at, end in ends.items()}

    return Block(
        block.across, block.down, across(block.top), block.left, across(block.bottom), block.right
    )


def _sideways(way: Way) -> Way:
    return BACK[way] if way in {"left", "right"} else way


def _quarter(block: Block) -> Block:
    def around(ends: Ends, length: Number | None = None) -> Ends:
        return {
            at if length is None else length - at: end._replace(way=CLOCKWISE[end.way])
            for at, end in ends.items()
        }

    return Block(
        block.down,
        block.across,
        around(block.left, block.down),
        around(block.top),
        around(block.right, block.down),
        around(block.bottom),
    )


def _deeper(block: Block, depth: int) -> Block:
    """The block as a part of something: its seams are no longer seams of the line itself."""

    def inside(ends: Ends) -> Ends:
        return {
            at: end._replace(depth=max(depth, min(2, end.depth + 1))) for at, end in ends.items()
        }

    return Block(
        block.across,
        block.down,
        inside(block.top),
        inside(block.right),
        inside(block.bottom),
        inside(block.left),
    )


def _direction(unit: Unit) -> Direction:
    across = isinstance(unit.made, StripSetMade) or unit.made.by == "rows"
    return "across" if across else "down"


def _scale(quilt: Quilt) -> Fraction:
    """How many of the smallest length one unit of length holds."""
    lengths = (
        length for unit in quilt.units.values() for part in unit.placed for length in part[4:]
    )
    return Fraction(lcm(*{length.one.denominator for length in lengths if length.rational}))
