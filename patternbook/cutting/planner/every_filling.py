"""All the ways to fill a strip with sub-cuts, or a pre-cut with strips, that are worth enough."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from patternbook.cutting.planner.zone import Counts, Strip


class EveryFilling:
    """The fillings of a depth with what is `offered` (how much of it each takes, and its pieces),
    as often as need be, that are worth the floor and to which nothing of use could be added.
    `room` is what a depth is worth at most. More than so many `steps` are not taken: `whole`
    tells, at the end, whether all fillings were found."""

    def __init__(
        self,
        offered: Sequence[Strip],
        asked: Counts,
        prices: Sequence[int],
        floor: int,
        room: Callable[[int], int],
        steps: int,
    ) -> None:
        self._offered = sorted(offered, key=lambda one: (-one.height, one.counts))
        self._asked = asked
        self._prices = prices
        self._floor = floor
        self._room = room
        self._steps = steps
        self.whole = True

    def of(self, depth: int) -> Iterator[tuple[Strip, ...]]:
        """The fillings of that depth."""
        return self._after((), depth, (0,) * len(self._asked), 0)

    def _after(
        self, laid: tuple[Strip, ...], left: int, counts: Counts, first: int
    ) -> Iterator[tuple[Strip, ...]]:
        """The fillings that begin with these."""
        self._steps -= 1
        if self._steps < 0:
            self.whole = False
            return
        if not any(one.height <= left and self._adds(counts, one) for one in self._offered):
            yield laid
            return
        for place in range(first, len(self._offered)):
            one = self._offered[place]
            if one.height > left or not self._adds(counts, one):
                continue
            more = within(added(counts, one.counts), self._asked)
            if whole_worth(more, self._prices) + self._room(left - one.height) >= self._floor:
                yield from self._after((*laid, one), left - one.height, more, place)

    def _adds(self, counts: Counts, one: Strip) -> bool:
        """Whether it gives anything that is still asked for."""
        three = zip(counts, one.counts, self._asked, strict=True)
        return any(more and have < asked for have, more, asked in three)


def added(counts: Counts, more: Counts) -> Counts:
    """The pieces of both."""
    return tuple(map(int.__add__, counts, more))


def within(counts: Counts, caps: Counts) -> Counts:
    """So many, but no more of a kind than its cap."""
    return tuple(map(min, counts, caps))


def whole_worth(counts: Counts, prices: Sequence[int]) -> int:
    """What pieces cost at these prices, in whole numbers."""
    return sum(map(int.__mul__, counts, prices))
