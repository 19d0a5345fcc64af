"""Cells as they are written: parts side by side, repeated until the layout is full."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import Turn
from patternbook.methods.world import World, here
from patternbook.notice import Place
from patternbook.value import CellsValue, CountValue, PerSize

MOST_CELLS = 50_000


class Laid(NamedTuple):
    """One cell in its row: the part, how it lies, and where it is written."""

    part: str
    turn: Turn
    place: Place | None


def turn_of(words: Iterable[str]) -> Turn:
    """The turn that `/right/mirror` and the like come to, done in the order written."""
    turn = Turn()
    for word in words:
        if word == "mirror":
            turn = Turn(-turn.quarters % 4, not turn.mirrored)
        else:
            turn = turn._replace(quarters=(turn.quarters + QUARTERS[word]) % 4)
    return turn


QUARTERS: Mapping[str, int] = {"right": 1, "half": 2, "left": 3}


Lines = tuple[tuple[Laid, ...], ...]


def lines(name: str, unit: WrittenLayout, world: World) -> Lines:
    """The cells of each row (or column) in this size, repeated until the layout is full."""
    if unit.rows is not None and unit.columns is not None:
        message = f"'{name}' has both rows and columns; the columns are not read."
        world.error("rows-and-columns", "R10", message, unit.place, "Keep one of the two.")
    texts = _texts(name, unit, world)
    written = [cells_of(text, world) for text in texts]
    if not written or not all(written):
        return ()
    across = _repeats(unit.across, f"{name}: across", world)
    down = _repeats(unit.down, f"{name}: down", world)
    if 0 in (across, down):
        return ()
    cells, many = (across, down) if unit.rows is not None else (down, across)
    number = (cells or max(map(len, written))) * (many or len(written))
    if number > MOST_CELLS:
        message = f"'{name}' would have {number} cells."
        hint = f"Look for a count that is far too large; {MOST_CELLS} is the most."
        world.error("too-many-patches", "R8", message, unit.place, hint)
        return ()
    if not world.lays(number, unit.place):
        return ()
    return repeated(written, cells, many)


def repeated(written: Sequence[tuple[Laid, ...]], cells: int | None, many: int | None) -> Lines:
    """So many rows of so many cells each; as many as are written where no number is given."""
    filled = [written[i % len(written)] for i in range(len(written) if many is None else many)]
    if cells is None:
        return tuple(filled)
    return tuple(tuple(line[i % len(line)] for i in range(cells)) for line in filled)


def _repeats(count: PerSize[CountValue] | None, what: str, world: World) -> int | None:
    """How many cells or rows are stated; 0 where it cannot be said how many, which is told."""
    if count is None:
        return None
    if here(count, world.size) is None:
        message = f"{what} is stated for other sizes, and not for this one."
        hint = "State it for every size, or for the rest together as `others:`."
        world.error("no-value", "R9", message, count.place, hint)
    return world.number(count, what, least=1) or 0


def _texts(name: str, unit: WrittenLayout, world: World) -> Sequence[CellsValue]:
    texts = here(unit.rows if unit.rows is not None else unit.columns, world.size)
    if not texts:
        message = f"'{name}' has neither rows nor columns in this size."
        hint = "Write `rows: [A B, B A]` from the top, or `columns:` from the left."
        world.error("no-rows", "R10", message, unit.place, hint)
        return ()
    return texts


def cells_of(text: CellsValue, world: World) -> tuple[Laid, ...]:
    """The cells of one written row."""
    laid = [cell for cell in world.laid(text) if cell.part is not None]
    return tuple(Laid(str(cell.part), turn_of(cell.turns), text.place) for cell in laid)
