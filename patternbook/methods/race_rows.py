"""Where the joins of a strip race come to lie: the long strip folded, sewn and cut, row by row."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from patternbook.exact import Exact
from patternbook.methods.clipping import Window, clipped, shape
from patternbook.methods.made import Placed, SewnSeam, Spot, Turn

RIGHTWARD, LEFTWARD = Turn(1), Turn(3)


class Joined(NamedTuple):
    """One strip in the long one: from where to where, at the middle of its joins, and how far
    each join leans from there to the edge of the finished strip (nought: straight)."""

    part: str
    start: Exact
    end: Exact
    lean_start: Exact
    lean_end: Exact


class Row(NamedTuple):
    """A stretch of the long strip that is one row; `back` where it runs from right to left."""

    start: Exact
    end: Exact
    back: bool


def folded(total: Exact, folds: int) -> tuple[Row, ...]:
    """The rows from the top. With each fold the right half comes to lie below the left one, and
    is turned by half with all its rows, for the two are sewn along their lower edges."""
    rows: tuple[Row, ...] = (Row(Exact(0), total, back=False),)
    for _ in range(folds):
        left = tuple(_half(row, left=True) for row in rows)
        right = tuple(_half(row, left=False) for row in reversed(rows))
        rows = (*left, *(row._replace(back=not row.back) for row in right))
    return rows


def _half(row: Row, *, left: bool) -> Row:
    middle = (row.start + row.end) / 2
    return row._replace(end=middle) if left != row.back else row._replace(start=middle)


def rows_of(
    rows: Sequence[Row], joined: Sequence[Joined], high: Exact, seam: Exact
) -> tuple[tuple[Placed, ...], ...]:
    """The finished patches of each row from left to right, in the measures of the quilt."""
    return tuple(tuple(_row(row, number, joined, high, seam)) for number, row in enumerate(rows))


def _row(
    row: Row, number: int, joined: Sequence[Joined], high: Exact, seam: Exact
) -> Iterator[Placed]:
    window = Window(row.start + seam, Exact(0), row.end - seam, high)
    near = _near(joined, window, high)
    for strip in reversed(near) if row.back else near:
        patch = _patch(strip, high, back=row.back)
        seen = clipped(patch, window) if patch is not None else None
        if seen is not None:
            yield _laid(seen, window, high * number, back=row.back)


def _near(joined: Sequence[Joined], window: Window, high: Exact) -> Sequence[Joined]:
    """The strips that may reach into the window: a join leans less far than a row is high."""
    first = bisect_left(joined, window.left - high, key=lambda strip: strip.end)
    return joined[first : bisect_left(joined, window.right + high, key=lambda strip: strip.start)]


def _patch(strip: Joined, high: Exact, *, back: bool) -> Placed | None:
    """A strip between its joins, as the long strip lies."""
    corners = (
        Spot(strip.start - strip.lean_start, Exact(0)),
        Spot(strip.end - strip.lean_end, Exact(0)),
        Spot(strip.end + strip.lean_end, high),
        Spot(strip.start + strip.lean_start, high),
    )
    turn = LEFTWARD if back else RIGHTWARD
    blank = Placed(strip.part, turn, *corners[0], strip.end - strip.start, high)
    return shape(blank, corners)


def _laid(part: Placed, window: Window, down: Exact, *, back: bool) -> Placed:
    """The patch in its row, turned by half where the row runs back."""
    high = window.low - window.top

    def moved(spot: Spot) -> Spot:
        if back:
            return Spot(window.right - spot.x, high - spot.y + down)
        return Spot(spot.x - window.left, spot.y + down)

    outline = part.outline
    if outline is not None:
        outline = outline._replace(corners=tuple(map(moved, outline.corners)))
    x = window.right - part.x - part.across if back else part.x - window.left
    return part._replace(x=x, y=down, outline=outline)


def seams(lines: Sequence[Sequence[Placed]], high: Exact) -> Iterator[SewnSeam]:
    """The joins, pressed open, and the long seam under each row, pressed to the row below."""
    first = 0
    for number, line in enumerate(lines):
        for at, (one, other) in enumerate(pairwise(line), first):
            start, end = sorted(set(_corners(one)) & set(_corners(other)), key=lambda spot: spot.y)
            yield SewnSeam(start, end, (at, at + 1), None, settled=True)
        if number + 1 < len(lines):
            yield _under(line, lines[number + 1], first, high * (number + 1))
        first += len(line)


def _under(line: Sequence[Placed], below: Sequence[Placed], first: int, y: Exact) -> SewnSeam:
    """The seam between two rows, told of the two patches that lie together the longest."""
    one, other = max(
        ((at, under) for at in range(len(line)) for under in range(len(below))),
        key=lambda pair: _together(_stretch(line[pair[0]], y), _stretch(below[pair[1]], y)),
    )
    other += first + len(line)
    right = max(spot.x for part in line for spot in _corners(part))
    return SewnSeam(Spot(Exact(0), y), Spot(right, y), (first + one, other), other, settled=True)


def _together(one: tuple[Exact, Exact], other: tuple[Exact, Exact]) -> Exact:
    return min(one[1], other[1]) - max(one[0], other[0])


def _stretch(part: Placed, y: Exact) -> tuple[Exact, Exact]:
    """From where to where a patch reaches along a line."""
    along = [spot.x for spot in _corners(part) if spot.y == y] or [part.x]
    return min(along), max(along)


def _corners(part: Placed) -> tuple[Spot, ...]:
    if part.outline is not None:
        return part.outline.corners
    right, low = part.x + part.across, part.y + part.down
    return Spot(part.x, part.y), Spot(right, part.y), Spot(right, low), Spot(part.x, low)
