"""Where to change the bobbin: at the last good place before it runs out."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Final, Literal, NamedTuple

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.records import BobbinChange, Path, Spot, Stage, Top, Walk

Place = Literal["edge", "between", "corner", "inside"]
# How much of a bobbin may be left over to have a better place to change it than the last one
# (a judgement): at the edge the ends vanish in the binding, between two legs in a seam, and at a
# corner they show least.
GIVEN: Final[Mapping[Place, float]] = {"edge": 0.0, "between": 0.05, "corner": 0.1, "inside": 0.15}
TURN: Final = math.pi / 4  # a corner
NEAR: Final = 1e-3
EVERY: Final = 1 / 40  # of a bobbin: how often a place inside is looked at


class Stop(NamedTuple):
    """A place where it could be changed, and how far along the walk it is."""

    along: float
    place: Place
    at: Spot


def bobbin_changes(
    stages: Sequence[Stage], top: Top, per_bobbin: float
) -> tuple[BobbinChange, ...]:
    """The changes over all stages; a bobbin goes on from one walk to the next."""
    found: list[BobbinChange] = []
    used = 0.0
    for number, stage in enumerate(stages):
        for count, walk in enumerate(stage.walks):
            stops, whole = _stops(walk, top.edge, per_bobbin)
            changes, used = _changed(stops, whole, used, per_bobbin)
            found += [
                BobbinChange(number, count, stop.at, stop.place, round(share, 6))
                for stop, share in changes
            ]
    return tuple(found)


def _changed(
    stops: Sequence[Stop], whole: float, used: float, per_bobbin: float
) -> tuple[list[tuple[Stop, float]], float]:
    """The stops where it is changed in one walk, each with the share used, and how much of the
    last bobbin is used at the end."""
    found: list[tuple[Stop, float]] = []
    begun = -used
    while whole - begun > per_bobbin * (1 + 1e-9):
        latest = begun + per_bobbin
        reached = found[-1][0].along if found else -1.0
        offered = [stop for stop in stops if reached < stop.along <= latest + 1e-9]
        best = max(offered, key=lambda stop: (_worth(stop, begun, per_bobbin), stop.along))
        found.append((best, (best.along - begun) / per_bobbin))
        begun = best.along
    return found, whole - begun


def _worth(stop: Stop, begun: float, per_bobbin: float) -> float:
    return round((stop.along - begun) / per_bobbin - GIVEN[stop.place], 9)


def _stops(walk: Walk, edge: Polygon, per_bobbin: float) -> tuple[list[Stop], float]:
    """All places of a walk in order, and its length."""
    found: list[Stop] = []
    along = 0.0
    for leg in walk.legs:
        found.append(Stop(along, "between", leg.path[0]))
        found += _inside(leg.path, along, per_bobbin * EVERY)
        along += _lengths(leg.path)[-1]
    return _at_edge(found, edge), along


def _lengths(path: Path) -> list[float]:
    steps = np.hypot(*np.diff(np.array(path), axis=0).T)
    return [0.0, *np.cumsum(steps).tolist()]


def _inside(path: Path, begun: float, every: float) -> Iterator[Stop]:
    """The corners of a leg, and places spread over it."""
    far = _lengths(path)
    heads = np.diff(np.array(path), axis=0)
    angles = np.arctan2(heads[:, 1], heads[:, 0])
    turns = np.abs((np.diff(angles) + math.pi) % math.tau - math.pi)
    last = 0.0
    for number in range(1, len(path)):
        is_corner = number < len(path) - 1 and turns[number - 1] >= TURN
        while far[number] - last > every:
            last += every
            share = (last - far[number - 1]) / (far[number] - far[number - 1])
            yield Stop(begun + last, "inside", _between(path[number - 1], path[number], share))
        if is_corner:
            yield Stop(begun + far[number], "corner", path[number])


def _between(one: Spot, other: Spot, share: float) -> Spot:
    return (
        round(one[0] + (other[0] - one[0]) * share, 6),
        round(one[1] + (other[1] - one[1]) * share, 6),
    )


def _at_edge(stops: Sequence[Stop], edge: Polygon) -> list[Stop]:
    if not stops:
        return []
    points = shapely.points(np.array([stop.at for stop in stops]))
    rim = edge.boundary
    shapely.prepare(rim)
    near = np.atleast_1d(shapely.dwithin(points, rim, NEAR))
    return [
        stop._replace(place="edge") if is_near else stop
        for stop, is_near in zip(stops, near, strict=True)
    ]
