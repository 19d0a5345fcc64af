"""A list set in two columns of about one height: the page library balances columns of its own
by laying them out again and again, which takes longer than all the rest of a page."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import Protocol, TypeVar


class Entry(Protocol):
    """A bold head and what is said of it."""

    @property
    def head(self) -> str:
        """The head."""

    @property
    def words(self) -> str:
        """What is said."""


T = TypeVar("T", bound=Entry)
LINE = 42  # letters of a column's line


def halves(entries: Sequence[T]) -> tuple[tuple[T, ...], tuple[T, ...]]:
    """The entries in two runs of about one height, the first the longer where both would do."""
    lines = [-(-(len(entry.head) + len(entry.words) + 2) // LINE) for entry in entries]
    whole = sum(lines)
    heights = [0, *accumulate(lines)]
    cuts = range(len(entries), -1, -1)
    cut = min(cuts, key=lambda at: max(heights[at], whole - heights[at]))
    return tuple(entries[:cut]), tuple(entries[cut:])
