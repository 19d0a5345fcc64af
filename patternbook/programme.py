"""The one place that knows the solver: small linear and integer programmes, the same on every
machine (one thread, a fixed seed, limits that count work) and never a word printed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final, NamedTuple

import highspy
import numpy as np

# `highspy.Highs` prints a banner as soon as it is made; the class below it prints nothing.
from highspy._core import _Highs

SEEDS: Final = (11, 4_217)
ALWAYS: Final = (
    ("output_flag", False),
    ("threads", 1),
    # Neither made any of the plans tried better, or sooner found.
    ("mip_allow_restart", False),
    ("mip_heuristic_run_feasibility_jump", False),
)
POLISH: Final = "mip_heuristic_run_root_reduced_cost"
GUESSES: Final = (
    "mip_heuristic_run_rens",
    "mip_heuristic_run_rins",
    POLISH,
)

Row = Mapping[int, int]


def _solver(seed: int = SEEDS[0]) -> Any:  # noqa: ANN401 - the solver carries no types
    solver = _Highs()
    for option, setting in (*ALWAYS, ("random_seed", seed)):
        solver.setOptionValue(option, setting)
    return solver


def _indices(row: Row) -> tuple[int, np.ndarray, np.ndarray]:
    return len(row), np.array(list(row), np.int32), np.array(list(row.values()), np.float64)


class Relaxed(NamedTuple):
    """A solved linear programme: the price of each row, the amount of each column."""

    prices: list[float]
    amounts: list[float]


class Linear:
    """A linear programme of amounts that are at least nought, solved again and again as columns
    come and rows change."""

    def __init__(self, iterations: int) -> None:
        self._solver = _solver()
        self._solver.setOptionValue("simplex_iteration_limit", iterations)

    def row(self, low: int | None, high: int | None) -> None:
        """Adds an empty row."""
        self._solver.addRow(*_ends(low, high), *_indices({}))

    def column(self, cost: float, entries: Row) -> None:
        self._solver.addCol(float(cost), 0.0, highspy.kHighsInf, *_indices(entries))

    def recost(self, costs: Sequence[float]) -> None:
        """Gives every column another cost."""
        every = np.arange(len(costs), dtype=np.int32)
        self._solver.changeColsCost(len(costs), every, np.array(costs, np.float64))

    def bound_row(self, row: int, low: int | None, high: int | None) -> None:
        self._solver.changeRowBounds(row, *_ends(low, high))

    def cap(self, columns: Sequence[int], cap: int | None) -> None:
        """Lets none of these columns exceed the cap (None: no cap)."""
        if columns:
            high = highspy.kHighsInf if cap is None else float(cap)
            self._solver.changeColsBounds(
                len(columns),
                np.array(columns, np.int32),
                np.zeros(len(columns)),
                np.full(len(columns), high),
            )

    def solve(self) -> Relaxed | None:
        """None where it has no solution, or none within the limit."""
        self._solver.run()
        if self._solver.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return None
        solution = self._solver.getSolution()
        return Relaxed(list(solution.row_dual), list(solution.col_value))


class Found(NamedTuple):
    """What became of an integer programme: whole amounts if any were found; whether these are
    proven best; whether it was shown that there are none."""

    amounts: tuple[int, ...] | None
    best: bool = False
    none: bool = False
    nodes: int = 0


@dataclass
class Whole:
    """An integer programme: columns of whole amounts from nought to a cap, rows, one goal."""

    caps: list[int] = field(default_factory=list)
    rows: list[tuple[int | None, int | None, Row]] = field(default_factory=list)

    def column(self, cap: int) -> int:
        self.caps.append(cap)
        return len(self.caps) - 1

    def row(self, low: int | None, high: int | None, entries: Row) -> None:
        if entries:
            self.rows.append((low, high, entries))

    def solve(  # noqa: PLR0913 - what a programme may be told
        self,
        costs: Sequence[int],
        nodes: int,
        *,
        step: int = 1,
        enough: int | None = None,
        start: Iterable[int] | None = None,
        guess: bool = True,
        polish: bool = True,
        seed: int = SEEDS[0],
    ) -> Found:
        """The amounts of least cost, as good as so many nodes find them. All costs are multiples
        of `step`. `enough`: a cost at which to stop. `start`: amounts to begin from. Without the
        solver's guesses (`guess`), or the dearest of them (`polish`), a small programme with a good
        start is sooner done."""
        solver = _solver(seed)
        for option in () if guess and polish else (POLISH,) if guess else GUESSES:
            solver.setOptionValue(option, False)
        if enough is not None:
            solver.setOptionValue("objective_target", float(enough))
        solver.setOptionValue("mip_max_nodes", nodes)
        solver.setOptionValue("mip_rel_gap", 0.0)
        solver.setOptionValue("mip_abs_gap", step * (1 - 1e-4))
        self._pass_to(solver, costs)
        if start is not None:
            solution = highspy.HighsSolution()
            solution.col_value = [float(amount) for amount in start]
            solver.setSolution(solution)
        solver.run()
        found = _outcome(solver)
        if found.amounts is not None and not self.allows(found.amounts):
            return Found(None, nodes=found.nodes)
        return found

    def allows(self, amounts: Sequence[int]) -> bool:
        """Whether the rounded amounts keep every row to the letter."""
        sums = (
            (low, high, sum(entry * amounts[column] for column, entry in entries.items()))
            for low, high, entries in self.rows
        )
        return all(
            (low is None or low <= total) and (high is None or total <= high)
            for low, high, total in sums
        )

    def _pass_to(self, solver: Any, costs: Sequence[int]) -> None:  # noqa: ANN401
        number = len(self.caps)
        every = np.arange(number, dtype=np.int32)
        solver.addVars(number, np.zeros(number), np.array(self.caps, np.float64))
        solver.changeColsCost(number, every, np.array(costs, np.float64))
        kinds = np.full(number, int(highspy.HighsVarType.kInteger.value), np.uint8)
        solver.changeColsIntegrality(number, every, kinds)
        for low, high, entries in self.rows:
            solver.addRow(*_ends(low, high), *_indices(entries))


def _ends(low: int | None, high: int | None) -> tuple[float, float]:
    return (
        -highspy.kHighsInf if low is None else float(low),
        highspy.kHighsInf if high is None else float(high),
    )


def _outcome(solver: Any) -> Found:  # noqa: ANN401
    status = solver.getModelStatus()
    info = solver.getInfo()
    nodes = max(0, int(info.mip_node_count))
    if status == highspy.HighsModelStatus.kInfeasible:
        return Found(None, none=True, nodes=nodes)
    if info.primal_solution_status != 2:
        return Found(None, nodes=nodes)
    amounts = tuple(round(amount) for amount in solver.getSolution().col_value)
    return Found(amounts, status == highspy.HighsModelStatus.kOptimal, nodes=nodes)
