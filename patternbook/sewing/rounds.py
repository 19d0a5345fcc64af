"""Joining in pairs, then pairs of pairs, so that one thread runs through every round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate
from typing import Literal, NamedTuple

from patternbook.exact import Exact
from patternbook.quilt.records import Sides
from patternbook.sewing.records import Group, Round


class Joined(NamedTuple):
    """What is joined: lengths along the line and the height over it, finished; `ends` and
    `edges` are what seam allowance is still on it along the line and over it."""

    along: Sequence[Exact]
    over: Exact
    direction: Literal["across", "down"]
    ends: Exact
    edges: Exact

    def sides(self, length: Exact) -> Sides:
        """The measure, raw edge to raw edge, of a group so long."""
        along, over = length + self.ends, self.over + self.edges
        return Sides(along, over) if self.direction == "across" else Sides(over, along)


class Span(NamedTuple):
    """A group: its first part, and the one behind its last."""

    first: int
    behind: int


def rounds(joined: Joined, make: int) -> Iterator[Round]:
    """Every round until one is left. An odd group waits at the end of the line."""
    starts = [Exact(0), *accumulate(joined.along)]
    spans = [Span(number, number + 1) for number in range(len(joined.along))]
    number = 0
    while len(spans) > 1:
        number += 1
        joins, odd = divmod(len(spans), 2)
        pairs = zip(spans[::2], spans[1::2], strict=False)
        spans = [Span(one.first, other.behind) for one, other in pairs] + spans[len(spans) - odd :]
        groups = tuple(_groups(spans, starts, joined, make))
        yield Round(number, joins, joins * make, bool(odd), len(spans), groups)


def _groups(
    spans: Sequence[Span], starts: Sequence[Exact], joined: Joined, make: int
) -> Iterator[Group]:
    """The groups by how many parts they hold, the most first."""
    lengths: dict[int, list[Exact]] = {}
    for first, behind in spans:
        lengths.setdefault(behind - first, []).append(starts[behind] - starts[first])
    for parts, of in sorted(lengths.items(), reverse=True):
        alike = all(length == of[0] for length in of)
        measure = joined.sides(of[0]) if alike else None
        yield Group(parts, len(of), len(of) * make, measure)
