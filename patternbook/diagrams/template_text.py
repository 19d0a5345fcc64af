"""Where words have room inside a shape, and their writing there with the arrow of the grain."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final, NamedTuple

from patternbook.quilt.cut_line import box
from patternbook.quilt.template import Curve
from patternbook.strokes import signs
from patternbook.strokes.pen import Pen

Box = tuple[float, float, float, float]
HEAD: Final = 16.0  # points of the letter
BODY: Final = 8.5
SMALL: Final = 8.0
ARROW: Final = 14.0  # points that the arrow of the grain takes beside the words
AIR: Final = 4.0  # points kept free round the words
STEPS: Final = 24  # places tried each way


class Words(NamedTuple):
    """A letter and lines under it, at these sizes in points."""

    head: str
    lines: tuple[str, ...]
    size: float = BODY

    def room(self, pen: Pen) -> tuple[float, float]:
        """Width and height with the arrow beside them, in units of the drawing."""
        wide = max(
            pen.text_width(self.head, HEAD, 700),
            *(pen.text_width(line, self.size) for line in self.lines),
            0.0,
        )
        high = HEAD + 4 + len(self.lines) * (self.size + 3)
        return wide + pen.pt(ARROW + 6 + 2 * AIR), pen.pt(high + 2 * AIR)


def write_inside(
    pen: Pen,
    shape: Curve,
    words: Words,
    grain: tuple[float, float],
    lines: Sequence[Curve] = (),
) -> Words | None:
    """Put the words and the arrow inside the shape, clear of the lines in it; what had no room is
    given back. `grain` is the way of the straight grain on the paper."""
    tries = (words, words._replace(size=SMALL), words._replace(lines=()))
    for attempt in tries:
        room = attempt.room(pen)
        at = place_for(shape, room, lines)
        if at is not None:
            _write(pen, attempt, (*at, *room), grain)
            return None if attempt.lines == words.lines else words._replace(head="")
    return words


def _write(pen: Pen, words: Words, room: Box, grain: tuple[float, float]) -> None:
    x, y, high = room[0] + pen.pt(AIR), room[1] + pen.pt(AIR), room[3] - pen.pt(2 * AIR)
    _arrow(pen, (x, y, pen.pt(ARROW), high), grain)
    left, top = x + pen.pt(ARROW + 3), y + pen.pt(HEAD / 2 + 2)
    pen.label(left, top, words.head, HEAD, anchor="start", weight=700)
    for number, line in enumerate(words.lines):
        at = top + pen.pt(HEAD / 2 + 5 + number * (words.size + 3))
        pen.label(left, at, line, words.size, anchor="start")


def _arrow(pen: Pen, room: Box, grain: tuple[float, float]) -> None:
    x, y, wide, high = room
    middle = x + wide / 2, y + high / 2
    half = high / 2 - pen.pt(1) if grain[1] else wide / 2 - pen.pt(1)
    ends = [
        (middle[0] + way * half * grain[0], middle[1] + way * half * grain[1]) for way in (-1, 1)
    ]
    signs.grain(pen, ends[0], ends[1])


def place_for(
    shape: Curve, room: tuple[float, float], lines: Sequence[Curve] = ()
) -> tuple[float, float] | None:
    """The top left corner of a box of that size inside the shape, as near its middle as it goes."""
    left, top, right, low = box(shape)
    wide, high = room
    free = right - left - wide, low - top - high
    if min(free) < 0:
        return None
    middle = sum(x for x, _ in shape) / len(shape), sum(y for _, y in shape) / len(shape)
    spots = (
        (left + free[0] * across / STEPS, top + free[1] * down / STEPS)
        for across in range(STEPS + 1)
        for down in range(STEPS + 1)
    )
    ordered = sorted(spots, key=lambda spot: _off(spot, room, middle))
    return next((spot for spot in ordered if _clear(shape, lines, (*spot, *room))), None)


def _off(
    spot: tuple[float, float], room: tuple[float, float], middle: tuple[float, float]
) -> tuple[float, tuple[float, float]]:
    x, y = spot[0] + room[0] / 2 - middle[0], spot[1] + room[1] / 2 - middle[1]
    return round(x * x + y * y, 9), spot


def _clear(shape: Curve, lines: Sequence[Curve], room: Box) -> bool:
    """Whether a box lies inside the shape and neither its edge nor a line runs through it."""
    x, y, wide, high = room
    if not inside(shape, (x + wide / 2, y + high / 2)):
        return False
    rectangle = (x, y, x + wide, y + high)
    ends = (pair for line in ((*shape, shape[0]), *lines) for pair in pairwise(line))
    return all(clipped(start, end, rectangle) is None for start, end in ends)


def inside(shape: Sequence[tuple[float, float]], point: tuple[float, float]) -> bool:
    """Whether a point lies within a closed line."""
    x, y = point
    found = False
    for (ax, ay), (bx, by) in zip(shape, (*shape[1:], shape[0]), strict=True):
        if (ay > y) != (by > y) and x < ax + (y - ay) / (by - ay) * (bx - ax):
            found = not found
    return found


Ends = tuple[tuple[float, float], tuple[float, float]]


def clipped(start: tuple[float, float], end: tuple[float, float], within: Box) -> Ends | None:
    """The part of a straight line inside a box (after Liang and Barsky, 1984); None outside."""
    left, top, right, low = within
    dx, dy = end[0] - start[0], end[1] - start[1]
    first, last = 0.0, 1.0
    for way, room in (
        (-dx, start[0] - left),
        (dx, right - start[0]),
        (-dy, start[1] - top),
        (dy, low - start[1]),
    ):
        if way == 0:
            if room < 0:
                return None
            continue
        share = room / way
        if way < 0:
            first = max(first, share)
        else:
            last = min(last, share)
    if first >= last:
        return None
    return (
        (start[0] + first * dx, start[1] + first * dy),
        (start[0] + last * dx, start[1] + last * dy),
    )
