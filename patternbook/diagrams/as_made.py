"""A unit as it is once sewn: lettered, pressed, and measured from raw edge to raw edge."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.laid import MARK, Lying, draw, parts, turn_mark
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.pressing import OPEN, SHORT, arrow, clear
from patternbook.diagrams.shown import Shown
from patternbook.diagrams.slant import slants
from patternbook.quilt.pressing import Way
from patternbook.quilt.records import LayoutMade, Unit
from patternbook.strokes.pen import Pen

ARROW: Final = 15.0  # points along a line that a part must have for an arrow over its seam
SHARES: Final = (0.8, 0.2, 0.9, 0.1, 0.66, 0.34, 0.5)  # where on a seam an arrow may stand
LONG: Final = 30.0  # points of an arrow for all seams
NEAR: Final = 1e-6


class AsMade:
    """The unit as made, its left seam line at `x`."""

    def __init__(self, pen: Pen, size: Size, unit: Unit, made: LayoutMade, x: float) -> None:
        self.pen = pen
        self.size = size
        self.unit = unit
        self.made = made
        self.across = made.by == "rows"
        self.raw = float(size.quilt.seam)
        self.below = 0.0  # points below the unit that names take
        finished = float(unit.finished.across), float(unit.finished.down)
        self.whole = Lying(unit.name, Lying.upright, x, 0, *finished)
        self.lying = {one: part.moved(x, 0) for one, part in parts(size, unit).items()}

    def drawn(self, *, named: bool) -> None:
        """Patches and letters, pressing, measures; `named`: thin parts have their letter where
        they lie apart."""
        found = draw(self.pen, self.size, self.whole, self.raw)
        turn_mark(self.pen, self.whole, self.raw)
        bare = [one for one in found if not labels.inside(self.pen, one, one.letter)]
        if not named:
            self._tagged([one for one in self.lying.values() if self._unnamed(one, bare)])
        far = self.below + (16 if self._pressed() else 8)
        measured(self.pen, self.size, self.unit, self.whole, far=far, left=not self.across)
        self._headed()

    def _unnamed(self, part: Lying, bare: Sequence[Shown]) -> bool:
        """Whether a part is not named yet: a piece too thin for its letter, a unit of a line."""
        unit = part.part in self.size.quilt.units and len(self.made.lines) == 1
        return unit or any(_is(part, patch) for patch in bare)

    def _tagged(self, thin: Sequence[Lying]) -> None:
        """Stretches of like parts that have no name yet: beside a column, below a row."""
        right, low = self.whole.x + self.whole.across + self.raw, self.whole.down + self.raw
        tags = []
        for run in _runs(thin):
            text = f"{len(run)} {run[0].part}" if len(run) > 1 else run[0].part
            if self.across:
                middle = (run[0].x + run[-1].x + run[-1].across) / 2
                tags.append(labels.Tag(middle, run[0].y + run[0].down, text))
            else:
                end = run[-1].y + run[-1].down
                labels.brace(self.pen, right + self.pen.pt(2), run[0].y, end, text)
        self.below = (labels.under(self.pen, tags, low) - low) / self.pen.pt(1)

    def _pressed(self) -> bool:
        """Arrows over the seams; where they would cover letters, one beside the unit for all.
        Whether one stands there. Slanting rows have theirs where they lie apart."""
        if slants(self.made):
            return False
        plan = self.size.plans.sewing.pressing[self.unit.name]
        aside = False
        for line, pressed in zip(self.made.lines, plan.lines, strict=True):
            lying = [self.lying[part] for part in line.parts]
            drawn = self._over(lying, pressed.seams, along=self.across)
            if not drawn and len(plan.lines) == 1:
                aside = self._beside(pressed.uniform)
        starts = [self.lying[line.parts[0]] for line in self.made.lines]
        if not self._over(starts, plan.between, along=not self.across):
            ways = set(plan.between)
            aside = self._beside(plan.between[0] if len(ways) == 1 else None) or aside
        return aside

    def _over(self, lying: Sequence[Lying], ways: Sequence[Way], *, along: bool) -> bool:
        """An arrow over the seam before every part but the first, all at one share of their
        seams that is clear of words; False where there is no such place."""
        sides = [part.across if along else part.down for part in lying]
        if ways and min(sides) < self.pen.pt(ARROW):
            return False
        long = 2 * OPEN + 5 if "open" in ways else SHORT
        for share in SHARES:
            places = [self._at(part, share, along=along) for part in lying[1:]]
            if all(clear(self.pen, *place, upright=along, long=long) for place in places):
                for place, way in zip(places, ways, strict=True):
                    arrow(self.pen, *place, way, upright=along)
                return True
        return False

    def _at(self, part: Lying, share: float, *, along: bool) -> tuple[float, float]:
        """A place on the seam before a part."""
        if along:
            return part.x, part.y + part.down * (1 - share)
        return part.x + part.across * share, part.y

    def _beside(self, way: Way | None) -> bool:
        """One long arrow beside the unit for all its seams."""
        x, y = self.whole.middle
        out = self.raw + self.pen.pt(7)
        if way in {"up", "down"}:
            arrow(self.pen, self.whole.x - out, y, way, upright=False, long=LONG)
        elif way in {"left", "right"}:
            low = self.whole.down + out + self.pen.pt(self.below)
            arrow(self.pen, x, low, way, upright=True, long=LONG)
        return way is not None

    def _headed(self) -> None:
        """The unit's name, and that this is how it lies as made."""
        headed(self.pen, self.unit, self.whole.x - self.raw, self.whole.y - self.raw)


def measured(
    pen: Pen, size: Size, unit: Unit, whole: Lying, *, far: float = 8, left: bool = False
) -> None:
    """Width below, length at the side, raw edge to raw edge; `far` points away."""
    raw, out = float(size.quilt.seam), pen.pt(far)
    start, end = whole.x - raw, whole.x + whole.across + raw
    top, low = whole.y - raw, whole.y + whole.down + raw
    across, down = (words.length(side, size.system) for side in unit.measure)
    pen.dimension((end, low), (start, low), across, out, 8)
    if left:
        pen.dimension((start, low), (start, top), down, out, 8)
    else:
        pen.dimension((end, top), (end, low), down, pen.pt(8), 8)


def headed(pen: Pen, unit: Unit, x: float, y: float) -> None:
    """`Cup, as made` above a unit whose left upper corner is there, with the sign of its top."""
    level = y - pen.pt(9)
    mark = Lying(unit.name, Lying.upright, x, level - pen.pt(2.8), pen.pt(7), pen.pt(MARK * 4))
    turn_mark(pen, mark)
    text = f"{words.title(unit.name)}, as made"
    pen.label(x + pen.pt(10), level, text, 9, anchor="start", weight=600)


def _is(part: Lying, patch: Shown) -> bool:
    """Whether the patch is this part; the patches of a unit are named where it is made."""
    x, y = part.middle
    within = patch.x < x < patch.x + patch.across and patch.y < y < patch.y + patch.down
    return within and part.part == patch.letter


def _runs(thin: Sequence[Lying]) -> list[list[Lying]]:
    """Neighbours of one letter."""
    runs: list[list[Lying]] = []
    for part in thin:
        last = runs[-1][-1] if runs else None
        if last and last.part == part.part and _touch(last, part):
            runs[-1].append(part)
        else:
            runs.append([part])
    return runs


def _touch(one: Lying, other: Lying) -> bool:
    """Whether a part begins where the other ends, in a row or in a column."""
    return math.dist((one.x + one.across, one.y), (other.x, other.y)) < NEAR or (
        math.dist((one.x, one.y + one.down), (other.x, other.y)) < NEAR
    )
