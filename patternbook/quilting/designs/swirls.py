"""Echoed swirls in rows: into each by a spiral, and out again along that line. No open spot is
wider than 2.8 times the spacing."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon, affinity

from patternbook.quilting.designs.cells import square_cornered, ticks
from patternbook.quilting.designs.curves import rounded, thinned
from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.designs.frame import Frame, Spots, as_path, on_step, side_frame
from patternbook.quilting.designs.lines import clipped, straight_lines
from patternbook.quilting.designs.rim import Rim, Web
from patternbook.quilting.records import Drawn, Path

SIZE: Final = 3.6  # spacings: how wide a swirl is, about
CLEAR: Final = 0.28  # of a row's height: so much has to be free above and below its middle
FLATTEST: Final = 0.4  # of its height: a swirl is no flatter where the rim presses on it
REACH: Final = 0.9  # of the half width: where the spiral begins to wind inward
SOFT: Final = 0.4  # how quickly, in radians
WIND: Final = 0.8  # below one, the middle stays more open
SQUARE: Final = 2.6  # two is a round swirl; more fills the corners better
FINE: Final = 0.004  # inches
DOTS: Final = 14  # a radian


class Row(NamedTuple):
    """A row of swirls along turned axes: the middles of them in order of sewing, half their
    widths, half the heights of each, and whether it is sewn toward the right."""

    middles: Spots
    half: float
    heights: NDArray[np.float64]
    right: bool


def draw(room: Room, spacing: float, _seed: int) -> Drawn | None:
    told = on_step(spacing, room.rules)
    if room.free.is_empty:
        return None
    axes = side_frame(room.free)
    free = shapely.transform(room.free, axes.turned)
    size = SIZE * told
    rows = _rows(free, middles(free, size), size)
    if not rows:
        return None
    path = axes.back(joined(free, rows, told))
    return Drawn((as_path(thinned(path, FINE * room.rules.inch)),), told)


def middles(free: Polygon, size: float) -> list[tuple[Spots, float]]:
    """The middle lines of the rows where there is room above and below, and their heights."""
    found: list[tuple[Spots, float]] = []
    at = ticks(shapely.get_coordinates(free)[:, 1], size, own=square_cornered(free))
    for low, high in itertools.pairwise(at.tolist()):
        height = high - low
        core: shapely.Geometry = free
        for by in (-CLEAR * height, CLEAR * height):
            core = shapely.intersection(core, affinity.translate(free, 0, by))
        line = straight_lines(free, Frame(1.0, 0.0), np.array([(low + high) / 2]))
        for part in shapely.get_parts(core):
            if isinstance(part, Polygon):
                found += [(piece, height) for piece in clipped(line, part, size / 2)[0]]
    return found


def _rows(free: Polygon, lines: Sequence[tuple[Spots, float]], size: float) -> list[Row]:
    """The rows in the order of sewing."""
    if not lines:
        return []
    order = Web(Rim(free), [line for line, _ in lines]).ordered(list(range(2 * len(lines))))
    return [_row(free, *lines[end // 2], size, right=end % 2 == 0) for end in order]


def _row(free: Polygon, line: Spots, height: float, size: float, *, right: bool) -> Row:
    count = max(1, round(float(line[-1, 0] - line[0, 0]) / size))
    half = float(line[-1, 0] - line[0, 0]) / count / 2
    across = line[0, 0] + half * (2 * np.arange(count) + 1)
    spots = np.column_stack([across, np.full(count, line[0, 1])])
    heights = _heights(free, spots, half, height / 2)
    way = 1 if right else -1
    return Row(spots[::way], half, heights[::way], right)


def _heights(free: Polygon, spots: Spots, half: float, height: float) -> NDArray[np.float64]:
    """Half the height of each swirl: less where the rim is in the way."""
    angles = np.linspace(0, math.tau, 32, endpoint=False)
    rim = np.column_stack([np.cos(angles), np.sin(angles)]) * _square(angles)[:, None]
    wide = free.buffer(1e-6)
    found = np.full(len(spots), height)
    for _ in range(12):
        sizes = np.column_stack([np.full(len(spots), half), found])
        shapes = spots[:, None, :] + rim[None, :, :] * sizes[:, None, :]
        out = ~shapely.covers(wide, shapely.linearrings(shapes)) & (found > FLATTEST * height)
        if not out.any():
            break
        found = np.where(out, found * 0.93, found)
    return found


def _square(angles: NDArray[np.float64]) -> NDArray[np.float64]:
    across, down = np.abs(np.cos(angles)), np.abs(np.sin(angles))
    return np.asarray((across**SQUARE + down**SQUARE) ** (-1 / SQUARE))


def joined(free: Polygon, rows: Sequence[Row], spacing: float) -> Spots:
    """Row after row, from the end of one smoothly into the next."""
    parts: list[Spots] = []
    rim = Rim(free)
    for number, row in enumerate(rows):
        down = _toward(rows, number)
        path = np.vstack(list(swirls(row, spacing, down)))
        if parts:
            parts.append(_link(free, rim, parts[-1][-1], path[0]))
        parts.append(path)
    return np.vstack(parts)


def _toward(rows: Sequence[Row], number: int) -> bool:
    """Whether the next row lies further down; the last goes on as the one before."""
    if number + 1 < len(rows):
        return bool(rows[number + 1].middles[0, 1] >= rows[number].middles[0, 1])
    return _toward(rows, number - 1) if number else True


def _link(free: Polygon, rim: Rim, start: Spots, end: Spots) -> Spots:
    """From row to row: straight where that is free, else along the rim."""
    straight = np.vstack([start, end])
    if free.buffer(1e-6).covers(shapely.LineString(straight)):
        return straight
    ring, at = rim.places(straight)
    if ring[0] != ring[1]:
        return straight
    way = np.vstack([start, rim.rings[int(ring[0])].hop(float(at[0]), float(at[1])), end])
    soft = rounded(way, 2, closed=False)
    return soft if free.buffer(1e-6).covers(shapely.LineString(soft)) else way


def swirls(row: Row, spacing: float, down: bool) -> Iterator[Spots]:
    """One swirl after the other; each begins and ends going downward (or upward)."""
    sense = 1.0 if row.right != down else -1.0
    first = math.pi if row.right else 0.0
    for middle, height in zip(row.middles, row.heights, strict=True):
        yield middle + swirl(first, sense, (row.half + height) / 2 / spacing) * (row.half, height)


def swirl(first: float, sense: float, rings: float) -> Spots:
    """A spiral in and one out of a circle of one, from the direction `first` to the opposite."""
    turn = max(1.2 * math.pi, math.pi * rings)
    u = np.linspace(0, turn, max(30, int(turn * DOTS)))
    far = REACH * (1 - u / turn) ** WIND + (1 - REACH) * np.exp(-u / SOFT)
    into = np.column_stack([np.cos(first + sense * u), np.sin(first + sense * u)])
    power = 2 + (SQUARE - 2) * far
    bulge = (np.abs(into[:, 0]) ** power + np.abs(into[:, 1]) ** power) ** (-1 / power)
    way = into * (far * bulge)[:, None]
    return np.vstack([way, -way[::-1][1:]])


def suits(room: Room) -> bool:
    """Rows of swirls leave too much open beside slanted sides."""
    return square_cornered(shapely.transform(room.shape, side_frame(room.shape).turned))


def element() -> tuple[Path, ...]:
    """Two swirls, one after the other."""
    row = Row(np.array([[1.5, 1.5], [4.5, 1.5]]), 1.5, np.array([1.5, 1.5]), right=True)
    return (as_path(thinned(np.vstack(list(swirls(row, 0.8, down=True))), FINE)),)


DESIGN: Final = Design(
    name="echoed swirls",
    foot="free motion",
    plain=False,
    kinds=("ground", "band", "square", "corner", "border"),
    suits=suits,
    draw=draw,
    sewn={
        "free motion": "Wind inward, turn in the middle, and sew out again between the lines you "
        "have just sewn; then into the next swirl.",
    },
    corner="Make the last swirl of the row as small as the corner asks for, and come out of it "
    "toward the next row.",
    element=element,
)
