"""Dealing prints out so that no two alike touch and all are used evenly: by chance, but the same
chance on every machine."""

from __future__ import annotations

from bisect import bisect_left, insort
from collections import Counter, deque
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from heapq import heapify, heappop, heappush
from itertools import count
from typing import Final

MULTIPLIER: Final = 6364136223846793005
STEP: Final = 1442695040888963407
WORD: Final = 1 << 64
# How many moves are tried, for each item and in all, before clashes that are left are told.
REPAIRS: Final = 20
MOST_REPAIRS: Final = 4000


class Dice:
    """Chance from a seed: one multiplication and one addition a throw, and the upper half."""

    def __init__(self, seed: int) -> None:
        self._state = seed % WORD
        self.throw()

    def throw(self) -> int:
        """A whole number below 2³²."""
        self._state = (self._state * MULTIPLIER + STEP) % WORD
        return self._state >> 32


@dataclass
class Pool:
    """What one kind of item is dealt from: so many options, each with room for so much
    (None: no limit). Kept in order of use, the least used first, equals by chance."""

    options: int
    room: Fraction | None
    dice: Dice
    loads: list[Fraction] = field(init=False)
    order: list[tuple[Fraction, int, int]] = field(init=False)

    def __post_init__(self) -> None:
        self.loads = [Fraction(0)] * self.options
        self._keys = [(Fraction(0), self.dice.throw(), option) for option in range(self.options)]
        self.order = sorted(self._keys)

    def fits(self, option: int, weight: Fraction) -> bool:
        """Whether an option has room for so much more."""
        return self.room is None or self.loads[option] + weight <= self.room

    def use(self, option: int, weight: Fraction) -> None:
        """Take from an option, or give back."""
        old = self._keys[option]
        del self.order[bisect_left(self.order, old)]
        self.loads[option] += weight
        self._keys[option] = (self.loads[option], self.dice.throw(), option)
        insort(self.order, self._keys[option])


@dataclass(frozen=True)
class Item:
    """Patches that are dealt their prints together: `shows[option]` is the print of each."""

    pool: Pool
    patches: tuple[int, ...]
    shows: Sequence[tuple[int, ...]]
    weight: Fraction


class Dealing:
    """Items dealt one after the other, the hardest first, then mended where alike ones touch.

    `beside` names for each patch those that touch it and are not to be alike.
    """

    def __init__(self, items: Sequence[Item], beside: Mapping[int, Sequence[int]]) -> None:
        self.items, self.beside = items, beside
        self.prints: dict[int, int] = {}
        self.dealt: dict[int, int] = {}
        self._owner = {patch: number for number, item in enumerate(items) for patch in item.patches}
        self._near = [self._neighbours(number) for number in range(len(items))]

    def deal(self) -> Mapping[int, int]:
        """The print of every patch."""
        self._deal_in_order()
        self._mend()
        return self.prints

    def _neighbours(self, number: int) -> tuple[int, ...]:
        patches = self.items[number].patches
        near = {self._owner[other] for patch in patches for other in self.beside.get(patch, ())}
        return tuple(sorted(near - {number}))

    def _deal_in_order(self) -> None:
        """Most hemmed in first; while every item has more options than neighbours, the largest
        first, which spreads them most evenly."""
        turn = count()
        waiting = [
            (*self._urgency(number), next(turn), number) for number in range(len(self.items))
        ]
        heapify(waiting)
        while waiting:
            number = heappop(waiting)[-1]
            if number in self.dealt:
                continue
            self._give(number, self._best(number))
            for other in self._near[number]:
                if other not in self.dealt and self._tight(other):
                    heappush(waiting, (*self._urgency(other), next(turn), other))

    def _tight(self, number: int) -> bool:
        return len(self._near[number]) >= len(self.items[number].shows)

    def _urgency(self, number: int) -> tuple[int, int, Fraction, int]:
        item = self.items[number]
        if not self._tight(number):
            return 0, 0, -item.weight, item.pool.dice.throw()
        seen = {self.prints.get(other) for p in item.patches for other in self.beside.get(p, ())}
        return -len(seen - {None}), -len(self._near[number]), -item.weight, item.pool.dice.throw()

    def _give(self, number: int, option: int) -> None:
        item = self.items[number]
        self.dealt[number] = option
        item.pool.use(option, item.weight)
        self.prints.update(zip(item.patches, item.shows[option], strict=True))

    def _take_back(self, number: int) -> None:
        item = self.items[number]
        item.pool.use(self.dealt.pop(number), -item.weight)
        for patch in item.patches:
            del self.prints[patch]

    def _best(self, number: int) -> int:
        """The least used option without a clash; else, by chance, one of those with the fewest."""
        item = self.items[number]
        around = [
            Counter(self.prints.get(other) for other in self.beside.get(patch, ()))
            for patch in item.patches
        ]
        touching: dict[int, list[int]] = {}
        for _, _, option in item.pool.order:
            if not item.pool.fits(option, item.weight):
                continue
            shows = item.shows[option]
            touch = sum(near[shown] for near, shown in zip(around, shows, strict=True))
            if not touch:
                return option
            touching.setdefault(touch, []).append(option)
        if not touching:
            return item.pool.order[0][2]
        fewest = touching[min(touching)]
        return fewest[item.pool.dice.throw() % len(fewest)]

    def clashes(self) -> tuple[tuple[int, int], ...]:
        """Pairs of patches that touch and are alike."""
        return tuple(
            (patch, other)
            for patch, others in self.beside.items()
            for other in others
            if patch < other and self.prints[patch] == self.prints[other]
        )

    def _mend(self) -> None:
        """Deal items that clash again, and those that they then touch; it never gets worse, for
        an item may always keep what it had."""
        waiting = deque(sorted({self._owner[patch] for pair in self.clashes() for patch in pair}))
        tries = min(MOST_REPAIRS, REPAIRS * len(self.items))
        while waiting and tries:
            number = waiting.popleft()
            if not self._touched(number):
                continue
            tries -= 1
            self._take_back(number)
            self._give(number, self._best(number))
            waiting.extend(self._touched(number))

    def _touched(self, number: int) -> tuple[int, ...]:
        """The items that this one touches and is alike to."""
        near = {
            self._owner[other]
            for patch in self.items[number].patches
            for other in self.beside.get(patch, ())
            if self.prints[other] == self.prints[patch]
        }
        return tuple(sorted(near))
