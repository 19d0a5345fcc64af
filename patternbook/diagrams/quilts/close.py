"""An area close up: its design, how far apart its lines lie, the way through it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.quilts.ground import ground_in, lines_in
from patternbook.diagrams.quilts.marks import Taken, disc, heads, radius_of, stop
from patternbook.diagrams.quilts.measure import apart, told_length
from patternbook.diagrams.quilts.overview import LINES
from patternbook.diagrams.quilts.paths import Box, fine, windowed
from patternbook.diagrams.sheet import Inches, cropped, fitted
from patternbook.quilting.records import Filled, Path, QuiltingPlan, Spot
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing

MOST: Final[Inches] = (3.45, 2.7)
LARGEST: Final = 0.5
AROUND: Final = 0.75  # inches of the neighbours that are shown
LINES_SHOWN: Final = 13  # spacings across a window, of areas that are larger
LETTER: Final = 7.0
EVERY: Final = 54.0  # points between arrow heads
ARROW: Final = 5.0


def close_ups(size: Size, plan: QuiltingPlan) -> Iterator[Drawing]:
    """One for each letter: of its largest area, or of the part of it where the needle starts."""
    for letter in plan.letters:
        filled = shown(plan, letter)
        if filled is not None:
            one = Close(size, plan, filled)
            scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
            pen = fitted(one.drawn, MOST, scale)
            yield cropped(pen, called(size.name, letter), one.title, one.described)


def called(size: str, letter: str) -> str:
    """The name of a letter's drawing."""
    return name("quilts", size, "area", letter)


def shown(plan: QuiltingPlan, letter: str) -> Filled | None:
    """The area of a letter that stands for all of it: the largest, the first of those."""
    own = [one for one in plan.fills if one.area.letter == letter and one.drawn.paths]
    return max(own, key=lambda one: round(float(one.area.shape.area), 6), default=None)


@dataclass(frozen=True)
class Close:
    """One area, or a window on it."""

    size: Size
    plan: QuiltingPlan
    filled: Filled

    @cached_property
    def box(self) -> Box:
        """What is shown: the area with a little around it, or so many lines at its start."""
        around = AROUND * self.plan.top.rules.inch
        left, top, right, low = self.filled.area.shape.bounds
        most = self.filled.drawn.spacing * LINES_SHOWN
        if right - left <= 1.25 * most and low - top <= 1.25 * most:
            return left - around, top - around, right + around, low + around
        x, y = self.filled.drawn.paths[0][0]
        left, right = _window(x, left - around, right + around, most)
        top, low = _window(y, top - around, low + around, most)
        return left, top, right, low

    @cached_property
    def part(self) -> bool:
        """Whether it is but a part of the area."""
        left, top, right, low = self.filled.area.shape.bounds
        box = self.box
        return left < box[0] or top < box[1] or right > box[2] or low > box[3]

    @property
    def title(self) -> str:
        """`P, straight lines: where the area begins`."""
        part = ", where the area begins" if self.part else ""
        return f"{self.filled.area.letter}: {self.filled.design}{part}"

    @property
    def described(self) -> str:
        """What the picture shows, in words."""
        far = told_length(self.filled.drawn.spacing, self.size)
        part = "The part where it begins" if self.part else "The whole area"
        return (
            f"{self.title}. {part}, lines {far} apart. S: start. E: end. Arrows along the line "
            "show the way."
        )

    def drawn(self, pen: Pen) -> None:
        """The ground, the lines around, the design and its signs."""
        ground_in(pen, self.size, self.box)
        for line in self.plan.lines:
            lines_in(pen, [line.path], LINES[line.kind], self.box)
        others = (one for one in self.plan.fills if one is not self.filled)
        lines_in(pen, (path for one in others for path in one.drawn.paths), "stitched", self.box)
        parts = [part for path in self._paths for part in windowed(path, self.box) if len(part) > 1]
        for part in parts:
            pen.line(fine(pen, part), "quilting")
            heads(pen, part, "quilting", ARROW, EVERY)
        pen.rectangle(*_sides(self.box), None, "outline")
        taken = Taken(pen)
        self._ends(pen, taken)
        self._measured(pen, parts)

    @property
    def _paths(self) -> tuple[Path, ...]:
        drawn = self.filled.drawn
        if not drawn.closed:
            return drawn.paths
        return tuple(path if path[0] == path[-1] else (*path, path[0]) for path in drawn.paths)

    def _ends(self, pen: Pen, taken: Taken) -> None:
        """S at the start of each path, E at its end, numbered where there are several."""
        several = len(self._paths) > 1
        for number, path in enumerate(self._paths, start=1):
            which = str(number) if several else ""
            radius = radius_of(f"S{which}", LETTER)
            if _within(path[0], self.box):
                taken.take(path[0], radius)
                disc(pen, path[0], f"S{which}", LETTER, dark=True)
            if _within(path[-1], self.box):
                by = pen.pt(radius * 2.3)
                ways = ((0, 0), (1, 0), (0, 1), (-1, 0), (0, -1))
                spots = [(path[-1][0] + by * x, path[-1][1] + by * y) for x, y in ways]
                stop(pen, taken.best(spots, radius), f"E{which}", LETTER)

    def _measured(self, pen: Pen, parts: Sequence[Path]) -> None:
        """How far apart two lines lie, between two of them, or as a bar below."""
        spacing = self.filled.drawn.spacing
        text = told_length(spacing, self.size)
        left, _, right, low = self.box
        found = apart(parts, spacing, self.box)
        if found is None:
            start = (left + right - spacing) / 2
            y = low + pen.pt(8)
            pen.line(((start, y), (start + spacing, y)), "dimension")
            for x in (start, start + spacing):
                pen.line(((x, y - pen.pt(2.5)), (x, y + pen.pt(2.5))), "dimension")
            pen.label(start + spacing + pen.pt(4), y, f"{text} apart", 7.5, anchor="start")
            return
        one, other = found
        pen.arrow((one, other), "sewing-fine", "both", 4)
        x, y = (one[0] + other[0]) / 2, (one[1] + other[1]) / 2
        wide = pen.text_width(text, 8) / 2 + pen.pt(4)
        across = abs(other[0] - one[0]) > abs(other[1] - one[1])
        at = (x, y - pen.pt(8)) if across else (x + wide, y)
        pen.label(*at, text, 8, weight=600, plate="#ffffff")


def _window(at: float, low: float, high: float, most: float) -> tuple[float, float]:
    """So much of a side that the place lies in it, near its own end of the side."""
    if high - low <= most:
        return low, high
    start = min(max(at - most / 2, low), high - most)
    return start, start + most


def _within(at: Spot, box: Box) -> bool:
    return box[0] <= at[0] <= box[2] and box[1] <= at[1] <= box[3]


def _sides(box: Box) -> tuple[float, float, float, float]:
    return box[0], box[1], box[2] - box[0], box[3] - box[1]
