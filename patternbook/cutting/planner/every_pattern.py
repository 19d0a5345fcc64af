"""All the strips of one height that could still be in a better plan."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from patternbook.cutting.planner.table import Filling
from patternbook.cutting.planner.zone import Counts, Wholes


class TooMany(Exception):
    """More strips than the limit, or more steps of the search than it is worth."""


class _Choice:
    """One kind and the counts it may have, with what the kinds after it can be worth at most."""

    def __init__(self, place: int, filling: Filling, price: int) -> None:
        self.place = place
        self.price = price
        self.steps = ((0, 0), *filling.steps)
        # What one more piece than a count of `steps` takes beyond it.
        self.more = {
            count: later - length
            for (length, count), (later, _) in zip(self.steps, self.steps[1:], strict=False)
        }
        self.after: Wholes = np.zeros(0, np.int64)


def _choices(fillings: Mapping[int, Filling], prices: Sequence[int], cells: int) -> list[_Choice]:
    """The kinds, those with the longest sub-cuts first."""
    found = [_Choice(place, filling, prices[place]) for place, filling in fillings.items()]
    found.sort(key=lambda choice: (-choice.steps[1][0], choice.place))
    after = np.zeros(cells + 1, np.int64)
    for choice in reversed(found):
        choice.after = after
        after = after.copy()
        for length, count in choice.steps[1:]:
            part = after[length:]
            np.maximum(part, choice.after[: len(after) - length] + choice.price * count, out=part)
    return found


class _Walk:
    def __init__(self, choices: list[_Choice], kinds: int, floor: int, limit: int) -> None:
        self.choices = choices
        self.floor = floor
        self.limit = limit
        self.steps_left = 200 * limit + 20_000
        self.counts = [0] * kinds
        self.found: list[Counts] = []

    def down(self, depth: int, left: int, worth: int) -> None:
        """Tries every count of the kind at that depth and, below it, of those after it."""
        self.steps_left -= 1
        if self.steps_left < 0 or len(self.found) > self.limit:
            raise TooMany
        if depth == len(self.choices):
            if all(self._full(choice, left) for choice in self.choices):
                self.found.append(tuple(self.counts))
            return
        choice = self.choices[depth]
        for length, count in choice.steps:
            if length > left:
                break
            now = worth + choice.price * count
            if now + choice.after[left - length] >= self.floor:
                self.counts[choice.place] = count
                self.down(depth + 1, left - length, now)
        self.counts[choice.place] = 0

    def _full(self, choice: _Choice, left: int) -> bool:
        more = choice.more.get(self.counts[choice.place])
        return more is None or more > left


def every_pattern(
    fillings: Mapping[int, Filling], prices: Sequence[int], floor: int, cells: int, limit: int
) -> tuple[list[Counts], bool]:
    """All counts that are worth at least the floor and leave no room for another piece, and
    whether these are all."""
    walk = _Walk(_choices(fillings, prices, cells), len(prices), floor, limit)
    try:
        walk.down(0, cells, 0)
    except TooMany:
        return walk.found[:limit], False
    return walk.found, True
