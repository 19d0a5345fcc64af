"""Which patches cover a place: for naming what a proof has found at fault, not for proving."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist

from patternbook.methods.made import Outline

Place = tuple[float, float]


class Cover:
    """Patches by their outlines, asked which of them lie at a place."""

    def __init__(self, outlines: Sequence[Outline]) -> None:
        self._outlines = outlines
        self._corners = [[(float(x), float(y)) for x, y in one.corners] for one in outlines]

    def at(self, place: Place) -> list[int]:
        """The patches there, by number."""
        return [number for number in range(len(self._outlines)) if self._covers(number, place)]

    def _covers(self, number: int, place: Place) -> bool:
        """A place in the piece between an arc and its chord is in or out, the other way round
        than the corners alone would have it."""
        corners = self._corners[number]
        inside = sum(_crossed(one, other, place) for one, other in _round(corners)) % 2 == 1
        for arc in self._outlines[number].arcs:
            centre = (float(arc.centre.x), float(arc.centre.y))
            one, other = corners[arc.edge], corners[(arc.edge + 1) % len(corners)]
            beyond = _side(one, other, place) * _side(one, other, centre) < 0
            if beyond and dist(place, centre) < float(arc.radius):
                inside = not inside
        return inside


def _round(corners: Sequence[Place]) -> Iterator[tuple[Place, Place]]:
    return zip(corners, (*corners[1:], corners[0]), strict=True)


def _crossed(one: Place, other: Place, place: Place) -> bool:
    """Whether a line from the place to the right crosses this edge."""
    if (one[1] > place[1]) == (other[1] > place[1]):
        return False
    share = (place[1] - one[1]) / (other[1] - one[1])
    return place[0] < one[0] + share * (other[0] - one[0])


def _side(one: Place, other: Place, place: Place) -> float:
    across, down = other[0] - one[0], other[1] - one[1]
    return across * (place[1] - one[1]) - down * (place[0] - one[0])
