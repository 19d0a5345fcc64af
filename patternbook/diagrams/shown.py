"""One patch as it stands on the sheet: its letter, its box, its shape where it is no box."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from patternbook.diagrams import shape
from patternbook.diagrams.shape import Points
from patternbook.quilt.place import Patch
from patternbook.quilt.points import points_of
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Fill, Point, Role


@dataclass(frozen=True)
class Shown:
    """A patch on the sheet, with its letter and the box around it.

    `points` are given where it is no upright rectangle. `over` are the shapes that lie on it.
    """

    letter: str
    x: float
    y: float
    across: float
    down: float
    fill: Fill
    points: Points | None = None
    over: tuple[Points, ...] = ()

    def moved(self, dx: float, dy: float) -> Shown:
        """So far to the right and down."""
        points = shape.moved(self.points, dx, dy) if self.points else None
        over = tuple(shape.moved(one, dx, dy) for one in self.over)
        return replace(self, x=self.x + dx, y=self.y + dy, points=points, over=over)

    def put(self, pen: Pen, fill: Fill | None, outline: Role | None = "outline") -> None:
        """Draw it."""
        if self.points is None:
            pen.rectangle(self.x, self.y, self.across, self.down, fill, outline)
        else:
            pen.patch(self.points, fill, outline)

    def within(self, right: float, low: float) -> Shown | None:
        """What of it lies above and to the left of a corner; nothing where it lies beyond."""
        if self.x >= right or self.y >= low:
            return None
        if self.points is None:
            across, down = min(self.across, right - self.x), min(self.down, low - self.y)
            return replace(self, across=across, down=down)
        points = shape.clipped(self.points, self.x, self.y, right, low)
        return shaped(self.letter, points, self.fill) if points else None

    def room(self, wide: float, high: float) -> Point | None:
        """The middle of a place in it for words so wide and high."""
        if wide > self.across or high > self.down:
            return None
        if self.points is None and not self.over:
            return self.x + self.across / 2, self.y + self.down / 2
        points = self.points or shape.box(self.x, self.y, self.across, self.down)
        return shape.room(points, wide, high, self.over)

    @property
    def middle(self) -> Point:
        """The middle of the box, or the centre of the shape."""
        if self.points is None:
            return self.x + self.across / 2, self.y + self.down / 2
        return shape.centre(self.points)


def shaped(letter: str, points: Points, fill: Fill) -> Shown:
    """A patch by its corners."""
    return Shown(letter, *shape.around(points), fill, points)


def shown_top(patches: Sequence[Patch], fills: Sequence[Fill]) -> tuple[Shown, ...]:
    """The patches of a top in their places."""
    found = []
    for patch, fill in zip(patches, fills, strict=True):
        points = points_of(patch) if patch.outline else None
        x, y, across, down = map(float, (patch.x, patch.y, patch.across, patch.down))
        found.append(Shown(patch.letter, x, y, across, down, fill, points))
    return under(patches, found)


def under(patches: Sequence[Patch], found: Sequence[Shown]) -> tuple[Shown, ...]:
    """The patches, each with the shapes that are laid on it."""
    if not any(patch.laid_on for patch in patches):
        return tuple(found)
    laid = [number for number, patch in enumerate(patches) if patch.laid_on]
    covered = []
    for number, one in enumerate(found):
        over = [found[at] for at in laid if at > number and _meet(one, found[at])]
        points = (
            other.points or shape.box(other.x, other.y, other.across, other.down) for other in over
        )
        covered.append(replace(one, over=tuple(points)))
    return tuple(covered)


def _meet(one: Shown, other: Shown) -> bool:
    across = one.x < other.x + other.across and other.x < one.x + one.across
    return across and one.y < other.y + other.down and other.y < one.y + one.down
