"""What kind of place a piece of open ground is."""

from __future__ import annotations

from typing import Final

from shapely import Polygon

from patternbook.quilting.areas.shapes import boxed, full, sides
from patternbook.quilting.records import AreaKind

SQUARE: Final = 16.0  # in: the longest side of a square or rectangle with one design in it
WIDE: Final = 14.0  # in: the widest band
LONG: Final = 3.0  # times as long as wide
NEARLY: Final = 0.8  # of the box around it (an octagon fills 0.83)

FULL: Final = 0.85  # of its hull (a straight band with a toothed rim)


def ground_kind(shape: Polygon, inch: float) -> AreaKind:
    """A square, a band, or any other ground."""
    short, long = sides(shape)
    if shape.interiors or boxed(shape) < NEARLY or full(shape) < FULL:
        return "ground"
    if long <= SQUARE * inch and long < LONG * short:
        return "square"
    if long >= LONG * short and short <= WIDE * inch:
        return "band"
    return "ground"
