"""Designs that leave no place of the top open for longer than the batting allows, areas taken
together: where two of them meet, what each leaves free adds up."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import shapely
from shapely import Point

from patternbook.quilting.choice import Choice
from patternbook.quilting.gap import widest
from patternbook.quilting.records import AnchorLine, Area, Filled, Gap, Top

ROUNDS: Final = 24  # how often areas are drawn closer, at most
WITHIN: Final = 1e-3


def held(top: Top, choice: Choice, limit: float, lines: Sequence[AnchorLine]) -> tuple[Filled, ...]:
    """As chosen, but drawn closer in the areas around whatever place is too wide; as it is where
    that does not help, for the author's own figures stand."""
    closer: dict[str, int] = {}
    fills = choice.fills()
    for _ in range(ROUNDS):
        gap = _gap(top, lines, fills)
        if gap.high <= limit:
            break
        for area in _around(gap, choice.areas):
            closer[area.key] = closer.get(area.key, 0) + 1
        tighter = choice.fills(closer)
        if tighter == fills:
            break
        fills = tighter
    return fills


def _gap(top: Top, lines: Sequence[AnchorLine], fills: Sequence[Filled]) -> Gap:
    """Of what is stitched for certain: the lines of the first stage and the fills."""
    paths = [line.path for line in lines]
    paths += [path for fill in fills for path in fill.drawn.paths]
    return widest(paths, top.edge, rim=True, within=WITHIN)


def _around(gap: Gap, areas: Sequence[Area]) -> list[Area]:
    """The areas that the widest circle reaches into."""
    circle = Point(gap.at).buffer(gap.low / 2)
    return [area for area in areas if shapely.intersects(area.shape, circle)]
