"""A part's edges as she sews: the seams that end there and the way each is pressed, found by
joining parts and turning them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import reduce
from typing import Final, Literal, NamedTuple

from patternbook.exact import Exact
from patternbook.quilt.press_words import BACK, Way
from patternbook.quilt.records import Turn

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
            meets += met(number - 1, blocks[number - 1].right, block.left)
        top.update({x + at: end for at, end in block.top.items()})
        bottom.update({x + at: end for at, end in block.bottom.items()})
        x = x + block.across
    whole = Block(x, blocks[0].down, top, blocks[-1].right, bottom, blocks[0].left)
    return Joining(whole, tuple(meets))


def met(behind: int, one: Ends, other: Ends) -> list[Meet]:
    """Where seams of two edges that are sewn together end at one place."""
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


def deeper(block: Block, depth: int) -> Block:
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
