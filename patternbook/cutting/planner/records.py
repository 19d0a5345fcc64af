"""What the planner is asked and what it answers; all lengths are whole numbers of one unit."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import Final, Literal, NamedTuple

__all__ = [
    "MILLION",
    "Answer",
    "Block",
    "Column",
    "Kind",
    "Limits",
    "Manner",
    "Prices",
    "SheetLaid",
    "SheetsAnswer",
    "SheetsTask",
    "StripLaid",
    "Task",
]

# even: each piece is as high as its strip; trimmed: or is trimmed to be lower;
# shared: one sub-cut may hold a stack of the same piece; thrifty: of different pieces.
Manner = Literal["even", "trimmed", "shared", "thrifty"]
MILLION: Final = 1_000_000


class Kind(NamedTuple):
    """Like pieces: `along` the strip, `across` it, `number` of them. `turns`: either way will do.
    `own_width`: only from strips exactly as wide as the piece, one to a sub-cut."""

    name: str
    along: int
    across: int
    number: int
    turns: bool = True
    own_width: bool = False


@dataclass(frozen=True)
class Task:
    """Cloth `width` wide and as long as need be. `lengthwise` pieces lie along it (`along` of
    their kind is their length, `across` what they take of the width), in one block that is cut
    first. What is bought is the length with `allowance` (strips planned elsewhere, the spare)
    rounded up to `step`."""

    width: int
    kinds: tuple[Kind, ...]
    manner: Manner = "shared"
    step: int = 1
    allowance: int = 0
    lengthwise: tuple[Kind, ...] = ()
    highest: int | None = None  # no strip is wider than this, unless a piece is
    longest: int | None = None  # no block of lengthwise pieces is longer than this


class Limits(NamedTuple):
    """How much work a plan may take; counts, never the clock."""

    nodes: int = 2_000  # of one branch and bound
    dives: int = 23
    patterns: int = 2_500  # enumerated for the proof
    rounds: int = 2_000  # of pricing, in all
    easing: int = 10  # nodes of a branch and bound for the easier plan; 0: none is sought
    goal: Literal["purchase", "length"] = "purchase"


class Column(NamedTuple):
    """`columns` like sub-cuts of a strip: each is `along` long and holds a stack of `stack`
    pieces, `across` each, `pieces` in all (the last sub-cut may hold fewer). `above` them
    lie pieces of other kinds, none longer than these (thrifty cutting only), in as many columns
    or fewer."""

    kind: str
    along: int
    across: int
    stack: int
    columns: int
    pieces: int
    above: tuple[Column, ...] = ()


class StripLaid(NamedTuple):
    """`times` strips cut alike, each `height` wide. `beside`: in the cloth beside the block of
    lengthwise pieces."""

    height: int
    columns: tuple[Column, ...]
    times: int
    beside: bool = False


class Block(NamedTuple):
    """The lengthwise pieces: columns side by side, each of pieces (kind, length, width) one after
    the other."""

    width: int
    length: int
    columns: tuple[tuple[tuple[str, int, int], ...], ...]


class Prices(NamedTuple):
    """The certificate of a bound: with these prices (millionths of a unit of length) for one
    piece of each kind no strip is worth more than it is wide. `beside` likewise prices the cloth
    beside a block of that width and length. What all pieces cost together is the bound."""

    kinds: tuple[tuple[str, int], ...]
    block: tuple[int, int] = (0, 0)
    beside: tuple[int, int] = (0, 1)  # a fraction
    bound: int = 0


@dataclass(frozen=True)
class Answer:
    """A plan, each kind cut exactly as often as it is asked for.

    `bound`: no plan of this manner is shorter; `by_prices` is what the certificates alone show
    (one for each block tried), the rest is shown by trying every strip that could still be in a
    better plan. `limit_hit`: work ended before length (or purchase) was settled.
    """

    task: Task
    strips: tuple[StripLaid, ...]
    block: Block | None
    length: int
    bound: int
    by_prices: int
    prices: tuple[Prices, ...]
    limit_hit: bool = False
    work: tuple[tuple[str, int], ...] = field(default=(), compare=False)

    @cached_property
    def bought(self) -> int:
        """How many steps of cloth are bought."""
        return -(-(self.length + self.task.allowance) // self.task.step)

    @cached_property
    def bought_bound(self) -> int:
        """No plan of this manner buys fewer steps."""
        return -(-(self.bound + self.task.allowance) // self.task.step)

    @property
    def proven(self) -> bool:
        """Whether no plan of this manner buys less."""
        return self.bought == self.bought_bound


class SheetsTask(NamedTuple):
    """Pre-cut pieces of cloth, `across` wide and `down` long, as few as possible. Strips run the
    same way all through one piece, along either side."""

    across: int
    down: int
    kinds: tuple[Kind, ...]


class SheetLaid(NamedTuple):
    """So many (`times`) pieces of cloth cut alike into `strips`; these run along `down` where it
    is `turned`."""

    strips: tuple[StripLaid, ...]
    times: int
    turned: bool = False


class SheetsAnswer(NamedTuple):
    """The fewest pieces of cloth that were found, and the number that no plan is below."""

    task: SheetsTask
    sheets: tuple[SheetLaid, ...]
    number: int
    bound: int
    prices: Prices
    limit_hit: bool = False

    @property
    def proven(self) -> bool:
        """Whether fewer will not do."""
        return self.number == self.bound
