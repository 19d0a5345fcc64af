"""Every patch of a unit in its place, found by going down through the parts."""

from __future__ import annotations

from typing import Final, NamedTuple

from patternbook.exact import Exact
from patternbook.quilt.records import Placed, Quilt, Turn

MOST_PATCHES: Final = 50_000


class Patch(NamedTuple):
    """One patch as it lies: its letter, top left corner, size, turn, and the units it is in."""

    letter: str
    x: Exact
    y: Exact
    across: Exact
    down: Exact
    turn: Turn
    within: tuple[str, ...]


def turned(inner: Turn, outer: Turn) -> Turn:
    """How a part lies that is turned by `inner` inside a unit that is turned by `outer`."""
    quarters = -inner.quarters if outer.mirrored else inner.quarters
    return Turn((quarters + outer.quarters) % 4, inner.mirrored != outer.mirrored)


def spot(part: Placed, across: Exact, down: Exact, turn: Turn) -> tuple[Exact, Exact]:
    """The top left corner of a part once the unit around it (across × down) is turned."""
    x, y = part.x, part.y
    if turn.mirrored:
        x = across - x - part.across
    if turn.quarters == 0:
        return x, y
    if turn.quarters == 1:
        return down - y - part.down, x
    if turn.quarters == 2:
        return across - x - part.across, down - y - part.down
    return y, across - x - part.across


def patches(quilt: Quilt, unit: str) -> tuple[Patch, ...]:
    """All patches of one unit as made, with its top left corner at nought."""
    return _lying(quilt, unit, Turn(), {})


Lying = dict[tuple[str, Turn], tuple[Patch, ...]]


def _lying(quilt: Quilt, name: str, turn: Turn, known: Lying) -> tuple[Patch, ...]:
    """The patches of a unit that lies turned; each way it lies is worked out once, then moved."""
    if (name, turn) in known:
        return known[name, turn]
    unit, found = quilt.units[name], []
    for number, part in enumerate(unit.placed, 1):
        x, y = spot(part, *unit.finished, turn)
        lies = turned(part.turn, turn)
        if part.part in quilt.units:
            inside = (name, f"{part.part} {number}")
            for patch in _lying(quilt, part.part, lies, known):
                within = (*inside, *patch.within[1:])
                found.append(patch._replace(x=patch.x + x, y=patch.y + y, within=within))
        else:
            wide, high = (part.down, part.across) if turn.sideways else (part.across, part.down)
            found.append(Patch(part.part, x, y, wide, high, lies, (name,)))
    known[name, turn] = tuple(found)
    return known[name, turn]
