"""Cloth cut by the thrifty manner: a sub-cut may hold pieces of different kinds one above the
other, in strips of any height that is a sum of their sides."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce
from math import gcd

import numpy as np

from patternbook.cutting.planner.every_filling import within
from patternbook.cutting.planner.every_stacked import EveryStacked
from patternbook.cutting.planner.plain_zone import PlainZone
from patternbook.cutting.planner.records import Column, Kind
from patternbook.cutting.planner.sheet_ways import worth
from patternbook.cutting.planner.stack_cuts import SubCuts, columns, counted, thinned
from patternbook.cutting.planner.stack_strips import Cloth, PricedStrips
from patternbook.cutting.planner.stack_table import Lay
from patternbook.cutting.planner.table import common, lays
from patternbook.cutting.planner.zone import Counts, Floats, Strip, Wholes

# So many of the strips that are worth more than they cost are told in one go.
BEST = 40


class StackZone:
    """A `Zone`. Whatever shared cutting can cut from the same cloth it can too."""

    def __init__(
        self,
        kinds: tuple[Kind, ...],
        width: int,
        highest: int | None = None,
        cap: int | None = None,
    ) -> None:
        self.kinds = kinds
        self.shared = PlainZone(kinds, width, "shared", cap=cap)
        self.heights = _heights(kinds, width, highest, cap, self.shared.heights)
        self._cloth = _cloth(kinds, width, self.heights)
        self._asked = tuple(kind.number for kind in kinds)
        self._cuts: dict[Strip, SubCuts] = {}
        self._every: tuple[tuple[int, ...], EveryStacked] | None = None

    def starters(self, caps: Counts) -> list[Strip]:
        return self.shared.starters(caps)

    def best(self, prices: Sequence[float], caps: Counts, floors: Floats) -> list[Strip]:
        """The strips worth most for their height. One may hold more pieces than are asked for as
        long as everything is to be cut: without it no prices could be certified, for `worth`
        counts it too."""
        priced = PricedStrips(self._cloth, prices, caps, float)
        values = priced.values
        order = np.argsort(-values / np.array(self.heights), kind="stable").tolist()
        over = [row for row in order if values[row] > floors[row]][:BEST]
        strips = (
            self._best_of(priced, self.heights[row], prices, caps, float(floors[row]))
            for row in over
        )
        return [strip for strip in strips if strip is not None]

    def worth(self, prices: Sequence[int]) -> Wholes:
        """The most a strip is worth: each sub-cut with no more than is asked for, all together
        perhaps with more."""
        return PricedStrips(self._cloth, prices, self._asked, int).values

    def every(
        self, height: int, prices: Sequence[int], floor: int, limit: int
    ) -> tuple[list[Strip], bool]:
        found, whole = self._every_at(tuple(prices)).of(height, floor, limit)
        for strip, cuts in found.items():
            self._cuts.setdefault(strip, cuts)
        return list(found), whole

    def easy(self, limit: int) -> list[Strip]:
        """Those of shared cutting."""
        return self.shared.easy(limit)

    def lower(self, strip: Strip) -> bool:
        return self.shared.lower(strip)

    def layout(self, strip: Strip) -> tuple[Column, ...]:
        if self._is_shared(strip):
            return self.shared.layout(strip)
        return columns(thinned(self._holding(strip), strip.counts), self.kinds)

    def _every_at(self, prices: tuple[int, ...]) -> EveryStacked:
        """Kept from one height to the next."""
        if self._every is None or self._every[0] != prices:
            self._every = prices, EveryStacked(self._cloth, self._asked, prices)
        return self._every[1]

    def _best_of(
        self,
        priced: PricedStrips,
        height: int,
        prices: Sequence[float],
        caps: Counts,
        floor: float,
    ) -> Strip | None:
        """The best strip of that height without what is over the caps; or with it, if it is not
        worth more than the floor otherwise."""
        cuts = priced.cut(height)
        full = counted(cuts, len(self.kinds))
        capped = within(full, caps)
        enough = worth(capped, prices) > floor
        if not enough and caps != self._asked:
            return None
        strip = Strip(height, capped if enough else full)
        self._cuts.setdefault(strip, cuts)
        return strip

    def _is_shared(self, strip: Strip) -> bool:
        known = strip.height in self.shared.heights
        return known and self.shared.fits(strip.height, strip.counts)

    def _holding(self, strip: Strip) -> SubCuts:
        """The cuts of the strip, or of the first known that holds at least as much."""
        if strip in self._cuts:
            return self._cuts[strip]
        return next(
            cuts
            for known, cuts in self._cuts.items()
            if known.height == strip.height and within(strip.counts, known.counts) == strip.counts
        )


def _cloth(kinds: Sequence[Kind], width: int, heights: tuple[int, ...]) -> Cloth:
    every = sorted(
        Lay(along, across, place, kind.own_width)
        for place, kind in enumerate(kinds)
        for along, across in lays(kind, width)
    )
    cell = common(kinds, width)
    unit = reduce(gcd, (lay.across for lay in every), 0) or 1
    return Cloth(tuple(every), cell, width // cell, heights, unit)


def _heights(
    kinds: Sequence[Kind],
    width: int,
    highest: int | None,
    cap: int | None,
    shared: tuple[int, ...],
) -> tuple[int, ...]:
    """Every sum of pieces' sides up to the highest strip, and every side of a piece."""
    sides = [[across for _, across in lays(kind, width)] for kind in kinds]
    lowest = (min(both) for both in sides if both)
    most = max([max(shared, default=0) if highest is None else highest, *lowest])
    most = most if cap is None else min(most, cap)
    stacked = {
        side for kind, both in zip(kinds, sides, strict=True) for side in both if not kind.own_width
    }
    every, sums = (1 << (most + 1)) - 1, 1
    for side in stacked:
        times = side
        while times <= most:
            sums |= (sums << times) & every
            times *= 2
    return tuple(sorted({at for at in range(1, most + 1) if sums >> at & 1}.union(shared)))
