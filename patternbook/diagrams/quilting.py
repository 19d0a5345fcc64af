"""The quilting map: every line at its real place over a pale top, numbered in order."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.tops import framed
from patternbook.quilting.echo_records import QuiltingMap, StitchLine
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Point, Role
from patternbook.strokes.tones import ghost

ALL: Final = (7.2, 3.4)
ONE: Final = (3.5, 4.6)
LARGEST: Final = 0.1
NUMBER: Final = 8.0  # points
ARROWS: Final = (0.28, 0.72)  # where they stand along a line
ROOM: Final = 6.0  # points between lines; closer ones are drawn thinner


def quiltings(pattern: Pattern) -> Iterator[Drawing]:
    """All sizes side by side to one scale, then each by itself."""
    maps = [Map(size, size.quilting) for size in pattern.tops if size.quilting is not None]
    if not maps:
        return
    scale = LARGEST / (2.54 if pattern.first.system.unit == "cm" else 1)
    pen = fitted(lambda pen: _side_by_side(pen, maps), ALL, scale)
    told = " ".join(described(one.size, one.plan) for one in maps)
    yield cropped(pen, "quiltings", "Quilting, all sizes to one scale", told)
    for one in maps:
        pen = fitted(_alone(one), ONE, scale)
        gap = words.length(one.plan.gap, one.size.system)
        title = f"Quilting, {one.size.name}: {len(one.plan.lines)} lines, at most {gap} apart"
        yield cropped(pen, name("quilting", one.size.name), title, described(one.size, one.plan))


def _side_by_side(pen: Pen, maps: Sequence[Map]) -> None:
    x = 0.0
    tallest = max(one.size.top[1] for one in maps)
    for one in maps:
        wide, long = one.size.top
        one.drawn(pen, x, tallest - long)
        y = tallest - long - pen.pt(22 if one.plan.way == "down" else 9)
        pen.label(x + wide / 2, y, words.title(one.size.name), 10, weight=600)
        x += wide + pen.pt(44 if one.plan.way == "across" else 24)


def _alone(one: Map) -> Callable[[Pen], None]:
    return lambda pen: one.drawn(pen, 0.0, 0.0)


@dataclass(frozen=True)
class Map:
    """The lines of one size."""

    size: Size
    plan: QuiltingMap

    def drawn(self, pen: Pen, x: float, y: float) -> None:
        """The pale top, the lines, their numbers."""
        for patch in self.size.shown:
            patch.moved(x, y).put(pen, ghost(patch.fill), "ground")
        framed(pen, self.size, x, y)
        room = self._nearest / pen.pt(1)
        for line in self.plan.lines:
            _line(pen, self._ends(line, x, y), room)
        for half in self._halves:
            self._numbers(pen, half, x, y)

    @property
    def _nearest(self) -> float:
        """How close the closest two lines lie: their signs must fit in there."""
        places = sorted(float(line.at) for line in self.plan.lines)
        return min((after - before for before, after in pairwise(places)), default=1.0)

    def _ends(self, line: StitchLine, x: float, y: float) -> tuple[Point, Point]:
        start, end = line.start, line.end
        return (x + float(start.x), y + float(start.y)), (x + float(end.x), y + float(end.y))

    @property
    def _halves(self) -> tuple[tuple[StitchLine, ...], ...]:
        """The lines before the quilt is turned round, and those after."""
        turn = turned_before(self.plan)
        return self.plan.lines[: turn - 1], self.plan.lines[turn - 1 :]

    def _numbers(self, pen: Pen, half: Sequence[StitchLine], x: float, y: float) -> None:
        """Numbers outside the edge where the lines start: of the first, and of every so manieth."""
        for line in half[:: self._every(pen, half)]:
            (start_x, start_y), (end_x, end_y) = self._ends(line, x, y)
            if self.plan.way == "down":
                edge = y - pen.pt(8) if start_y < end_y else y + self.size.top[1] + pen.pt(8)
                pen.label(start_x, edge, str(line.order), NUMBER)
            elif start_x < end_x:
                pen.label(x - pen.pt(4), start_y, str(line.order), NUMBER, anchor="end")
            else:
                right = x + self.size.top[0] + pen.pt(4)
                pen.label(right, start_y, str(line.order), NUMBER, anchor="start")

    def _every(self, pen: Pen, half: Sequence[StitchLine]) -> int:
        """How many lines from one number to the next, so that they do not touch."""
        width = pen.text_width(str(len(self.plan.lines)), NUMBER)
        apart = (width if self.plan.way == "down" else pen.pt(NUMBER)) + pen.pt(2.5)
        places = [float(line.at) for line in half]
        for every in range(1, len(half)):
            steps = pairwise(places[::every])
            if all(abs(after - before) >= apart for before, after in steps):
                return every
        return max(1, len(half))


def _line(pen: Pen, ends: tuple[Point, Point], room: float) -> None:
    """One line with a dot where it starts, arrows along it and a bar where it ends."""
    start, end = ends
    role: Role = "quilting" if room >= ROOM else "quilting-fine"
    pen.line(ends, role)
    for share in ARROWS:
        way = (_along(start, end, share - 0.02), _along(start, end, share + 0.02))
        pen.arrow(way, role, "end", min(5.0, max(2.2, room * 0.8)))
    pen.dot(*start, min(4.5, max(1.6, room * 0.62)))
    half = pen.pt(min(3.5, max(0.8, room * 0.36)))
    out = (half, 0.0) if start[0] == end[0] else (0.0, half)
    bar = ((end[0] - out[0], end[1] - out[1]), (end[0] + out[0], end[1] + out[1]))
    pen.line(bar, "edge")


def _along(a: Point, b: Point, share: float) -> Point:
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def turned_before(plan: QuiltingMap) -> int:
    """The number of the first line that is sewn after the quilt is turned round."""
    first = plan.lines[0]
    half = [
        line
        for line in plan.lines
        if (line.start.x < line.end.x, line.start.y < line.end.y)
        == (first.start.x < first.end.x, first.start.y < first.end.y)
    ]
    return len(half) + 1


def described(size: Size, plan: QuiltingMap) -> str:
    """The quilting in words: way, number, spacing, order."""
    along = "down the quilt" if plan.way == "down" else "across the quilt"
    gap, margin = (words.length(one, size.system) for one in (plan.gap, plan.margin))
    return (
        f"Quilting of the {size.name} size: {len(plan.lines)} straight lines {along}, at most "
        f"{gap} apart, none on a long seam. Lines 1 to {turned_before(plan) - 1} go from the "
        f"middle out to one side; then the quilt is turned round for the other half. Every line "
        f"starts and stops {margin} from the finished edge."
    )
