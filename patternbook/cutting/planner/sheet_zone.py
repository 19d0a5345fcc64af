"""Pre-cut pieces of cloth as the search sees them: each a strip that costs one, whatever is cut
from it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice, product
from typing import Final, NamedTuple

import numpy as np

from patternbook.cutting.planner.every_filling import within
from patternbook.cutting.planner.records import Column, Kind
from patternbook.cutting.planner.sheet_ways import (
    Direction,
    best_filled,
    every_filled,
    most_worth,
    summed,
    worth,
)
from patternbook.cutting.planner.zone import Counts, Floats, Strip, Wholes

ONE: Final = 1  # what a pre-cut piece costs


class SheetCut(NamedTuple):
    """How one piece of cloth is cut: the strips, highest first."""

    way: Direction
    strips: tuple[Strip, ...]


class Sheets:
    """All that can be cut from one pre-cut piece, either way: a `Zone` with one height, which
    stands for a whole piece of cloth. It remembers how all that it gave is cut."""

    def __init__(self, kinds: tuple[Kind, ...], ways: tuple[Direction, ...]) -> None:
        self.kinds = kinds
        self.heights = (ONE,)
        self.cuts: dict[Counts, SheetCut] = {}
        self._ways = ways
        self._asked = tuple(kind.number for kind in kinds)

    def starters(self, caps: Counts) -> list[Strip]:
        """Of each kind the sheet that gives most of it."""
        best: dict[int, Strip] = {}
        for sheet in self._of_one_kind(caps):
            place = next(place for place, number in enumerate(sheet.counts) if number)
            if place not in best or sheet.counts[place] > best[place].counts[place]:
                best[place] = sheet
        return list(best.values())

    def best(self, prices: Sequence[float], caps: Counts, floors: Floats) -> list[Strip]:
        """The best sheet of each direction. One that is worth its price only with more pieces
        than are asked for is given all the same as long as everything is to be cut: without it
        no prices could be certified, for `worth` counts it too."""
        found = []
        for way in self._ways:
            strips = best_filled(way, prices, caps)
            full = summed(strips, len(caps))
            if worth(within(full, caps), prices) > floors[0]:
                found.append(self._kept(SheetCut(way, strips), caps))
            elif caps == self._asked and worth(full, prices) > floors[0]:
                found.append(self._kept(SheetCut(way, strips), full))
        return found

    def worth(self, prices: Sequence[int]) -> Wholes:
        """The most a sheet is worth: each strip with no more than is asked for, all together
        perhaps with more."""
        most = max(most_worth(way, prices) for way in self._ways)
        return np.array([most], dtype=np.int64)

    def every(
        self,
        height: int,  # noqa: ARG002
        prices: Sequence[int],
        floor: int,
        limit: int,
    ) -> tuple[list[Strip], bool]:
        """All sheets that are worth the floor, whatever their one height."""
        found: dict[Strip, None] = {}
        for way in self._ways:
            fillings, whole = every_filled(way, prices, floor, limit)
            for strips in fillings:
                found[self._kept(SheetCut(way, strips), self._asked)] = None
            if not whole or len(found) > limit:
                return list(found)[:limit], False
        return list(found), True

    def easy(self, limit: int) -> list[Strip]:
        """Sheets of one or two kinds of strips, of those known so far; so many are tried."""
        return list(dict.fromkeys(islice(self._easy(), limit)))

    def lower(self, strip: Strip) -> bool:  # noqa: ARG002
        """There is but one height."""
        return False

    def layout(self, strip: Strip) -> tuple[Column, ...]:
        """The columns of all strips of a sheet; `cuts` tell them apart."""
        cut = self.cuts[strip.counts]
        return tuple(column for one in cut.strips for column in cut.way.zone.layout(one))

    def _of_one_kind(self, caps: Counts) -> Iterator[Strip]:
        for way in self._ways:
            for strip in way.zone.starters(caps):
                if strip.height <= way.deep:
                    yield self._kept(SheetCut(way, (strip,) * _times(way, strip, caps)), caps)

    def _easy(self) -> Iterator[Strip]:
        for way in self._ways:
            known = (cut.strips for cut in list(self.cuts.values()) if cut.way == way)
            strips = list(dict.fromkeys(strip for cut in known for strip in cut))
            for first, second in product(strips, strips):
                for times in range(1, way.deep // first.height + 1):
                    more = (way.deep - times * first.height) // second.height
                    laid = (first,) * times + (second,) * more
                    yield self._kept(SheetCut(way, laid), self._asked)

    def _kept(self, cut: SheetCut, caps: Counts) -> Strip:
        """The sheet without what is over the caps; of two ways to cut it the easier is kept."""
        counts = within(summed(cut.strips, len(caps)), caps)
        known = self.cuts.get(counts)
        if known is None or _effort(cut) < _effort(known):
            highest_first = sorted(cut.strips, key=lambda one: (-one.height, one.counts))
            self.cuts[counts] = SheetCut(cut.way, tuple(highest_first))
        return Strip(ONE, counts)


def _effort(cut: SheetCut) -> tuple[int, int, bool]:
    """Few strips, then few that differ, then the usual direction."""
    return len(cut.strips), len(set(cut.strips)), cut.way.turned


def _times(way: Direction, strip: Strip, caps: Counts) -> int:
    """As often as it fits and is asked for."""
    wanted = max(-(-cap // each) for cap, each in zip(caps, strip.counts, strict=True) if each)
    return min(wanted, way.deep // strip.height)
