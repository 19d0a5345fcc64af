"""The sashing of a layout: strips between its blocks and its rows, and the cornerstones."""

from __future__ import annotations

from typing import NamedTuple, TypeVar

from patternbook.methods.cells import Laid
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import Turn
from patternbook.methods.world import World, here

T = TypeVar("T")


class Frame(NamedTuple):
    """Sashing of a layout: the parts, and whether a ring of them goes round the outside."""

    sash: Laid
    cross: Laid
    stones: str | None
    round: bool

    @property
    def rim(self) -> int:
        """How many more sashes than blocks stand in a row: one with a ring, else one fewer."""
        return 1 if self.round else -1


def frame(unit: WrittenLayout, world: World) -> Frame | None:
    """The layout's sashing in this size."""
    sashing = unit.sashing
    if sashing is None:
        return None
    sash = Laid(str(here(sashing.sash, world.size)), Turn(), sashing.place)
    cross, stones = here(sashing.cross, world.size), here(sashing.stones, world.size)
    over = sash._replace(turn=Turn(1))
    if cross:  # a strip lies on its side, all else as it is made
        lying = Turn(1) if world.is_strip(str(cross)) else Turn()
        over = Laid(str(cross), lying, sashing.place)
    ring = sashing.round.at(world.size) == "yes"
    return Frame(sash, over, str(stones) if stones else None, ring)


def with_between(items: list[T], between: T, outside: bool) -> list[T]:
    """The items with one thing between every two, and at both ends where `outside`."""
    mixed = [thing for item in items for thing in (between, item)]
    return [*mixed, between] if outside else mixed[1:]
