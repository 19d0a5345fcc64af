"""Rows on the slant, as if each were laid straight: where its parts begin, how far its edges go."""

from __future__ import annotations

from typing import Final, NamedTuple

from patternbook.exact import ROOT2, Exact
from patternbook.quilt.records import LayoutMade, Line, Placed, Turn

# A triangle at the left or at the top lengthens the lower edge of its row; at the bottom or at
# the right, the upper one (the quarter turns that it lies at).
BELOW: Final = (3, 0)


class Slant(NamedTuple):
    """One row, counted in blocks along the slant: where its first part begins, and from where
    to where its upper and its lower edge run."""

    start: int
    upper: tuple[int, int]
    lower: tuple[int, int]


def slants(made: LayoutMade) -> tuple[Slant, ...]:
    """Every row, from the top left corner."""
    first = _block(made.lines[0])
    nought = first.x - first.y
    return tuple(_slant(line, nought) for line in made.lines)


def _slant(line: Line, nought: Exact) -> Slant:
    block = _block(line)
    along = (block.x - block.y - nought) / (line.down * ROOT2)
    begins = int(along.fraction) if along.rational else round(float(along))
    ends = begins + sum(part.turn.on_point for part in line.parts)
    upper, lower = [begins, ends], [begins, ends]
    for part, edge, step in ((line.parts[0], 0, -1), (line.parts[-1], 1, 1)):
        if triangle(part):
            (lower if part.turn.quarters in BELOW else upper)[edge] += step
    start = begins - triangle(line.parts[0])
    return Slant(start, (upper[0], upper[1]), (lower[0], lower[1]))


def _block(line: Line) -> Placed:
    return next(part for part in line.parts if part.turn.on_point)


def triangle(part: Placed) -> bool:
    """Whether it fills the end of a row, and is no block."""
    return not part.turn.on_point


def straightened(turn: Turn) -> Turn:
    """How a block set on point lies once its row is laid straight, from left to right: the row
    rises from the lower left, so it is turned an eighth more."""
    return Turn((turn.quarters + 1) % 4, turn.mirrored)


def as_placed(turn: Turn) -> Turn:
    """How a part of a row on the slant lies, as a sentence names it: the setting's own eighth
    turn goes without saying, and so does how a triangle fills the edge."""
    return turn._replace(on_point=False) if turn.on_point else Turn()


def seams_between(made: LayoutMade) -> tuple[Exact, ...]:
    """How long the finished seam below each row is; the corners' four last."""
    side = made.lines[0].down
    between = (side * (row.lower[1] - row.lower[0]) for row in slants(made)[:-1])
    return (*between, *(side for _ in made.corners))
