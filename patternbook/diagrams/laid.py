"""Parts laid on the sheet: a piece as one patch, a unit as all its patches, turned as it lies."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import islice
from typing import ClassVar, Final

from patternbook.diagrams import shape
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.shown import Shown, shaped, under
from patternbook.quilt.place import Patch, patches, spot
from patternbook.quilt.points import outlined, points_of
from patternbook.quilt.records import Placed, Sides, Turn, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import INK, Fill, Role

SMALL: Final = 5.0  # points; patches narrower than this get a fine outline
HALF_ROOT2: Final = math.sqrt(0.5)
MARK: Final = 5.0  # points of the sign of how a unit lies


@dataclass(frozen=True)
class Lying:
    """A part on the sheet: its name, how it is turned, and its box without seam allowances.

    `fills` are those of its patches in order; none are given where it stands for all of its kind.
    `points` are the corners of a piece that is no upright rectangle. `laid_on`: it is no part of
    the unit's surface, but lies on others.
    """

    part: str
    turn: Turn
    x: float
    y: float
    across: float
    down: float
    fills: tuple[Fill, ...] = ()
    points: shape.Points | None = None
    laid_on: bool = False

    upright: ClassVar[Turn] = Turn()

    @property
    def middle(self) -> tuple[float, float]:
        return self.x + self.across / 2, self.y + self.down / 2

    def moved(self, dx: float, dy: float) -> Lying:
        points = shape.moved(self.points, dx, dy) if self.points else None
        return replace(self, x=self.x + dx, y=self.y + dy, points=points)


def lying(part: Placed, fills: tuple[Fill, ...] = ()) -> Lying:
    """A part in its place inside its unit."""
    x, y, across, down = (float(side) for side in (part.x, part.y, part.across, part.down))
    points = outlined(part.outline) if part.outline else None
    return Lying(part.part, part.turn, x, y, across, down, fills, points, part.laid_on)


def parts(size: Size, unit: Unit) -> Mapping[Placed, Lying]:
    """The direct parts of a unit in their places, in the prints of the first such unit."""
    quilt = size.quilt
    fills = iter(size.fills if unit.name == quilt.top else size.fills_in(unit.name))
    found = {}
    for part in unit.placed:
        number = len(patches(quilt, part.part)) if part.part in quilt.units else 1
        found[part] = lying(part, tuple(islice(fills, number)))
    return found


def shown(size: Size, part: Lying, raw: float = 0.0) -> tuple[Shown, ...]:
    """The patches of a part where it lies; with `raw`, the outer ones have their allowances."""
    quilt = size.quilt
    if part.part not in quilt.units:
        fill = part.fills[0] if part.fills else size.fill(part.part, 1)
        return (_piece(part, fill, 0.0 if part.laid_on else raw),)
    unit = quilt.units[part.part]
    inside = patches(quilt, part.part)
    fills = part.fills or size.fills_in(part.part)
    found = [
        _shown(patch, unit.finished, part, fill, raw)
        for patch, fill in zip(inside, fills, strict=True)
    ]
    return under(inside, found)


def _piece(part: Lying, fill: Fill, raw: float) -> Shown:
    """A part that is one piece, as it is cut."""
    if part.points is not None:
        return shaped(part.part, shape.grown(part.points, lambda *_: raw), fill)
    box = (part.x - raw, part.y - raw, part.across + 2 * raw, part.down + 2 * raw)
    return Shown(part.part, *box, fill)


def _shown(patch: Patch, finished: Sides, part: Lying, fill: Fill, raw: float) -> Shown:
    """One patch of a part; its sides on the part's edge reach out by the seam allowance."""
    if patch.outline is None and not part.turn.on_point:
        return _boxed(patch, finished, part, fill, raw)
    sides = (float(finished.across), float(finished.down))
    points = points_of(patch)
    if raw and not patch.laid_on:
        points = shape.reaching(points, *sides, raw)
    lies = shape.turned(points, *sides, part.turn)
    return shaped(patch.letter, shape.moved(lies, part.x, part.y), fill)


def _boxed(patch: Patch, finished: Sides, part: Lying, fill: Fill, raw: float) -> Shown:
    """An upright rectangle of a part that lies straight."""
    placed = Placed(patch.letter, Lying.upright, patch.x, patch.y, patch.across, patch.down)
    left, top = (float(side) for side in spot(placed, *finished, part.turn))
    across, down = float(patch.across), float(patch.down)
    if part.turn.sideways:
        across, down = down, across
    right, low = left + across, top + down
    near = 1e-9
    left -= raw if left < near else 0
    top -= raw if top < near else 0
    right += raw if right > part.across - near else 0
    low += raw if low > part.down - near else 0
    return Shown(patch.letter, part.x + left, part.y + top, right - left, low - top, fill)


def edge(size: Size, part: Lying, raw: float = 0.0) -> shape.Points:
    """The corners of a part as it lies, from raw edge to raw edge."""
    if part.points is not None or not part.turn.on_point:
        points = part.points or shape.box(part.x, part.y, part.across, part.down)
    else:
        across, down = (float(side) for side in size.quilt.units[part.part].finished)
        lies = shape.turned(shape.box(0, 0, across, down), across, down, part.turn)
        points = shape.moved(lies, part.x, part.y)
    return shape.grown(points, lambda *_: raw)


def draw(pen: Pen, size: Size, part: Lying, raw: float = 0.0) -> tuple[Shown, ...]:
    """Draw a part, its edge a little heavier where it is a unit."""
    found = shown(size, part, raw)
    for patch in found:
        outline: Role = "fine" if min(patch.across, patch.down) < pen.pt(SMALL) else "outline"
        patch.put(pen, patch.fill, outline)
    if len(found) > 1:
        if part.turn.on_point:
            pen.patch(edge(size, part, raw), None, "edge")
        else:
            pen.rectangle(
                part.x - raw, part.y - raw, part.across + 2 * raw, part.down + 2 * raw, None, "edge"
            )
    return found


def turn_mark(pen: Pen, part: Lying, raw: float = 0.0) -> None:
    """The sign of how a unit lies: a small triangle at the edge that is its top as made."""
    across, down = (part.down, part.across) if part.turn.sideways else (part.across, part.down)
    if part.turn.on_point:
        across, down = across * HALF_ROOT2, down * HALF_ROOT2
    high = min(pen.pt(MARK), down / 4)  # clear of a letter in the middle
    top, half = -raw, high * 0.62
    points = ((across / 2, top), (across / 2 + half, top + high), (across / 2 - half, top + high))
    lies = shape.turned(points, across, down, part.turn)
    pen.patch(shape.moved(lies, part.x, part.y), Fill(INK), None)


def any_turned(size: Size, unit: Unit) -> bool:
    """Whether units lie in it another way than they were made, so that each needs its sign."""
    units = (part for part in unit.placed if part.part in size.quilt.units)
    return any(part.turn != Lying.upright for part in units)
