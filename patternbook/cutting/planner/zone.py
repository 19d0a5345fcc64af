"""A stretch of cloth that is cut into strips across it: what the search asks of one, whatever
the manner of cutting."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple, Protocol

import numpy as np
from numpy.typing import NDArray

from patternbook.cutting.planner.records import Column, Kind

Counts = tuple[int, ...]
Floats = NDArray[np.float64]
Wholes = NDArray[np.int64]


class Strip(NamedTuple):
    """A strip `height` wide that yields so many (`counts`) pieces of each kind, in the order of
    the zone's kinds. How it is cut is asked of `Zone.layout`."""

    height: int
    counts: Counts


class Zone(Protocol):
    """Cloth of one width. A strip holds at most as many pieces of a kind as are asked for.

    `caps` are like counts: no strip that is given back holds more of a kind than its cap (a search
    passes what is still to be cut). Every answer is a function of the arguments alone: no clock,
    no chance, no order of a set.
    """

    @property
    def kinds(self) -> tuple[Kind, ...]: ...

    @property
    def heights(self) -> tuple[int, ...]:
        """Every height that a strip may have, lowest first, each once."""

    def starters(self, caps: Counts) -> list[Strip]:
        """Strips of one kind each, as full as they get: of every kind that fits and has a cap above
        nought at least one strip, so that these alone can cut everything."""

    def best(self, prices: Sequence[float], caps: Counts, floors: Floats) -> list[Strip]:
        """Of the heights whose best strip is worth more at these prices than its floor (`floors`
        has one for each of `heights`), such a strip. All heights that exceed, or some of them, but
        none only if none does."""

    def worth(self, prices: Sequence[int]) -> Wholes:
        """For each height, in whole numbers and exactly, the most that any strip of it is worth,
        with at most the asked number of each kind. This is what certifies a bound."""

    def every(
        self, height: int, prices: Sequence[int], floor: int, limit: int
    ) -> tuple[list[Strip], bool]:
        """All strips of the height that are worth at least the floor, those left out to which
        another piece could be added or that a lower strip could yield; and whether they are all
        (not, when there are more than the limit, or when the manner cannot tell)."""

    def easy(self, limit: int) -> list[Strip]:
        """Strips that are easy to cut, of one kind or of two, as full as they get; at most so
        many."""

    def lower(self, strip: Strip) -> bool:
        """Whether a lower strip surely yields the same. False when not known."""

    def layout(self, strip: Strip) -> tuple[Column, ...]:
        """How a strip is cut that this zone gave (or the zone of shared cutting did), or one with
        fewer pieces of some kinds than such a strip."""
