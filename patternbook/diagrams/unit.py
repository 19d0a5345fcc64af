"""Each unit from its parts to 'as made': lettered, measured raw edge to raw edge, pressed."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.explode import apart
from patternbook.diagrams.laid import MARK, Lying, Shown, draw, turn_mark
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.pressing import arrow
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.quilt.pressing import Way
from patternbook.quilt.records import LayoutMade, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import plus, seam
from patternbook.strokes.stroke import Drawing

MOST: Final = (3.5, 3.3)
FEW: Final = 12  # parts that are shown apart,
SHORT: Final = 6  # of a line; a longer one is shown as rounds of pairs
ARROW: Final = 15.0  # points along a line that a part must have for an arrow over its seam,
BESIDE: Final = 30.0  # and across it, so that the arrow is clear of its letter
CLEAR: Final = 0.2  # of a seam's length, from its end to the arrow
LONG: Final = 30.0  # points of an arrow for all seams
NEAR: Final = 1e-6
SEAMS: Final = 4  # parts that have the seams drawn on them
LARGEST: Final = 0.16  # inches on paper for an inch of cloth


def units(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing a unit; slices of strip sets are drawn with their set."""
    for size, unit in pattern.units():
        if isinstance(unit.made, LayoutMade):
            yield _unit(pattern, size, unit, unit.made)


def _unit(pattern: Pattern, size: Size, unit: Unit, made: LayoutMade) -> Drawing:
    longest = max(len(line.parts) for line in made.lines)
    few = len(unit.placed) <= FEW and longest <= SHORT

    def drawn(pen: Pen) -> None:
        right = _before(pen, size, unit, made) if few else 0.0
        After(pen, size, unit, made, right).drawn(named=few)

    scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
    pen = fitted(drawn, MOST, scale)
    measure = words.sides(unit.measure, size.system)
    title = f"{words.title(unit.name)}, {measure} raw edge to raw edge"
    return cropped(
        pen,
        name("unit", unit.name),
        title + pattern.drawn_for(size, unit),
        described(size, unit, made),
    )


def described(size: Size, unit: Unit, made: LayoutMade) -> str:
    """What joins what, in words."""
    what = "column" if made.by == "columns" else "row"
    start = "top" if made.by == "columns" else "left"
    lines = [
        f"{what} {number} from the {start}: {words.run(part.part for part in line.parts)}"
        for number, line in enumerate(made.lines, start=1)
    ]
    if len(lines) == 1:
        lines = [f"from the {start}: {words.run(part.part for part in made.lines[0].parts)}"]
    way = size.plans.sewing.pressing[unit.name].lines[0].uniform
    pressed = f" Seams are pressed {way}." if way and len(lines) == 1 else ""
    measure = words.sides(unit.measure, size.system)
    return (
        f"{words.title(unit.name)} as made; {'; '.join(lines)}. "
        f"It measures {measure} from raw edge to raw edge.{pressed}"
    )


# ---- before


def _before(pen: Pen, size: Size, unit: Unit, made: LayoutMade) -> float:
    """The parts apart as cut or sewn so far, then an arrow; gives where the arrow ends."""
    raw = float(size.quilt.seam)
    gap = pen.pt(13) + 2 * raw
    laid = apart(size, unit, made, gap)
    tags = []
    for part in laid.all:
        found = draw(pen, size, part, raw)
        if not _named(pen, part, found):
            tags.append(labels.Tag(part.middle[0], part.y + part.down + raw, part.part))
    low = max(part.y + part.down for part in laid.all) + raw
    labels.under(pen, tags, low)
    _joins(pen, laid.lines, made, raw)
    right = max(part.x + part.across for part in laid.all) + raw
    middle = (low + min(part.y for part in laid.all) - raw) / 2
    ends = ((right + pen.pt(7), middle), (right + pen.pt(25), middle))
    pen.arrow(ends, "edge", "end", 7)
    return ends[1][0] + pen.pt(9) + raw


def _named(pen: Pen, part: Lying, found: Sequence[Shown]) -> bool:
    """The name of a part inside it, where it fits."""
    if len(found) == 1:
        return labels.inside(pen, found[0], part.part)
    return labels.named(pen, part, found, part.part)


def _joins(pen: Pen, lines: Sequence[Sequence[Lying]], made: LayoutMade, raw: float) -> None:
    """A plus between neighbours; the seam on their edges where there are only few parts."""
    few = sum(map(len, lines)) <= SEAMS
    across = made.by == "rows"
    for line in lines:
        for one, other in pairwise(line):
            _join(pen, one, other, raw if few else 0.0, across=across)
    for line, below in pairwise(lines):
        if len(line) == 1 == len(below):
            _join(pen, line[0], below[0], raw if few else 0.0, across=not across)


def _join(pen: Pen, one: Lying, other: Lying, raw: float, *, across: bool) -> None:
    if across:
        plus(pen, (one.x + one.across + other.x) / 2, one.middle[1])
        edges = ((one.x + one.across, one), (other.x, other))
        ends = [((x, part.y), (x, part.y + part.down)) for x, part in edges]
    else:
        plus(pen, one.middle[0], (one.y + one.down + other.y) / 2)
        levels = ((one.y + one.down, one), (other.y, other))
        ends = [((part.x, y), (part.x + part.across, y)) for y, part in levels]
    for start, end in ends if raw else ():
        seam(pen, start, end)


# ---- after


class After:
    """The unit as made, its left seam line at `x`."""

    def __init__(self, pen: Pen, size: Size, unit: Unit, made: LayoutMade, x: float) -> None:
        self.pen = pen
        self.size = size
        self.unit = unit
        self.made = made
        self.across = made.by == "rows"
        self.raw = float(size.quilt.seam)
        finished = float(unit.finished.across), float(unit.finished.down)
        self.whole = Lying(unit.name, Lying.upright, x, 0, *finished)
        self.lying = {part: lying(part).moved(x, 0) for part in unit.placed}

    def drawn(self, *, named: bool) -> None:
        """Patches and letters, pressing, measures; `named`: thin parts have their letter where
        they lie apart."""
        found = draw(self.pen, self.size, self.whole, self.raw)
        turn_mark(self.pen, self.whole, self.raw)
        bare = [one for one in found if not labels.inside(self.pen, one, one.letter)]
        if not named:
            self._tagged(
                [one for one in self.lying.values() if any(_is(one, patch) for patch in bare)]
            )
        aside = self._pressed()
        self._measured(aside=aside, left=not self.across)
        self._headed()

    def _tagged(self, parts: Sequence[Lying]) -> None:
        """Stretches of like pieces too thin for a letter: beside a column, below a row."""
        right, low = self.whole.x + self.whole.across + self.raw, self.whole.down + self.raw
        tags = []
        for run in _runs(parts):
            text = f"{len(run)} {run[0].part}" if len(run) > 1 else run[0].part
            if self.across:
                middle = (run[0].x + run[-1].x + run[-1].across) / 2
                tags.append(labels.Tag(middle, run[0].y + run[0].down, text))
            else:
                end = run[-1].y + run[-1].down
                labels.brace(self.pen, right + self.pen.pt(2), run[0].y, end, text)
        labels.under(self.pen, tags, low)

    def _pressed(self) -> bool:
        """Arrows over the seams; where the parts are too small for them, one beside the unit.
        Whether one stands there."""
        plan = self.size.plans.sewing.pressing[self.unit.name]
        aside = False
        for line, pressed in zip(self.made.lines, plan.lines, strict=True):
            parts = [self.lying[part] for part in line.parts]
            if not pressed.seams:
                continue
            if self._roomy(parts, along=self.across):
                for part, way in zip(parts[1:], pressed.seams, strict=True):
                    self._seam(part, way, along=self.across)
            elif len(plan.lines) == 1:
                aside = self._beside(pressed.uniform)
        starts = [self.lying[line.parts[0]] for line in self.made.lines]
        if plan.between and self._roomy(starts, along=not self.across):
            for part, way in zip(starts[1:], plan.between, strict=True):
                self._seam(part, way, along=not self.across)
        elif plan.between and len(set(plan.between)) == 1:
            aside = self._beside(plan.between[0])
        return aside

    def _roomy(self, parts: Sequence[Lying], *, along: bool) -> bool:
        """Whether arrows fit the parts beside their letters; `along` a row, else a column."""
        long = min(part.across if along else part.down for part in parts)
        high = min(part.down if along else part.across for part in parts)
        return long >= self.pen.pt(ARROW) and high >= self.pen.pt(BESIDE)

    def _seam(self, part: Lying, way: Way, *, along: bool) -> None:
        """An arrow over the seam before a part, clear of the letters in the middle."""
        if along:
            arrow(self.pen, part.x, part.y + part.down * CLEAR, way, upright=True)
        else:
            arrow(self.pen, part.x + part.across * (1 - CLEAR), part.y, way, upright=False)

    def _beside(self, way: Way | None) -> bool:
        """One long arrow beside the unit for all its seams."""
        x, y = self.whole.middle
        out = self.raw + self.pen.pt(7)
        if way in {"up", "down"}:
            arrow(self.pen, self.whole.x - out, y, way, upright=False, long=LONG)
        elif way in {"left", "right"}:
            low = self.whole.down + out
            arrow(self.pen, x, low, way, upright=True, long=LONG)
        return way is not None

    def _measured(self, *, aside: bool, left: bool) -> None:
        """Width below, length at the side, raw edge to raw edge."""
        pen, whole, raw = self.pen, self.whole, self.raw
        start, end = whole.x - raw, whole.x + whole.across + raw
        top, low = whole.y - raw, whole.y + whole.down + raw
        across, down = (words.length(side, self.size.system) for side in self.unit.measure)
        far = pen.pt(16 if aside else 8)
        pen.dimension((end, low), (start, low), across, far, 8)
        if left:
            pen.dimension((start, low), (start, top), down, far, 8)
        else:
            pen.dimension((end, top), (end, low), down, pen.pt(8), 8)

    def _headed(self) -> None:
        """The unit's name, and that this is how it lies as made."""
        headed(self.pen, self.unit, self.whole.x - self.raw, self.whole.y - self.raw)


def headed(pen: Pen, unit: Unit, x: float, y: float) -> None:
    """`Cup, as made` above a unit whose left upper corner is there, with the sign of its top."""
    level = y - pen.pt(9)
    mark = Lying(unit.name, Lying.upright, x, level - pen.pt(2.8), pen.pt(7), pen.pt(MARK))
    turn_mark(pen, mark)
    text = f"{words.title(unit.name)}, as made"
    pen.label(x + pen.pt(10), level, text, 9, anchor="start", weight=600)


def _is(part: Lying, patch: Shown) -> bool:
    """Whether the patch is this part; the patches of a unit are named where it is made."""
    x, y = part.middle
    within = patch.x < x < patch.x + patch.across and patch.y < y < patch.y + patch.down
    return within and part.part == patch.letter


def _runs(parts: Sequence[Lying]) -> list[list[Lying]]:
    """Neighbours of one letter."""
    runs: list[list[Lying]] = []
    for part in parts:
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
