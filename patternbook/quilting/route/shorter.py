"""A round made shorter: stretches of it turned round, and fills put in elsewhere."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Final

CLOSE: Final = 8  # neighbours tried for each
ROUNDS: Final = 12
GAIN: Final = 1e-6


class Apart:
    """How far fills are apart; guessed from their middles where they are no neighbours."""

    def __init__(
        self, near: Sequence[Mapping[int, float]], middles: Sequence[Sequence[float]], detour: float
    ) -> None:
        self._near = near
        self._middles = middles
        self._detour = detour
        self.close = [
            sorted(those, key=lambda n, those=those: (round(those[n], 6), n))[:CLOSE]  # type: ignore[misc]
            for those in near
        ]

    def __call__(self, one: int, other: int) -> float:
        far = self._near[one].get(other)
        if far is None:
            far = self._detour * math.dist(self._middles[one], self._middles[other])
        return far

    def total(self, order: Sequence[int]) -> float:
        return sum(self(one, other) for one, other in pairwise(order))


def shorter(order: Sequence[int], apart: Apart) -> list[int]:
    """An order that turning a stretch, or moving one to three fills, makes no shorter. The first
    fill stays the first."""
    found = list(order)
    for _ in range(ROUNDS):
        at = {number: place for place, number in enumerate(found)}
        gained = False
        for number in order:
            gained |= _turned(found, at, number, apart) or _moved(found, at, number, apart)
        if not gained:
            break
    return found


def _turned(found: list[int], at: dict[int, int], one: int, apart: Apart) -> bool:
    """Sew `other` right after `one`, and all between them the other way round."""
    here = at[one]
    if here == len(found) - 1:
        return False
    now = apart(one, found[here + 1])
    for other in apart.close[one]:
        there = at[other]
        if there <= here + 1 or apart(one, other) >= now:
            continue
        gain = now - apart(one, other)
        if there < len(found) - 1:
            after = found[there + 1]
            gain += apart(other, after) - apart(found[here + 1], after)
        if gain > GAIN:
            _put(found, at, here + 1, found[here + 1 : there + 1][::-1])
            return True
    return False


def _moved(found: list[int], at: dict[int, int], one: int, apart: Apart) -> bool:
    """Take `one` and up to two that follow out, and sew them beside a neighbour of theirs."""
    for many in (1, 2, 3):
        here = at[one]
        end = here + many
        if here == 0 or end > len(found):
            return False
        block = found[here:end]
        freed = apart(found[here - 1], one)
        if end < len(found):
            freed += apart(block[-1], found[end]) - apart(found[here - 1], found[end])
        if freed <= GAIN:
            continue
        for other in apart.close[one]:
            if not here <= at[other] < end and _put_beside(
                found, at, (here, end), other, freed, apart
            ):
                return True
    return False


def _put_beside(
    found: list[int],
    at: dict[int, int],
    span: tuple[int, int],
    other: int,
    freed: float,
    apart: Apart,
) -> bool:
    here, end = span
    block = found[here:end]
    there = at[other]
    following = there + 1 if there + 1 != here else end
    paid = apart(other, block[0])
    if following < len(found):
        after = found[following]
        paid += apart(block[-1], after) - apart(other, after)
    if freed - paid <= GAIN:
        return False
    if there < here:
        _put(found, at, there + 1, block + found[there + 1 : here])
    else:
        _put(found, at, here, found[end : there + 1] + block)
    return True


def _put(found: list[int], at: dict[int, int], first: int, those: Sequence[int]) -> None:
    found[first : first + len(those)] = those
    at.update({number: place for place, number in enumerate(those, start=first)})
