"""Steps that lie wholly on earlier lines, as where two ways to a seam share a stretch."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

import numpy as np
import shapely
from shapely import LineString, STRtree

from patternbook.quilting.records import Leg, Stage, Walk

NEAR: Final = 1e-3
Place = tuple[int, int, int]  # of a leg: its stage, its walk, and which leg of that


def steps_told(stages: Sequence[Stage]) -> tuple[Stage, ...]:
    """The stages, with the steps that lie wholly on what was stitched before told so."""
    places, legs = _legs(stages)
    steps = np.array([n for n, leg in enumerate(legs) if leg.kind == "step"], dtype=np.intp)
    if not len(steps):
        return tuple(stages)
    lines = np.array([LineString(leg.path) for leg in legs], dtype=object)
    around = shapely.buffer(lines[steps], NEAR)
    at, on = STRtree(lines).query(around, predicate="intersects")
    before = on < steps[at]
    at, on = at[before], on[before]
    shared = shapely.intersection(lines[on], around[at])
    # A line that only crosses shares no more than the buffer is wide.
    along = shapely.length(shared) > 4 * NEAR
    again = set()
    for number in np.unique(at[along]).tolist():
        sewn = shapely.union_all(shared[along & (at == number)]).buffer(NEAR)
        if lines[steps[number]].difference(sewn).length <= 2 * NEAR:
            again.add(places[steps[number]])
    return tuple(_told(n, stage, again) for n, stage in enumerate(stages))


def _legs(stages: Sequence[Stage]) -> tuple[list[Place], list[Leg]]:
    found = [
        ((n, w, number), leg)
        for n, stage in enumerate(stages)
        for w, walk in enumerate(stage.walks)
        for number, leg in enumerate(walk.legs)
    ]
    return [place for place, _ in found], [leg for _, leg in found]


def _told(n: int, stage: Stage, again: set[Place]) -> Stage:
    walks = (
        Walk(
            tuple(
                leg._replace(again=True) if (n, w, number) in again else leg
                for number, leg in enumerate(walk.legs)
            )
        )
        for w, walk in enumerate(stage.walks)
    )
    return replace(stage, walks=tuple(walks))
