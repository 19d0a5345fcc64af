"""The block of pieces that lie along the cloth: columns side by side, cut before any strip."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from functools import cache
from typing import Final

from patternbook.cutting.planner.records import Block, Kind

# Columns are tried in every way while there are no more states (counts of pieces still to place)
# than this, and no more sets of pieces for a column; else longest first.
STATES: Final = 2_000
FILLS: Final = 200_000

_Counts = tuple[int, ...]


class _TooMany(Exception):
    pass


def blocks(
    pieces: Sequence[Kind], width: int, longest: int | None = None
) -> tuple[list[Block], bool]:
    """The blocks worth trying, none longer than `longest`, shortest first, each narrower than
    those before it; and whether every other block is as wide and as long as one of them."""
    kinds = sorted((kind for kind in pieces if kind.number), key=_widest_first)
    if not kinds:
        return [], True
    every = _prod(kind.number + 1 for kind in kinds) <= STATES
    try:
        return list(_narrowing(kinds, width, longest, every)), every
    except _TooMany:
        return list(_narrowing(kinds, width, longest, every=False)), False


def _widest_first(kind: Kind) -> tuple[int, int, str]:
    return -kind.across, -kind.along, kind.name


def _prod(numbers: Iterator[int]) -> int:
    total = 1
    for number in numbers:
        total *= number
    return total


def _narrowing(
    kinds: Sequence[Kind], width: int, longest: int | None, every: bool
) -> Iterator[Block]:
    """For each width that a block can have, the shortest block."""
    least = max(kind.along for kind in kinds)
    lengths = [n for n in _lengths(kinds) if least <= n and (longest is None or n <= longest)]
    packed: dict[int, list[_Counts]] = {}

    def wide(length: int) -> int:
        if length not in packed:
            packed[length] = _columns(kinds, length, every)
        return sum(_across(kinds, column) for column in packed[length])

    limit, first = width, 0
    while first < len(lengths):
        first = bisect_left(lengths, -limit, lo=first, key=lambda length: -wide(length))
        if first < len(lengths):
            length = lengths[first]
            limit = wide(length) - 1
            yield _block(kinds, packed[length])


def _lengths(kinds: Sequence[Kind]) -> list[int]:
    """Every length that a column can have."""
    sums = {0}
    for kind in kinds:
        sums = {total + kind.along * number for total in sums for number in range(kind.number + 1)}
    return sorted(sums)


def _across(kinds: Sequence[Kind], column: _Counts) -> int:
    return max(kind.across for kind, count in zip(kinds, column, strict=True) if count)


def _block(kinds: Sequence[Kind], columns: Sequence[_Counts]) -> Block:
    told = tuple(
        tuple(
            (kind.name, kind.along, kind.across)
            for kind, count in zip(kinds, column, strict=True)
            for _ in range(count)
        )
        for column in columns
    )
    long = max(sum(length for _, length, _ in column) for column in told)
    return Block(sum(_across(kinds, column) for column in columns), long, told)


def _columns(kinds: Sequence[Kind], length: int, every: bool) -> list[_Counts]:
    """The columns, each at most so long, that take the least width together."""
    return _least(kinds, length) if every else _first_fit(kinds, length)


def _first_fit(kinds: Sequence[Kind], length: int) -> list[_Counts]:
    """Widest first, then longest; each into the first column with room."""
    columns: list[list[int]] = []
    left: list[int] = []
    for place, kind in enumerate(kinds):
        for _ in range(kind.number):
            at = next((n for n, room in enumerate(left) if room >= kind.along), len(left))
            if at == len(left):
                left.append(length)
                columns.append([0] * len(kinds))
            left[at] -= kind.along
            columns[at][place] += 1
    return [tuple(column) for column in columns]


def _least(kinds: Sequence[Kind], length: int) -> list[_Counts]:
    """The widest piece left sets a column's width; every full set of pieces behind it is tried."""
    tried = 0

    @cache
    def best(left: _Counts) -> tuple[int, tuple[_Counts, ...]]:
        nonlocal tried
        widest = next((place for place, count in enumerate(left) if count), None)
        if widest is None:
            return 0, ()
        found = None
        for column in _fills(kinds, left, widest, length):
            tried += 1
            if tried > FILLS:
                raise _TooMany
            after = tuple(count - taken for count, taken in zip(left, column, strict=True))
            rest, columns = best(after)
            if found is None or rest < found[0]:
                found = rest, (column, *columns)
        assert found is not None  # noqa: S101 - the widest piece alone is a column
        return found[0] + kinds[widest].across, found[1]

    return list(best(tuple(kind.number for kind in kinds))[1])


def _fills(kinds: Sequence[Kind], left: _Counts, widest: int, length: int) -> Iterator[_Counts]:
    """The columns that hold that piece and leave no room for another of those left."""
    column = [0] * len(kinds)
    column[widest] = 1

    def down(place: int, room: int) -> Iterator[_Counts]:
        if place == len(kinds):
            if not any(
                count > column[at] and kinds[at].along <= room for at, count in enumerate(left)
            ):
                yield tuple(column)
            return
        already = column[place]
        for more in range(min(left[place] - already, room // kinds[place].along), -1, -1):
            column[place] = already + more
            yield from down(place + 1, room - more * kinds[place].along)
        column[place] = already

    yield from down(0, length - kinds[widest].along)
