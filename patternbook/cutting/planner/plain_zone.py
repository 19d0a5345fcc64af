"""Cloth cut into strips by the even, the trimmed or the shared manner: one kind to a sub-cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice

from patternbook.cutting.planner.every_pattern import every_pattern
from patternbook.cutting.planner.pricing import Sweep, runs_of, sweep, traced
from patternbook.cutting.planner.records import Column, Kind, Manner
from patternbook.cutting.planner.table import Filling, common, fillings, strip_heights
from patternbook.cutting.planner.zone import Counts, Floats, Strip, Wholes


class PlainZone:
    """A `Zone` whose strips are told by how much of their length each kind takes. `cap`: its
    strips lie beside a block, and none is higher than that is long."""

    def __init__(
        self,
        kinds: tuple[Kind, ...],
        width: int,
        manner: Manner,
        highest: int | None = None,
        cap: int | None = None,
    ) -> None:
        self.kinds = kinds
        # Lengths are reckoned in the largest measure that divides all of them.
        self._cells = width // common(kinds, width)
        heights = strip_heights(kinds, width, highest, cap)
        rows = {height: fillings(kinds, width, height, manner) for height in heights}
        self._rows = {height: row for height, row in rows.items() if row}
        self.heights = tuple(self._rows)
        self._runs = runs_of(list(self._rows.values()))
        self._shape = (len(self.heights), self._cells + 1)

    def starters(self, caps: Counts) -> list[Strip]:
        return [
            self._strip(height, {place: min(caps[place], filling.most)})
            for height, row in self._rows.items()
            for place, filling in row.items()
            if caps[place]
        ]

    def best(self, prices: Sequence[float], caps: Counts, floors: Floats) -> list[Strip]:
        swept = self._sweep(prices, caps)
        worth = swept.values[:, -1]
        return [
            self._strip(self.heights[row], traced(swept, self._runs, prices, caps, row))
            for row in (worth > floors).nonzero()[0].tolist()
        ]

    def worth(self, prices: Sequence[int]) -> Wholes:
        caps = tuple(kind.number for kind in self.kinds)
        return self._sweep(prices, caps, whole=True).values[:, -1]

    def every(
        self, height: int, prices: Sequence[int], floor: int, limit: int
    ) -> tuple[list[Strip], bool]:
        found, all_of_them = every_pattern(self._rows[height], prices, floor, self._cells, limit)
        strips = [Strip(height, counts) for counts in found]
        return [strip for strip in strips if not self.lower(strip)], all_of_them

    def easy(self, limit: int) -> list[Strip]:
        strips = (strip for height in self.heights for strip in self._easy_of(height))
        return list(islice(dict.fromkeys(strips), limit))

    def lower(self, strip: Strip) -> bool:
        below = (height for height in reversed(self.heights) if height < strip.height)
        return any(self.fits(height, strip.counts) for height in below)

    def layout(self, strip: Strip) -> tuple[Column, ...]:
        row = self._rows[strip.height]
        counted = ((place, count) for place, count in enumerate(strip.counts) if count)
        return tuple(
            column
            for place, count in counted
            for column in _columns(self.kinds[place].name, row[place], count)
        )

    def _sweep(self, prices: Sequence[float], caps: Counts, whole: bool = False) -> Sweep:
        return sweep(self._runs, prices, caps, self._shape, whole)

    def _strip(self, height: int, counts: dict[int, int]) -> Strip:
        return Strip(height, tuple(counts.get(place, 0) for place in range(len(self.kinds))))

    def fits(self, height: int, counts: Counts) -> bool:
        """Whether a strip of that height can yield these."""
        row = self._rows[height]
        left = self._cells
        for place, count in enumerate(counts):
            if count:
                filling = row.get(place)
                if filling is None or count > filling.most:
                    return False
                left -= filling.least[count]
        return left >= 0

    def _easy_of(self, height: int) -> Iterator[Strip]:
        row = self._rows[height]
        for place, filling in row.items():
            for length, count in filling.steps:
                yield self._strip(height, {place: count})
                for other, others in row.items():
                    rest = others.fit(self._cells - length) if other != place else 0
                    if rest:
                        yield self._strip(height, {place: count, other: rest})


def _columns(name: str, filling: Filling, count: int) -> Iterator[Column]:
    """The sub-cuts of so many pieces; the last may hold fewer than the others."""
    for way, columns in zip(filling.ways, filling.sub_cuts[count], strict=True):
        if columns and count:
            pieces = min(count, columns * way.stack)
            stack = -(-pieces // columns) if columns == 1 else way.stack
            yield Column(name, way.along, way.across, stack, columns, pieces)
            count -= pieces
