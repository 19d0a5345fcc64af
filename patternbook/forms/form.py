"""What a cloth form says of itself: how it is sold, how large it is, how strips lie in it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, NamedTuple

from patternbook.inch import System

Sold = Literal["by length", "by pack", "singly"]
Sides = tuple[Fraction, Fraction | None]  # width and length; None: the width of the cloth


class Lie(NamedTuple):
    """How strips lie in one piece of cloth.

    `run` is the length of a strip, `roll` the width of one that comes ready cut, `deep` how far
    strips can lie one above the other (None: the bolt has no end). `turned`: they run along the
    piece's length. `long_side`: they are as wide as the longer side of what is cut from them.
    """

    run: Fraction
    roll: Fraction | None = None
    deep: Fraction | None = None
    turned: bool = False
    long_side: bool = False


class Stock(NamedTuple):
    """One cloth as it is bought: its usable width, and the size of one piece where it has one."""

    width: Fraction
    size: Sides | None
    one_way: bool


@dataclass(frozen=True)
class ClothForm:
    """One way in which cloth is sold. `name` stands in the source; `one` and `many` are its words.

    `ways` are the ways in which strips may run in it. `usual` is the smallest usable size in the
    shops where none is stated, `offered` the sizes offered instead of other cloth; both by
    measure. `widths` is the width it is sold in, and what the selvedges take of it, where the
    pattern's own width is of other cloth. `pieces`: strips are cut within one piece of it.
    `strips`: it comes as strips. `selvedges`: strips of it have ends that are trimmed off.
    `trusted`: what the packet alone knows, where the source does not say how many it holds.
    """

    name: str
    one: str
    many: str
    sold: Sold
    ways: Callable[[Stock], Iterator[Lie]]
    usual: Mapping[str, Sides] = field(default_factory=dict)
    offered: Mapping[str, tuple[Sides, ...]] = field(default_factory=dict)
    widths: Mapping[str, tuple[Fraction, Fraction]] = field(default_factory=dict)
    pieces: bool = False
    strips: bool = False
    selvedges: bool = True
    trusted: str | None = None

    def width(self, system: System, washed: Fraction) -> Fraction | None:
        """Its own usual usable width, on a mark of the ruler; `washed` is what washing leaves of
        a length of one."""
        if system.unit not in self.widths:
            return None
        sold, selvedges = self.widths[system.unit]
        return (sold * washed - selvedges) // system.step * system.step

    def size(self, stated: Sides | None, system: System) -> Sides | None:
        """How large one piece is, as stated or as usual; None where nobody says."""
        size = stated or self.usual.get(system.unit)
        return size if size and (size[1] or self.strips) else None


def off_the_bolt(stock: Stock) -> Iterator[Lie]:
    """From selvedge to selvedge."""
    yield Lie(stock.width)


def along_the_strip(stock: Stock) -> Iterator[Lie]:
    """Strips as they come; those of no stated length are as long as cloth is wide."""
    across, down = stock.size or (Fraction(0), None)
    yield Lie(down or stock.width, across or None)


def either_way(stock: Stock) -> Iterator[Lie]:
    """Along either side of the piece; one of no known size is planned as cloth off the bolt. A
    print with one way up stands upright in a piece as it is stated, width before length, and
    strips run across it."""
    across, down = stock.size or (stock.width, None)
    if down is None:
        yield Lie(stock.width)
        return
    if stock.one_way:
        yield Lie(across, deep=down)
        return
    for lie in (Lie(across, deep=down), Lie(down, deep=across, turned=True)):
        yield lie
        yield lie._replace(long_side=True)


def as_on_the_bolt(stock: Stock) -> Iterator[Lie]:
    """Half a yard (or a quarter) of half the cloth's width: the shorter side lay along the bolt,
    and a print with one way up runs along it, however the size is stated."""
    size = stock.size
    if stock.one_way and size and size[1] is not None:
        size = max(size[0], size[1]), min(size[0], size[1])
    yield from either_way(stock._replace(size=size))
