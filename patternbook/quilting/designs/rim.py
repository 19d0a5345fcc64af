"""The rim of a room as something to travel on, and lines joined along it into one path."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from patternbook.quilting.designs.frame import DECIMALS, Spots

FAR: Final = 1e12  # no way
AGAIN: Final = 2.0  # a line that is sewn again counts so many times its length
MANY: Final = 400  # with more lines than this only some are tried as the first


class Ring:
    """A closed line to travel on."""

    def __init__(self, spots: Spots) -> None:
        self.spots = spots
        steps = np.diff(spots, axis=0)
        self.run = np.concatenate([[0.0], np.cumsum(np.hypot(steps[:, 0], steps[:, 1]))])
        self.length = float(self.run[-1])
        self.line = shapely.LineString(spots)

    def spot(self, at: float) -> Spots:
        return np.array(
            [np.interp(at, self.run, self.spots[:, 0]), np.interp(at, self.run, self.spots[:, 1])]
        )

    def forward(self, start: float, end: float) -> Spots:
        """From one place to another, the way the ring runs, over its beginning if need be."""
        if end < start:
            return np.vstack([self._cut(start, self.length), self._cut(0.0, end)])
        return self._cut(start, end)

    def _cut(self, start: float, end: float) -> Spots:
        inner = (self.run > start) & (self.run < end)
        return np.vstack([self.spot(start), self.spots[inner], self.spot(end)])

    def hop(self, start: float, end: float) -> Spots:
        """The shorter way between two places."""
        if (end - start) % self.length <= self.length / 2:
            return self.forward(start, end)
        return self.forward(end, start)[::-1]


class Rim:
    """All rings of a shape: its outside and its holes."""

    def __init__(self, shape: Polygon) -> None:
        lines = [shape.exterior, *shape.interiors]
        self.rings = [Ring(shapely.get_coordinates(line)) for line in lines]

    def places(self, spots: Spots) -> tuple[NDArray[np.int64], NDArray[np.float64]]:
        """For each spot the ring that it lies nearest to, and where on it."""
        points = shapely.points(spots)
        away = np.array([shapely.distance(ring.line, points) for ring in self.rings])
        nearest = np.argmin(np.round(away, DECIMALS), axis=0)
        at = np.array([shapely.line_locate_point(ring.line, points) for ring in self.rings])
        return nearest, at[nearest, np.arange(len(spots))]


class Ends(NamedTuple):
    """Where lines begin and end: rows 2n and 2n + 1 are those of line n."""

    ring: NDArray[np.int64]
    at: NDArray[np.float64]


def serpentine(
    rim: Rim, lines: Sequence[Spots], starts: Sequence[int] | None = None
) -> list[Spots]:
    """Lines from rim to rim sewn one after the other, travelling on the rim from the end of one to
    the nearest next: one path, or one for each part that cannot be reached from the others.

    `starts` are the ends that may come first (2n and 2n + 1 of line n), else all are tried.
    """
    if not lines:
        return []
    web = Web(rim, lines)
    first = list(starts) if starts is not None else _tried(len(lines))
    return [np.vstack(parts) for parts in web.walks(web.ordered(first))]


def _tried(count: int) -> list[int]:
    if count <= MANY:
        return list(range(2 * count))
    return [0, 1, 2 * count - 2, 2 * count - 1]


class Web:
    """Lines and the rim that joins their ends."""

    def __init__(self, rim: Rim, lines: Sequence[Spots]) -> None:
        self.rim = rim
        self.lines = lines
        tips = np.array([line[end] for line in lines for end in (0, -1)])
        self.ends = Ends(*rim.places(tips))
        self.away = self._along_rim()
        self.via: NDArray[np.int64] | None = None
        if len(np.unique(self.ends.ring)) > 1:
            self._through_lines()

    def _along_rim(self) -> Spots:
        ring, at = self.ends
        length = np.array([one.length for one in self.rim.rings])[ring]
        apart = np.abs(at[:, None] - at[None, :])
        apart = np.minimum(apart, length[:, None] - apart)
        same = ring[:, None] == ring[None, :]
        return np.asarray(np.round(np.where(same, apart, FAR), DECIMALS), dtype=np.float64)

    def _through_lines(self) -> None:
        """From ring to ring the way leads over lines: the shortest ways through all ends."""
        count = len(self.away)
        self.via = np.full((count, count), -1)
        for number, line in enumerate(self.lines):
            steps = np.diff(line, axis=0)
            far = round(AGAIN * float(np.hypot(steps[:, 0], steps[:, 1]).sum()), DECIMALS)
            one, other = 2 * number, 2 * number + 1
            if far < self.away[one, other]:
                self.away[one, other] = self.away[other, one] = far
                self.via[one, other] = self.via[other, one] = -2
        for middle in range(count):
            way = self.away[:, middle, None] + self.away[None, middle, :]
            shorter = way < self.away - 1e-9
            self.away = np.where(shorter, way, self.away)
            self.via = np.where(shorter, middle, self.via)

    def ordered(self, starts: Sequence[int]) -> list[int]:
        """The ends at which the lines begin, in the order of sewing: always the nearest next,
        from each start at once; that with the least way between is taken."""
        many, count = len(starts), len(self.lines)
        rows = np.arange(many)
        now = np.array(starts)
        used = np.zeros((many, 2 * count), dtype=bool)
        order = np.zeros((many, count), dtype=np.int64)
        total = np.zeros(many)
        for step in range(count):
            order[:, step] = now
            used[rows, now] = used[rows, now ^ 1] = True
            if step + 1 < count:
                ways = np.where(used, 2 * FAR, self.away[now ^ 1])
                now = np.argmin(ways, axis=1)
                total += ways[rows, now]
        return [int(end) for end in order[int(np.argmin(np.round(total, DECIMALS)))]]

    def walks(self, order: Sequence[int]) -> Iterator[list[Spots]]:
        parts: list[Spots] = []
        for number, end in enumerate(order):
            if number:
                left = order[number - 1] ^ 1
                if self.away[left, end] >= FAR:
                    yield parts
                    parts = []
                else:
                    parts += self.way(left, end)
            line = self.lines[end // 2]
            parts.append(line if end % 2 == 0 else line[::-1])
        yield parts

    def way(self, start: int, end: int) -> list[Spots]:
        """How to come from one end to another."""
        middle = -1 if self.via is None else int(self.via[start, end])
        if middle >= 0:
            return self.way(start, middle) + self.way(middle, end)
        if middle == -2:
            line = self.lines[start // 2]
            return [line if start % 2 == 0 else line[::-1]]
        ring = self.rim.rings[int(self.ends.ring[start])]
        return [ring.hop(float(self.ends.at[start]), float(self.ends.at[end]))]
