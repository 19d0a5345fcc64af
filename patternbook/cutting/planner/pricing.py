"""The best strip of every height at given prices: one sweep of a table, heights by lengths."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from patternbook.cutting.planner.table import Filling

Table = NDArray[Any]


class Run(NamedTuple):
    """Heights (rows of the table, from `first` up to, not with, `end`) that a kind fills alike."""

    first: int
    end: int
    filling: Filling


class Sweep(NamedTuple):
    """The filled table (one row for each height, one column for each length of strip), and the
    table before and after each kind was offered."""

    values: Table
    kinds: list[tuple[int, Table, Table]]


def runs_of(rows: Sequence[Mapping[int, Filling]]) -> dict[int, list[Run]]:
    """For each kind, the runs of heights that it fills alike."""
    found: dict[int, list[Run]] = {}
    for row, fillings in enumerate(rows):
        for kind, filling in fillings.items():
            runs = found.setdefault(kind, [])
            if runs and runs[-1].end == row and runs[-1].filling.same(filling):
                runs[-1] = runs[-1]._replace(end=row + 1)
            else:
                runs.append(Run(row, row + 1, filling))
    return dict(sorted(found.items()))


def sweep(
    runs: Mapping[int, Iterable[Run]],
    prices: Sequence[float],
    caps: Sequence[int],
    shape: tuple[int, int],
    whole: bool = False,
) -> Sweep:
    """Fills the table: each kind in turn is offered to every height. `whole`: in whole numbers."""
    table: Table = np.zeros(shape, np.int64 if whole else np.float64)
    kinds = []
    for kind, its_runs in runs.items():
        if prices[kind] <= 0 or caps[kind] <= 0:
            continue
        before, table = table, table.copy()
        for first, end, filling in its_runs:
            for length, count in filling.within(caps[kind]):
                part = table[first:end, length:]
                worth = before[first:end, : shape[1] - length] + prices[kind] * count
                np.maximum(part, worth, out=part)
        kinds.append((kind, before, table))
    return Sweep(table, kinds)


def traced(
    swept: Sweep,
    runs: Mapping[int, Iterable[Run]],
    prices: Sequence[float],
    caps: Sequence[int],
    row: int,
) -> dict[int, int]:
    """How many of each kind the best strip of that row holds."""
    left = swept.values.shape[1] - 1
    counts = {}
    for kind, before, after in reversed(swept.kinds):
        if after[row, left] == before[row, left]:
            continue
        filling = next(run.filling for run in runs[kind] if run.first <= row < run.end)
        for length, count in filling.within(caps[kind]):
            if length > left:
                break
            if before[row, left - length] + prices[kind] * count == after[row, left]:
                counts[kind] = count
                left -= length
                break
    return counts
