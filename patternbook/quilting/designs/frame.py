"""Turned axes: along the lines of a design and across them; and what direction suits a shape."""

from __future__ import annotations

import math
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from patternbook.quilting.records import Path, Rules

Spots = NDArray[np.float64]  # one row a spot
QUARTERS: Final = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))
FINE: Final = 1e-6  # spots nearer than this are one
DECIMALS: Final = 6


class Frame(NamedTuple):
    """Axes turned by an angle: the first along the lines, the second across them."""

    cos: float
    sin: float

    def turned(self, spots: Spots) -> Spots:
        """Spots of the top in these axes."""
        x, y = spots[..., 0], spots[..., 1]
        return np.stack([x * self.cos + y * self.sin, y * self.cos - x * self.sin], axis=-1)

    def back(self, spots: Spots) -> Spots:
        """Spots in these axes on the top."""
        u, v = spots[..., 0], spots[..., 1]
        return np.stack([u * self.cos - v * self.sin, u * self.sin + v * self.cos], axis=-1)

    @property
    def across(self) -> Frame:
        """These axes with a quarter turn."""
        return Frame(-self.sin, self.cos)


def frame(degrees: float) -> Frame:
    """Axes turned by so many degrees; exact for quarter turns."""
    quarter, rest = divmod(degrees, 90)
    if rest < FINE:
        return Frame(*QUARTERS[int(quarter) % 4])
    return Frame(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))


def rim_spots(shape: Polygon) -> Spots:
    return shapely.get_coordinates(shape)


def side_frame(shape: Polygon) -> Frame:
    """Axes along the direction in which most of the sides of a shape run; level or upright where
    that is nearly so."""
    spots = shapely.get_coordinates(shape.exterior)
    sides = np.diff(spots, axis=0)
    lengths = np.hypot(sides[:, 0], sides[:, 1])
    angles = np.round(np.degrees(np.arctan2(sides[:, 1], sides[:, 0])) % 90, 3) % 90
    found, where = np.unique(angles, return_inverse=True)
    totals = np.round(np.bincount(where, weights=lengths), 6)
    plain = float(totals[found == 0].sum())
    best = int(np.argmax(totals))
    return frame(0.0 if plain >= totals[best] / 2 else float(found[best]))


def reach(shape: Polygon, axes: Frame) -> tuple[Spots, Spots]:
    """The least and the greatest of a shape along turned axes."""
    turned = axes.turned(rim_spots(shape))
    return turned.min(axis=0), turned.max(axis=0)


def long_ways(shape: Polygon) -> tuple[Frame, Frame]:
    """Axes along the longer way of a shape, and across it."""
    side = side_frame(shape)
    low, high = reach(shape, side)
    wide, tall = np.round(high - low, 3).tolist()
    long = wide >= tall
    return (side, side.across) if long else (side.across, side)


def on_step(spacing: float, rules: Rules) -> float:
    """A spacing on the marks of the ruler, no finer than two of them."""
    return max(2, math.floor(spacing / rules.step + 0.5)) * rules.step


def as_path(spots: Spots) -> Path:
    """Spots as a path: none twice in a row, rounded so that floats' own noise is lost."""
    rounded = np.round(spots, DECIMALS) + 0.0
    moved = np.any(np.abs(np.diff(rounded, axis=0)) > FINE / 2, axis=1)
    kept = rounded[np.concatenate([[True], moved])]
    return tuple((float(x), float(y)) for x, y in kept.tolist())
