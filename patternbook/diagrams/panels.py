"""Small pictures one after the other, an arrow between, in as few lines as keeps them large."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final, NamedTuple

from patternbook.diagrams.sheet import Box, Inches, extent, fitted
from patternbook.strokes.pen import Pen
from patternbook.strokes.placing import Placing
from patternbook.strokes.signs import count
from patternbook.strokes.stroke import Patch

ARROW: Final = 14.0  # points of an arrow from one picture to the next
AIR: Final = 5.0  # points at both ends of it
BELOW: Final = 12.0  # points between two lines of pictures
MOST_LINES: Final = 3
RESULT: Final = 1.6  # how much larger than the sketches the last picture may be
LARGER: Final = 1.08  # how much larger the pictures must become for another line


class Panel(NamedTuple):
    """One picture, drawn with its own pen; its number in the order of work. What has none is what
    comes of the work, and is drawn larger."""

    draw: Callable[[Pen], None]
    number: int | None = None


class _Drawn(NamedTuple):
    """A picture, the box around it, and how high the middle of its cloth lies."""

    pen: Pen
    box: Box
    level: float

    @property
    def wide(self) -> float:
        return self.box[2] - self.box[0]

    @property
    def above(self) -> float:
        return self.level - self.box[1]

    @property
    def below(self) -> float:
        return self.box[3] - self.level


def in_lines(panels: Sequence[Panel], most: Inches, scale: float) -> Pen:
    """All pictures at the largest scale at which they fit the inches allowed."""
    best: Pen | None = None
    for lines in range(1, min(MOST_LINES, len(panels)) + 1):
        pen = fitted(_laid(panels, lines, scale), most, scale)
        if best is None or pen.scale > best.scale * LARGER:
            best = pen
    return best or Pen(1, 1, scale)


def _laid(panels: Sequence[Panel], lines: int, largest: float) -> Callable[[Pen], None]:
    def draw(pen: Pen) -> None:
        drawn = [_drawn(panel, pen.scale, largest) for panel in panels]
        y = 0.0
        for line in _broken(drawn, lines, pen.pt(ARROW + 2 * AIR)):
            y += _line(pen, line, y, first=line[0] is drawn[0]) + pen.pt(BELOW)

    return draw


def _drawn(panel: Panel, scale: float, largest: float) -> _Drawn:
    """A picture in the units of a sheet at that scale."""
    pen = Pen(1, 1, scale if panel.number else min(scale * RESULT, largest))
    panel.draw(pen)
    larger = Placing.still.scaled(pen.scale / scale)
    pen.strokes, pen.scale = [larger.stroke(stroke) for stroke in pen.strokes], scale
    _, start, _, end = extent([one for one in pen.strokes if isinstance(one, Patch)], 0)
    if panel.number is not None:
        left, top, *_ = extent(pen.strokes, pen.pt(1))
        count(pen, left + pen.pt(7), top - pen.pt(10), panel.number, size=8)
    return _Drawn(pen, extent(pen.strokes, pen.pt(1)), (start + end) / 2)


def _broken(drawn: Sequence[_Drawn], lines: int, between: float) -> list[list[_Drawn]]:
    """So many lines at most, the widest of them as narrow as can be."""

    def split(limit: float) -> list[list[_Drawn]]:
        found: list[list[_Drawn]] = [[]]
        wide = 0.0
        for one in drawn:
            if found[-1] and wide + between + one.wide > limit:
                found.append([])
                wide = 0.0
            wide += one.wide + (between if found[-1] else 0.0)
            found[-1].append(one)
        return found

    sums = sorted(
        sum(one.wide for one in drawn[start:end]) + between * (end - start - 1)
        for start in range(len(drawn))
        for end in range(start + 1, len(drawn) + 1)
    )
    widest = max(one.wide for one in drawn)
    fits = (limit for limit in sums if limit >= widest and len(split(limit + 1e-6)) <= lines)
    return split(next(fits, sums[-1]) + 1e-6)


def _line(pen: Pen, line: Sequence[_Drawn], y: float, *, first: bool) -> float:
    """One line of pictures, their middles level; gives how high it is."""
    above, below = max(one.above for one in line), max(one.below for one in line)
    level = y + above
    x = 0.0
    for number, one in enumerate(line):
        if number or not first:
            start = x + pen.pt(AIR)
            ends = ((start, level), (start + pen.pt(ARROW), level))
            pen.arrow(ends, "edge", "end", 6)
            x = ends[1][0] + pen.pt(AIR)
        pen.place(one.pen.strokes, Placing.still.moved(x - one.box[0], level - one.level))
        x += one.wide
    return above + below
