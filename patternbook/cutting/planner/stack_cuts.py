"""Sub-cuts that hold pieces of several kinds: what is cut in vain, and how they are told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from patternbook.cutting.planner.records import Column, Kind
from patternbook.cutting.planner.stack_table import Lay
from patternbook.cutting.planner.zone import Counts

# The pieces of one sub-cut, the longest (its base) first, and how many of each lie in it.
SubCut = tuple[tuple[Lay, int], ...]
# Sub-cuts of one strip, and how many there are of each.
SubCuts = tuple[tuple[SubCut, int], ...]


def counted(cuts: SubCuts, kinds: int) -> Counts:
    """How many pieces of each kind they hold."""
    total = [0] * kinds
    for cut, times in cuts:
        for lay, number in cut:
            total[lay.place] += number * times
    return tuple(total)


def thinned(cuts: SubCuts, counts: Counts) -> SubCuts:
    """The same without the pieces beyond these counts, which are left out of the last sub-cuts."""
    over = [have - want for have, want in zip(counted(cuts, len(counts)), counts, strict=True)]
    kept: list[SubCut] = []
    for cut in reversed([cut for cut, times in cuts for _ in range(times)]):
        rest = []
        for lay, number in cut:
            spared = min(number, over[lay.place])
            over[lay.place] -= spared
            if number > spared:
                rest.append((lay, number - spared))
        if rest:
            kept.append(tuple(rest))
    kept.sort(key=_longest_first)
    return tuple((cut, len(list(like))) for cut, like in groupby(kept))


def _longest_first(cut: SubCut) -> tuple[int, int, list[tuple[int, int, int, int]]]:
    base = cut[0][0]
    return -base.along, base.place, [(-n, *lay[:3]) for lay, n in cut]


def columns(cuts: SubCuts, kinds: Sequence[Kind]) -> tuple[Column, ...]:
    """The sub-cuts as they are told; of one kind alone, the last may hold fewer."""
    return tuple(_joined(_column(cut, times, kinds) for cut, times in cuts))


def _column(cut: SubCut, times: int, kinds: Sequence[Kind]) -> Column:
    base, *above = (
        Column(kinds[lay.place].name, lay.along, lay.across, number, times, number * times)
        for lay, number in cut
    )
    return base._replace(above=tuple(above))


def _joined(columns: Iterable[Column]) -> Iterator[Column]:
    """Of two columns of like pieces the second, if it is but one sub-cut, becomes the last of the
    first."""
    before: Column | None = None
    for column in columns:
        if before is None:
            before = column
        elif _last_of(column, before):
            pieces = before.pieces + column.pieces
            before = before._replace(columns=before.columns + 1, pieces=pieces)
        else:
            yield before
            before = column
    if before is not None:
        yield before


def _last_of(column: Column, before: Column) -> bool:
    plain = not column.above and not before.above and column.columns == 1
    full = before.pieces == before.stack * before.columns
    return plain and full and column[:3] == before[:3] and column.stack <= before.stack
