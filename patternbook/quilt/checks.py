"""What is held against what in one size: sums kept equal, stated figures, what may be trimmed."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.linear import Key, Sum, Symbol
from patternbook.methods.world import Rule, Tally
from patternbook.notice import Place


@dataclass(frozen=True)
class Stated:
    """A figure of the author's beside the sum it should equal."""

    key: Key
    worked_out: Tally
    symbol: Symbol
    rule: Rule
    place: Place
    step: Fraction = Fraction(1, 8)


@dataclass(frozen=True)
class Check:
    """An equation that no unknown was left to satisfy: `rest` is nought if its sides agree."""

    one: Tally
    other: Tally
    rest: Sum
    rule: Rule
    stated: Stated | None = None
    always: bool = False

    def off(self) -> Exact:
        """How much longer the first side is, where that is more than the rule allows."""
        rest = self.rest.value()
        return Exact(0) if rest is None or self.agrees(rest) else rest

    def agrees(self, rest: Exact) -> bool:
        """Whether sides that differ by so much are held to agree. No figure on the ruler is a
        sum with a root in it: there it may be as far off as the ruler's own marks."""
        if self.stated is not None and not rest.rational:
            return abs(rest) < max(self.rule.tolerance, self.stated.step)
        # About so much is either eighth beside what it is exactly, and itself where it is one.
        return rest == 0 or abs(rest) < self.rule.tolerance


@dataclass(frozen=True)
class Bound:
    """A unit that may be trimmed: its size, and the most that its pieces give."""

    name: str
    size: Sum
    most: Tally
    trimmed: Fraction
    place: Place | None
    points: bool = False


@dataclass(frozen=True)
class Room:
    """A sum that must keep within another."""

    one: Tally
    room: Tally
    rule: Rule
