"""Small stars along the middle of a strip: one half of each on the way out, the other on the way
back, so that the middle of each stays open. The spacing told is the radius of a star; no open spot
is wider than 1.4 times that."""

from __future__ import annotations

import itertools
import math
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import Spots, as_path, on_step
from patternbook.quilting.designs.strips import half_width, is_strip, middle_line, runs_round
from patternbook.quilting.records import Drawn, Path

POINTS: Final = 8
HOLLOW: Final = 0.42  # of its radius: how far from the middle the bays between the points lie
BEND: Final = 0.18  # of the radius: how far the two lines from star to star bend apart
CLOSE: Final = 0.3  # radii: stars lie no closer
WIDE: Final = 1.2  # radii: and no wider apart
WIDEST: Final = 2.5  # inches: larger stars leave too much open
FEW: Final = 2


def draw(room: Room, spacing: float, _seed: int) -> Drawn | None:
    if room.free.is_empty:
        return None
    middle = middle_line(room)
    radius = half_width(room, middle) - max(_keep(room), room.rules.seam)
    if not room.rules.inch / 4 <= radius <= WIDEST * room.rules.inch:
        return None
    stars = placed(middle, radius, min(max(spacing, CLOSE * radius), WIDE * radius))
    if len(stars) < FEW:
        return None
    path = out_and_back(stars, radius)
    if not room.free.buffer(1e-6).covers(shapely.LineString(path)):
        return None
    return Drawn((as_path(path),), on_step(radius, room.rules), closed=True)


def _keep(room: Room) -> float:
    """What is kept free along the strip: more beside the finished edge."""
    edge = room.edge.boundary.distance(room.shape) < room.rules.seam / 2
    return room.rules.edge if edge else room.rules.seam


def placed(middle: Spots, radius: float, apart: float) -> Spots:
    """The middles of the stars: one at every corner of the line, the rest evenly between."""
    legs = list(itertools.pairwise(middle))
    ends = 0.0 if runs_round(middle) else radius + apart / 2
    found: list[Spots] = []
    for number, (start, end) in enumerate(legs):
        long = math.dist(start, end)
        low = ends if number == 0 else 0.0
        high = long - (ends if number == len(legs) - 1 else 0.0)
        count = max(1, round((high - low) / (2 * radius + apart)))
        if high - low < 2 * radius or long <= 0:
            return np.zeros((0, 2))
        at = low + (high - low) * np.arange(0 if number == 0 else 1, count + 1) / count
        found.append(start + (end - start) * at[:, None] / long)
    stars = np.vstack(found)
    return stars[:-1] if runs_round(middle) else stars


def out_and_back(stars: Spots, radius: float) -> Spots:
    """One half of each star up to the last, which is sewn all round, then the other halves."""
    out: list[Spots] = []
    back: list[Spots] = []
    for number, middle in enumerate(stars):
        before = _angle(stars[number - 1] - middle if number else middle - stars[1])
        if number == len(stars) - 1:
            out.append(_points(middle, radius, before, before))
            break
        after = _angle(stars[number + 1] - middle)
        half = _points(middle, radius, before, after)
        tips = half[-1], _tip(stars[number + 1], half[-1], radius)
        out += [half, _bent(*tips, radius)]
        back += [_points(middle, radius, after, before), _bent(*tips[::-1], radius)]
    return np.vstack([*out, *back[::-1]])


def _angle(way: Spots) -> float:
    return math.atan2(way[1], way[0])


def _points(middle: Spots, radius: float, start: float, end: float) -> Spots:
    """The outline of a star from the point toward one direction to that toward another, all
    round where they are the same."""
    turn = (end - start) % math.tau
    turn = math.tau if min(turn, math.tau - turn) < 1e-6 else turn
    count = 2 * max(1, round(turn / (math.tau / POINTS)))
    angles: NDArray[np.float64] = start + turn * np.arange(count + 1) / count
    far = np.where(np.arange(count + 1) % 2, HOLLOW, 1.0) * radius
    return middle + np.column_stack([np.cos(angles), np.sin(angles)]) * far[:, None]


def _tip(middle: Spots, near: Spots, radius: float) -> Spots:
    """The point of a star toward another spot."""
    way = near - middle
    return np.asarray(middle + way * radius / np.hypot(*way))


def _bent(start: Spots, end: Spots, radius: float) -> Spots:
    """The bent line from the point of one star to that of the next, always to the same side of
    the way."""
    way = end - start
    side = np.array([way[1], -way[0]]) / max(float(np.hypot(*way)), 1e-9)
    share = np.linspace(0, 1, 9)[:, None]
    return start + way * share + side * BEND * radius * np.sin(math.pi * share)


def element() -> tuple[Path, ...]:
    """Two stars."""
    return (as_path(out_and_back(np.array([[1.0, 1.0], [4.0, 1.0]]), 1.0)),)


DESIGN: Final = Design(
    name="starbursts",
    foot="free motion",
    plain=False,
    kinds=("channel", "border", "band"),
    suits=is_strip,
    draw=draw,
    sewn={
        "free motion": "Sew the points of one half of each star all along the strip, go round the "
        "last star, and sew the other halves on the way back.",
        "walking foot": "Mark the stars, and sew them as large as the strip allows; turn at every "
        "point with the needle down.",
    },
    corner="Put a star on the corner: the line turns in it.",
    element=element,
)
