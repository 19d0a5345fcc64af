"""One plain table of what was measured, beside the bar each figure has to clear."""

from collections.abc import Iterable, Sequence
from typing import Final, NamedTuple

from tests.benchmarks.cut_runs import spent

HEAD: Final = ("what", "measured", "bar", "", "median", "95 %", "worst", "all, s")


class Row(NamedTuple):
    """One line. `held` is None where there is no bar; `seconds` are those of each run."""

    what: str
    measured: str
    bar: str = ""
    held: bool | None = None
    seconds: Sequence[float] = ()


def table(rows: Iterable[Row]) -> str:
    """All rows in columns."""
    cells = [HEAD, *(_cells(row) for row in rows)]
    widths = [max(len(cell) for cell in column) for column in zip(*cells, strict=True)]
    return "\n".join(_line(row, widths) for row in cells)


def _cells(row: Row) -> tuple[str, ...]:
    held = {None: "", True: "pass", False: "FAIL"}[row.held]
    if not row.seconds:
        return (row.what, row.measured, row.bar, held, "", "", "", "")
    usual, most, worst, total = spent(row.seconds)
    times = (f"{usual:.3f}", f"{most:.2f}", f"{worst:.2f}", f"{total:.1f}")
    return (row.what, row.measured, row.bar, held, *times)


def _line(cells: Sequence[str], widths: Sequence[int]) -> str:
    words = [cell.ljust(width) for cell, width in zip(cells[:4], widths[:4], strict=True)]
    times = [cell.rjust(width) for cell, width in zip(cells[4:], widths[4:], strict=True)]
    return "  ".join((*words, *times)).rstrip()
