"""Joining in pairs, then pairs of pairs, so that one thread runs through every round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import accumulate, groupby
from typing import Final, Literal, NamedTuple

from patternbook.exact import Exact
from patternbook.quilt.records import Sides
from patternbook.sewing.records import Group, Round

LONG_RUN: Final = 4


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


def rounds(parts: Sequence[str], joined: Joined, make: int) -> tuple[Round, ...]:
    """Every round until one is left. An odd group waits at the end of the line.

    Where one long run of like parts lies among single others (bars between two lengths of
    ground), the run is joined first.
    """
    starts = [Exact(0), *accumulate(joined.along)]
    spans = [Span(number, number + 1) for number in range(len(parts))]
    run = _run(parts)
    made: list[Round] = []
    if run is not None:
        inner = spans[run.first : run.behind]
        made += _rounds(inner, parts[run.first], starts, joined, make)
        spans[run.first : run.behind] = [run]
    made += _rounds(spans, None, starts, joined, make)
    return tuple(replace(round_, number=number) for number, round_ in enumerate(made, 1))


def _run(parts: Sequence[str]) -> Span | None:
    """The one long run among parts that are all single."""
    runs, at = [], 0
    for _, like in groupby(parts):
        number = len(list(like))
        runs.append(Span(at, at + number))
        at += number
    longest = max(runs, key=lambda run: run.behind - run.first, default=Span(0, 0))
    others = sum(run.behind - run.first > 1 for run in runs)
    if len(runs) > 1 and others == 1 and longest.behind - longest.first >= LONG_RUN:
        return longest
    return None


def _rounds(
    spans: list[Span], part: str | None, starts: Sequence[Exact], joined: Joined, make: int
) -> Iterator[Round]:
    while len(spans) > 1:
        joins, odd = divmod(len(spans), 2)
        pairs = zip(spans[::2], spans[1::2], strict=False)
        spans = [Span(one.first, other.behind) for one, other in pairs] + spans[2 * joins :]
        groups = tuple(_groups(spans, starts, joined, make))
        yield Round(0, part, joins, joins * make, bool(odd), len(spans), groups)


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
