"""The paths of the fills, and the places where each can be entered."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon, STRtree

from patternbook.quilting.records import Filled, Foot, Path, Spot

SAME: Final = 1e-6
TRIED: Final = 60  # places tried along a closed path
SPARE: Final = 0.75  # inches that a place may lie farther from the seams than the nearest does


class Place(NamedTuple):
    """A spot on a path, behind its corner of number `after`."""

    spot: Spot
    after: int


@dataclass(frozen=True)
class Piece:
    """One path of a fill. `one_way`: it has to be sewn in the direction given."""

    key: str
    shape: Polygon
    foot: Foot
    path: Path
    closed: bool
    one_way: bool
    touches: bool
    border: bool = False
    figure: bool = False
    guests: tuple[Guest, ...] = ()
    # Guests that are still told by their numbers: from where, to where, which.
    visits: tuple[tuple[Spot, Spot, int], ...] = ()

    @property
    def stage(self) -> tuple[bool, Foot]:
        """What is sewn together."""
        return self.border, self.foot

    def sewn(self, place: Place, forward: bool) -> Path:
        """The path from a place where it is entered."""
        if not self.closed:
            return self.path if forward else self.path[::-1]
        head, tail = self.path[: place.after + 1], self.path[place.after + 1 :]
        turned = (place.spot, *tail, *head[1:], place.spot)
        return tuple(spot for n, spot in enumerate(turned) if not n or spot != turned[n - 1])


class Guest(NamedTuple):
    """A path that is sewn on the way round another: from which corner of that one, and where it
    is entered and left."""

    at: Spot
    piece: Piece
    place: Place


def pieces(fills: Sequence[Filled]) -> tuple[Piece, ...]:
    """The paths of all fills. Where a body is quilted from its middle outward, in several paths,
    each of them has to be sewn that way."""
    found = []
    for fill in fills:
        outward = fill.area.kind == "body" and len(fill.drawn.paths) > 1
        for path in fill.drawn.paths:
            if len(path) < 2:
                continue
            closed = math.dist(path[0], path[-1]) <= SAME and len(path) > 3
            whole = (*path[:-1], path[0]) if closed else path
            area, touches = fill.area, fill.drawn.touches
            kinds = area.kind == "border", area.kind == "figure"
            found.append(
                Piece(area.key, area.shape, fill.foot, whole, closed, outward, touches, *kinds)
            )
    return tuple(found)


def places(piece: Piece, travelled: STRtree, many: int, inch: float) -> tuple[Place, ...]:
    """Where a path can be entered: at both ends, or, where it is closed, at some places as near
    to the seams as any and well apart from one another."""
    if not piece.closed:
        return Place(piece.path[0], 0), Place(piece.path[-1], len(piece.path) - 2)
    tried = _tried(piece.path)
    spots = np.array([place.spot for place in tried])
    points = shapely.points(spots)
    _, far = travelled.query_nearest(points, return_distance=True, all_matches=False)
    near = np.flatnonzero(far <= far.min() + SPARE * inch)
    return tuple(tried[n] for n in near[_spread(spots[near], far[near], many)])


def _tried(path: Path) -> list[Place]:
    """Corners and spots evenly along a path."""
    corners = np.array(path)
    steps = np.hypot(*np.diff(corners, axis=0).T)
    along = np.concatenate([[0.0], np.cumsum(steps)])
    wanted = np.unique(
        np.concatenate(
            [
                along[:-1][:: max(1, len(path) // TRIED)],
                np.linspace(0.0, along[-1], TRIED, endpoint=False),
            ]
        ).round(6)
    )
    after = np.clip(np.searchsorted(along, wanted + SAME, side="right") - 1, 0, len(path) - 2)
    share = (wanted - along[after]) / np.where(steps[after] > 0, steps[after], 1.0)
    spots = corners[after] + np.clip(share, 0.0, 1.0)[:, None] * (
        corners[after + 1] - corners[after]
    )
    # Nobody begins half way along a line that the way back runs on once more.
    doubled = _doubled(path)
    return [
        Place((round(float(x), 6), round(float(y), 6)), int(n))
        for (x, y), n, part in zip(spots, after, share, strict=True)
        if part < SAME or not doubled[n]
    ]


def _doubled(path: Path) -> list[bool]:
    """Which straight parts of a path are sewn there and back."""
    ends = [tuple(sorted((_rounded(a), _rounded(b)))) for a, b in pairwise(path)]
    times = Counter(ends)
    return [times[end] > 1 for end in ends]


def _rounded(spot: Spot) -> Spot:
    return round(spot[0], 5), round(spot[1], 5)


def _spread(spots: NDArray[np.float64], far: NDArray[np.float64], many: int) -> list[int]:
    """The nearest, and then always the one farthest from those taken."""
    taken = [int(far.round(3).argmin())]
    apart = np.hypot(*(spots - spots[taken[0]]).T)
    while len(taken) < min(many, len(spots)):
        # Of two as far apart, the one nearer to the seams.
        following = int((apart - far).round(3).argmax())
        if apart[following] < SAME:
            break
        taken.append(following)
        apart = np.minimum(apart, np.hypot(*(spots - spots[following]).T))
    return taken
