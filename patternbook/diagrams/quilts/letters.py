"""The letters of the areas, each in a white disc where it is clear of the area's rim."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

import shapely

from patternbook.diagrams.quilts.marks import Taken, disc, radius_of
from patternbook.quilting.records import Area, Spot
from patternbook.strokes.pen import Pen

SIZES: Final = (10.0, 8.0)  # points, the largest that fits
LAST: Final = 8.0  # where none fits, the first few of a letter are named all the same
FEW: Final = 3
CENTRAL: Final = 0.9  # of the widest place: where the middle is nearly so wide, it is taken
FINE: Final = 0.02  # of the area's side: how near its widest place is looked for


def middle(area: Area) -> tuple[Spot, float]:
    """The middle of the widest place in an area, and how far its rim is from there."""
    left, top, right, low = area.shape.bounds
    fine = FINE * min(right - left, low - top)
    if fine <= 0:
        spot = area.shape.representative_point()
        return (float(spot.x), float(spot.y)), 0.0
    line = shapely.maximum_inscribed_circle(area.shape, tolerance=fine)
    (x, y), *_ = shapely.get_coordinates(line).tolist()
    centre = area.shape.centroid
    room = float(area.shape.exterior.distance(centre)) if area.shape.contains(centre) else 0.0
    if not area.shape.interiors and room >= CENTRAL * line.length:
        return (float(centre.x), float(centre.y)), room
    return (x, y), float(line.length)


def lettered(pen: Pen, areas: Sequence[Area], taken: Taken) -> None:
    """Every area in which its letter fits, or the first few of it."""
    named: dict[str, int] = {}
    rest: list[tuple[Area, Spot]] = []
    for area in areas:
        spot, room = middle(area)
        size = fitting(pen, area.letter, room)
        if size is None:
            rest.append((area, spot))
            continue
        named[area.letter] = named.get(area.letter, 0) + 1
        _put(pen, taken, area.letter, spot, size)
    for area, spot in rest:
        if named.get(area.letter, 0) < FEW:
            named[area.letter] = named.get(area.letter, 0) + 1
            _put(pen, taken, area.letter, spot, LAST)


def fitting(pen: Pen, text: str, room: float) -> float | None:
    """The largest size in which the words' disc fits so much room."""
    sizes = (size for size in SIZES if pen.pt(radius_of(text, size)) <= room)
    return next(sizes, None)


def _put(pen: Pen, taken: Taken, text: str, spot: Spot, size: float) -> None:
    radius = radius_of(text, size)
    if taken.room(spot, radius) < 0:
        return
    taken.take(spot, radius)
    disc(pen, spot, text, size)


def counted(areas: Sequence[Area]) -> Mapping[str, int]:
    """How many areas there are of each letter."""
    found: dict[str, int] = {}
    for area in areas:
        found[area.letter] = found.get(area.letter, 0) + 1
    return found
