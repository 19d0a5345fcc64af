"""Circles set one against the other until a room is full."""

from __future__ import annotations

import math
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from patternbook.quilting.designs.frame import Spots

SIZES: Final = (0.8, 1.1)  # of the spacing: how wide pebbles are, from and to
SMALLER: Final = (1.0, 0.7, 0.45)  # what is tried where one of the drawn size does not fit
ANGLES: Final = math.tau * np.arange(20) / 20
AROUND: Final = np.column_stack([np.cos(ANGLES), np.sin(ANGLES)])  # places tried around a circle
TIGHT: Final = 1e-9


class Pebble(NamedTuple):
    """A circle, and the number of the one that it was set against."""

    middle: tuple[float, float]
    radius: float
    beside: int


def packed(free: Polygon, spacing: float, chance: np.random.Generator) -> list[Pebble]:
    """From the top left corner on, each circle is set against an earlier one and, if it can be,
    a second."""
    heap = Heap(free)
    low, high = SIZES
    if not heap.first(spacing * (low + high) / 4):
        return []
    number = 0
    while number < len(heap.pebbles):
        size = spacing * float(chance.uniform(low, high)) / 2
        if not any(heap.set_against(number, size * share) for share in SMALLER):
            number += 1
    return heap.pebbles


class Heap:
    """The circles so far."""

    def __init__(self, free: Polygon) -> None:
        self.pebbles: list[Pebble] = []
        self.free = free
        self.rim = free.boundary
        shapely.prepare(self.free)
        shapely.prepare(self.rim)
        self.middles: Spots = np.zeros((64, 2))
        self.radii: NDArray[np.float64] = np.zeros(64)

    def first(self, radius: float) -> bool:
        """One in the corner nearest to the top left of the room."""
        for share in SMALLER:
            inside = self.free.buffer(-radius * share, join_style="mitre")
            if not inside.is_empty:
                corner = shapely.Point(self.free.bounds[:2])
                near = shapely.shortest_line(inside, corner).coords[0]
                self._add((float(near[0]), float(near[1])), radius * share, 0)
                return True
        return False

    def _add(self, middle: tuple[float, float], radius: float, beside: int) -> None:
        count = len(self.pebbles)
        if count == len(self.radii):
            self.middles = np.vstack([self.middles, np.zeros_like(self.middles)])
            self.radii = np.concatenate([self.radii, np.zeros_like(self.radii)])
        self.middles[count], self.radii[count] = middle, radius
        self.pebbles.append(Pebble(middle, radius, beside))

    def set_against(self, number: int, radius: float) -> bool:
        """One more against a circle: best where it touches another as well."""
        count = len(self.pebbles)
        middle, beside = self.middles[number], self.radii[number] + radius
        ways = self.middles[:count] - middle
        far = np.hypot(ways[:, 0], ways[:, 1])
        near = np.flatnonzero(far < beside + radius + self.radii[:count])
        others = self.radii[near] + radius
        met = far[near] > TIGHT
        tried = np.vstack(
            [
                _meets(middle, beside, ways[near[met]], others[met]),
                middle + beside * AROUND,
            ]
        )
        apart = np.hypot(*(tried[:, None, :] - self.middles[None, near, :]).transpose(2, 0, 1))
        fit = np.flatnonzero((apart - others[None, :]).min(axis=1) >= -1e-7)
        spot = self._inside(tried[fit], radius)
        if spot is None:
            return False
        self._add((float(spot[0]), float(spot[1])), radius, number)
        return True

    def _inside(self, tried: Spots, radius: float) -> Spots | None:
        """The first of some spots that lies in the room with so much to spare."""
        held = tried[shapely.contains_xy(self.free, tried[:, 0], tried[:, 1])]
        away = shapely.distance(shapely.points(held), self.rim)
        fit = np.flatnonzero(away >= radius - 1e-7)
        return held[fit[0]] if len(fit) else None


def _meets(middle: Spots, beside: float, ways: Spots, others: NDArray[np.float64]) -> Spots:
    """The two spots each that lie so far from a circle's middle and so far from its neighbours':
    there a circle touches both."""
    far = np.hypot(ways[:, 0], ways[:, 1])
    along = (beside * beside - others * others + far * far) / (2 * far)
    aside = np.sqrt(np.maximum(beside * beside - along * along, 0))
    unit = ways / far[:, None]
    turned = np.stack([-unit[:, 1], unit[:, 0]], axis=-1)
    on, off = middle + unit * along[:, None], turned * aside[:, None]
    return np.vstack([on + off, on - off])
