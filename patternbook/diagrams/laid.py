"""Parts laid on the sheet: a piece as one patch, a unit as all its patches, turned as it lies."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from typing import ClassVar, Final

from patternbook.diagrams.pattern import Size
from patternbook.quilt.place import Patch, patches, spot
from patternbook.quilt.records import Placed, Sides, Turn, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.placing import Placing
from patternbook.strokes.stroke import INK, Fill, Role

SMALL: Final = 5.0  # points; patches narrower than this get a fine outline
MARK: Final = 5.0  # points of the sign of how a unit lies


@dataclass(frozen=True)
class Lying:
    """A part on the sheet: its name, how it is turned, and its box without seam allowances.

    `fills` are those of its patches in order; none are given where it stands for all of its kind.
    """

    part: str
    turn: Turn
    x: float
    y: float
    across: float
    down: float
    fills: tuple[Fill, ...] = ()

    upright: ClassVar[Turn] = Turn()

    @property
    def middle(self) -> tuple[float, float]:
        return self.x + self.across / 2, self.y + self.down / 2

    def moved(self, dx: float, dy: float) -> Lying:
        return replace(self, x=self.x + dx, y=self.y + dy)


def lying(part: Placed, fills: tuple[Fill, ...] = ()) -> Lying:
    """A part in its place inside its unit."""
    x, y, across, down = (float(side) for side in (part.x, part.y, part.across, part.down))
    return Lying(part.part, part.turn, x, y, across, down, fills)


def parts(size: Size, unit: Unit) -> Mapping[Placed, Lying]:
    """The direct parts of a unit in their places, in the prints of the first such unit."""
    quilt = size.quilt
    fills = iter(size.fills if unit.name == quilt.top else size.fills_in(unit.name))
    found = {}
    for part in unit.placed:
        number = len(patches(quilt, part.part)) if part.part in quilt.units else 1
        found[part] = lying(part, tuple(islice(fills, number)))
    return found


@dataclass(frozen=True)
class Shown:
    """A patch on the sheet, with its letter."""

    letter: str
    x: float
    y: float
    across: float
    down: float
    fill: Fill


def shown(size: Size, part: Lying, raw: float = 0.0) -> tuple[Shown, ...]:
    """The patches of a part where it lies; with `raw`, the outer ones have their allowances."""
    quilt = size.quilt
    if part.part not in quilt.units:
        box = (part.x - raw, part.y - raw, part.across + 2 * raw, part.down + 2 * raw)
        fill = part.fills[0] if part.fills else size.fill(part.part, 1)
        return (Shown(part.part, *box, fill),)
    unit = quilt.units[part.part]
    inside = patches(quilt, part.part)
    fills = part.fills or size.fills_in(part.part)
    return tuple(
        _shown(Lying(patch.letter, Lying.upright, *box), part, fill, raw)
        for patch, box, fill in zip(
            inside, _turned(inside, unit.finished, part.turn), fills, strict=True
        )
    )


def _turned(
    inside: Sequence[Patch], finished: Sides, turn: Turn
) -> Iterator[tuple[float, float, float, float]]:
    for patch in inside:
        placed = Placed(patch.letter, Lying.upright, patch.x, patch.y, patch.across, patch.down)
        x, y = spot(placed, *finished, turn)
        sides = float(placed.across), float(placed.down)
        yield (float(x), float(y), *(reversed(sides) if turn.sideways else sides))


def _shown(patch: Lying, part: Lying, fill: Fill, raw: float) -> Shown:
    """One patch of a part; its sides on the part's edge reach out by the seam allowance."""
    left, top = patch.x, patch.y
    right, low = left + patch.across, top + patch.down
    near = 1e-9
    left -= raw if left < near else 0
    top -= raw if top < near else 0
    right += raw if right > part.across - near else 0
    low += raw if low > part.down - near else 0
    return Shown(patch.part, part.x + left, part.y + top, right - left, low - top, fill)


def draw(pen: Pen, size: Size, part: Lying, raw: float = 0.0) -> tuple[Shown, ...]:
    """Draw a part, its edge a little heavier where it is a unit."""
    found = shown(size, part, raw)
    for patch in found:
        outline: Role = "fine" if min(patch.across, patch.down) < pen.pt(SMALL) else "outline"
        pen.rectangle(patch.x, patch.y, patch.across, patch.down, patch.fill, outline)
    if len(found) > 1:
        pen.rectangle(
            part.x - raw, part.y - raw, part.across + 2 * raw, part.down + 2 * raw, None, "edge"
        )
    return found


def turn_mark(pen: Pen, part: Lying, raw: float = 0.0) -> None:
    """The sign of how a unit lies: a small triangle at the edge that is its top as made."""
    tall = part.across if part.turn.sideways else part.down
    high = min(pen.pt(MARK), tall / 4)  # clear of a letter in the middle
    top, half = -tall / 2 - raw, high * 0.62
    where = Placing.still.turned(part.turn.quarters).moved(*part.middle)
    points = ((0.0, top), (half, top + high), (-half, top + high))
    pen.patch([where.point(point) for point in points], Fill(INK), None)
