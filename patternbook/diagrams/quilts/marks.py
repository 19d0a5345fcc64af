"""The signs of a way to stitch: where it starts, where it goes, where it stops, and its numbers."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import Final

from patternbook.diagrams.quilts.paths import Along, Place
from patternbook.quilting.records import Path, Spot
from patternbook.strokes.lettering import text_width
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import INK, Fill, Role

WHITE: Final = Fill("#ffffff")
BLACK: Final = Fill(INK)
NUMBER: Final = 6.5  # points
SMALL: Final = 6.0  # numbers of three figures
LONG: Final = 3
SHARES: Final = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.05, 0.95)
BEGUN: Final = (0.0, 6.0, 12.0, 18.0, 24.0, 30.0, 40.0, 50.0, 60.0, 80.0)  # points
BESIDE: Final = (9.0, 14.0)  # points from its line, where a number finds no room on it
AIR: Final = 1.0  # points between two discs


class Taken:
    """Where discs lie already, so that none covers another."""

    def __init__(self, pen: Pen) -> None:
        self._pen = pen
        self._discs: list[tuple[Spot, float]] = []

    def room(self, at: Spot, radius: float) -> float:
        """How far a disc (radius in points) would be clear of all others, in points."""
        pt = self._pen.pt(1)
        return min(
            (math.dist(at, other) / pt - radius - theirs for other, theirs in self._discs),
            default=math.inf,
        )

    def take(self, at: Spot, radius: float) -> None:
        """A disc lies there."""
        self._discs.append((at, radius))

    def best(self, spots: Iterable[Spot], radius: float) -> Spot:
        """The first of these places that is clear, else the clearest; it is taken."""
        rooms = [(self.room(spot, radius), spot) for spot in spots]
        clear = (spot for room, spot in rooms if room >= AIR)
        found = next(clear, max(rooms, key=lambda one: one[0])[1])
        self.take(found, radius)
        return found


def radius_of(text: str, size: float) -> float:
    """The radius of the disc round these words, in points."""
    return max(size * 0.72, text_width(text, size, 600) / 2 + size * 0.3)


def disc(pen: Pen, at: Spot, text: str, size: float = NUMBER, *, dark: bool = False) -> None:
    """Words in a white disc, or white in a dark one."""
    pen.circle(*at, pen.pt(radius_of(text, size)), BLACK if dark else WHITE, "disc")
    pen.label(*at, text, size, weight=600, colour=WHITE.colour if dark else INK)


def stop(pen: Pen, at: Spot, text: str, size: float = NUMBER) -> None:
    """White words in a dark square: where the needle stops."""
    half = pen.pt(radius_of(text, size))
    pen.rectangle(at[0] - half, at[1] - half, 2 * half, 2 * half, BLACK, "disc")
    pen.label(*at, text, size, weight=600, colour=WHITE.colour)


def numbered(pen: Pen, taken: Taken, path: Path, text: str) -> None:
    """The number of a line, on it or beside it, where no other number lies."""
    line = Along(path)
    _put(pen, taken, [line.place(share) for share in SHARES], text)


def begun(pen: Pen, taken: Taken, path: Path, text: str) -> None:
    """The number of an area, as near to where its line begins as there is room."""
    line = Along(path)
    shares = (min(pen.pt(far) / line.length, 0.5) for far in BEGUN)
    _put(pen, taken, [line.place(share) for share in shares], text)


def _put(pen: Pen, taken: Taken, places: Sequence[Place], text: str) -> None:
    """On one of these places, else a little to the side of one."""
    size = NUMBER if len(text) < LONG else SMALL
    offs = [pen.pt(side * far) for far in BESIDE for side in (1, -1)]
    aside = (_aside(place, by) for by in offs for place in places)
    spots = [*(place.at for place in places), *aside]
    disc(pen, taken.best(spots, radius_of(text, size)), text, size)


def _aside(place: Place, by: float) -> Spot:
    return place.at[0] - place.along[1] * by, place.at[1] + place.along[0] * by


def head(pen: Pen, at: Place, role: Role, size: float) -> None:
    """An arrow head on the line, its middle at the place."""
    half = pen.pt(size / 2)
    ends = tuple((at.at[0] + at.along[0] * by, at.at[1] + at.along[1] * by) for by in (-half, half))
    pen.arrow(ends, role, "end", size)


def heads(pen: Pen, path: Path, role: Role, size: float, every: float) -> None:
    """Arrow heads along a line, so many points apart, and one at least."""
    line = Along(path)
    if line.length <= pen.pt(size):
        return
    number = max(1, round(line.length / pen.pt(every)))
    for at in range(number):
        head(pen, line.place((at + 0.5) / number), role, size)


def clear_heads(
    pen: Pen, taken: Taken, path: Path, role: Role, size: float, shares: Sequence[float]
) -> None:
    """Arrow heads at these shares of a line, moved along where a disc lies."""
    line = Along(path)
    if line.length <= pen.pt(size * 1.5):
        return
    for share in shares:
        tries = (share, share + 0.08, share - 0.08, share + 0.16, share - 0.16)
        places = [line.place(one) for one in tries if 0.04 < one < 0.96]
        found = next((one for one in places if taken.room(one.at, size / 2) >= 0), None)
        if found is not None:
            head(pen, found, role, size)
