"""Every patch of a unit whose lengths are solved, before the quilt is put together."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from patternbook.methods.made import Placed, Sides, Turn
from patternbook.quilt.place import Lies, lying


class Laid(NamedTuple):
    """A unit as it is laid."""

    placed: tuple[Placed, ...]
    finished: Sides


def unit_patches(name: str, laid: Callable[[str], Laid | None]) -> tuple[Placed, ...]:
    """The patches of a unit in its own measures; `laid` gives each unit, None for a piece."""
    units: dict[str, Lies] = {}

    def visit(part: str) -> None:
        unit = laid(part) if part not in units else None
        if unit is not None:
            units[part] = unit
            for placed in unit.placed:
                visit(placed.part)

    visit(name)
    return tuple(
        Placed(
            patch.letter,
            patch.turn,
            patch.x,
            patch.y,
            patch.across,
            patch.down,
            patch.outline,
            patch.laid_on,
        )
        for patch in lying(units, name, Turn())
    )
