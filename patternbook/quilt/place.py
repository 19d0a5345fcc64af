"""Every patch of a unit in its place, found by going down through the parts."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, NamedTuple, Protocol

from patternbook.exact import ROOT2, Exact
from patternbook.methods.made import Arc, Outline, Sides, Spot
from patternbook.quilt.records import Placed, Quilt, Turn

MOST_PATCHES: Final = 50_000
HALF_ROOT2: Final = ROOT2 / 2


class Patch(NamedTuple):
    """One patch as it lies: its letter, top left corner, size, turn, and the units it is in.

    `outline` is given where it is no upright rectangle: its seam lines in the same measures; the
    corner and the size are then those of the box around it. `laid_on`: it lies on other patches.
    """

    letter: str
    x: Exact
    y: Exact
    across: Exact
    down: Exact
    turn: Turn
    within: tuple[str, ...]
    outline: Outline | None = None
    laid_on: bool = False


def turned(inner: Turn, outer: Turn) -> Turn:
    """How a part lies that is turned by `inner` inside a unit that is turned by `outer`."""
    eighths = (-inner.eighths if outer.mirrored else inner.eighths) + outer.eighths
    quarters, on_point = divmod(eighths % 8, 2)
    return Turn(quarters, inner.mirrored != outer.mirrored, bool(on_point))


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


def moved_spot(point: Spot, across: Exact, down: Exact, turn: Turn) -> Spot:
    """Where a point of a unit (across × down) lies once that is turned; measured from the top
    left corner of the box around it as it then lies."""
    x, y = point
    if turn.mirrored:
        x = across - x
    for _ in range(turn.quarters):
        x, y = down - y, x
        across, down = down, across
    if turn.on_point:
        x, y = (x - y + down) * HALF_ROOT2, (x + y) * HALF_ROOT2
    return Spot(x, y)


def turned_outline(outline: Outline, across: Exact, down: Exact, turn: Turn) -> Outline:
    """An outline inside a unit (across × down) once that is turned; still clockwise."""
    corners = tuple(moved_spot(corner, across, down, turn) for corner in outline.corners)
    arcs = tuple(
        arc._replace(centre=moved_spot(arc.centre, across, down, turn)) for arc in outline.arcs
    )
    if not turn.mirrored:
        return Outline(corners, arcs)
    # Mirrored, the corners run the other way round: the edge from n to n + 1 turns over with them.
    last = len(corners) - 1
    return Outline(
        corners[::-1], tuple(arc._replace(edge=(last - 1 - arc.edge) % (last + 1)) for arc in arcs)
    )


def shifted(outline: Outline, x: Exact, y: Exact) -> Outline:
    """The outline moved so far to the right and down."""
    return Outline(
        tuple(Spot(corner.x + x, corner.y + y) for corner in outline.corners),
        tuple(
            Arc(arc.edge, Spot(arc.centre.x + x, arc.centre.y + y), arc.radius, arc.hollow)
            for arc in outline.arcs
        ),
    )


def oblong(x: Exact, y: Exact, across: Exact, down: Exact) -> Outline:
    """An upright rectangle as an outline."""
    right, low = x + across, y + down
    return Outline((Spot(x, y), Spot(right, y), Spot(right, low), Spot(x, low)))


def around(outline: Outline) -> tuple[Exact, Exact, Exact, Exact]:
    """The box around an outline: left, top, width, length. No arc of a patch bulges beyond it."""
    xs, ys = [corner.x for corner in outline.corners], [corner.y for corner in outline.corners]
    left, top = min(xs), min(ys)
    return left, top, max(xs) - left, max(ys) - top


class Lies(Protocol):
    """A unit as it is laid: its parts in place, and its finished size."""

    @property
    def placed(self) -> tuple[Placed, ...]: ...
    @property
    def finished(self) -> Sides: ...


Units = Mapping[str, Lies]


def patches(quilt: Quilt, unit: str) -> tuple[Patch, ...]:
    """All patches of one unit as made, with its top left corner at nought."""
    return _lying(quilt.units, unit, Turn(), {})


def lying(units: Units, unit: str, turn: Turn) -> tuple[Patch, ...]:
    """All patches of one unit as it lies turned."""
    return _lying(units, unit, turn, {})


Lying = dict[tuple[str, Turn], tuple[Patch, ...]]


def _lying(units: Units, name: str, turn: Turn, known: Lying) -> tuple[Patch, ...]:
    """The patches of a unit that lies turned; each way it lies is worked out once, then moved."""
    if (name, turn) in known:
        return known[name, turn]
    unit, found = units[name], []
    for number, part in enumerate(unit.placed, 1):
        lies = turned(part.turn, turn)
        if part.part in units:
            x, y = _corner(part, *unit.finished, turn)
            inside = (name, f"{part.part} {number}")
            found += [
                _moved(patch, x, y, (*inside, *patch.within[1:]))
                for patch in _lying(units, part.part, lies, known)
            ]
        else:
            found.append(_patch(part, *unit.finished, turn, (name,)))
    known[name, turn] = tuple(found)
    return known[name, turn]


def _moved(patch: Patch, x: Exact, y: Exact, within: tuple[str, ...]) -> Patch:
    outline = shifted(patch.outline, x, y) if patch.outline else None
    return patch._replace(x=patch.x + x, y=patch.y + y, within=within, outline=outline)


def _corner(part: Placed, across: Exact, down: Exact, turn: Turn) -> tuple[Exact, Exact]:
    """The top left corner of the box around a part, once the unit around it is turned."""
    if not turn.on_point:
        return spot(part, across, down, turn)
    box = oblong(part.x, part.y, part.across, part.down)
    return around(turned_outline(box, across, down, turn))[:2]


def _patch(part: Placed, across: Exact, down: Exact, turn: Turn, within: tuple[str, ...]) -> Patch:
    lies = turned(part.turn, turn)
    outline = part.outline
    if outline is None and not turn.on_point:
        x, y = spot(part, across, down, turn)
        wide, high = (part.down, part.across) if turn.sideways else (part.across, part.down)
        return Patch(part.part, x, y, wide, high, lies, within, None, part.laid_on)
    outline = outline or oblong(part.x, part.y, part.across, part.down)
    lying = turned_outline(outline, across, down, turn)
    return Patch(part.part, *around(lying), lies, within, lying, part.laid_on)
