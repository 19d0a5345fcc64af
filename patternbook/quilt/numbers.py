"""The whole numbers and the cells of one size, and all that is told while it is worked out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from difflib import get_close_matches
from math import ceil, floor
from typing import Final

from patternbook.methods.world import here
from patternbook.notice import Mark, Notice, Place
from patternbook.value import Cell, CellsValue, CountValue, PerSize, ValueFault

# Cells of all layouts of one size together: twice the patches of the largest quilt.
MOST_CELLS: Final = 100_000


class Numbers:
    """What the size's own numbers make of counts and cells; faults are told, never raised."""

    def __init__(self, size: str, names: Mapping[str, int]) -> None:
        self.size = size
        self.names = dict(names)
        self.used_names: Counter[str] = Counter()
        self.notices: list[Notice] = []
        self._laid: dict[int, tuple[Cell, ...]] = {}
        self._cells = 0
        # Whether any cell is mirrored, so that hands have to be told apart.
        self.mirrors = False

    def tell(self, notice: Notice) -> None:
        """Tell the author something, once."""
        if notice not in self.notices:
            self.notices.append(notice)

    def error(
        self,
        code: str,
        rule: str | None,
        message: str,
        place: Place | None,
        hint: str | None = None,
    ) -> None:
        """Tell of an error at one place."""
        self.tell(self.fault(code, rule, message, place, hint))

    def fault(
        self,
        code: str,
        rule: str | None,
        message: str,
        place: Place | None,
        hint: str | None = None,
    ) -> Notice:
        """An error of this size, not yet told."""
        marks = (Mark(place, "here"),) if place else ()
        return Notice(code, "error", "quilt", message, marks, rule, (self.size,), hint=hint)

    def number(self, value: PerSize[CountValue] | None, what: str, least: int = 0) -> int | None:
        """A stated whole number in this size; faults in it are told, and it counts as unstated."""
        return self.whole(here(value, self.size), what, least)

    def whole(self, count: CountValue | None, what: str, least: int = 0) -> int | None:
        """A count's number, None where none is stated or it is at fault."""
        if count is None:
            return None
        self.used_names.update(count.names)
        try:
            number = count.at(self.names)
        except KeyError as missing:
            self._no_number(count, str(missing.args[0]), what)
            return None
        except ValueFault as fault:
            self.error("count-value", "R3", f"{what}: {fault}", count.place)
            return None
        if number.denominator != 1 or number < 0:
            message = f"{what}: {count.text} comes to {number}, which is no whole number."
            near = " or ".join(dict.fromkeys(str(max(0, f(number))) for f in (floor, ceil)))
            hint = f"Mend the sum, so that it comes to {near}."
            self.error("not-whole", "R3", message, count.place, hint)
            return None
        if number < least:
            message = f"{what}: {count.text} comes to {number}; {least} is the least."
            self.error("too-few", "R3", message, count.place, "Leave it out where it is not known.")
            return None
        return int(number)

    def laid(self, cells: CellsValue) -> tuple[Cell, ...]:
        """The cells written out one by one; a fault in them is told and leaves none."""
        if id(cells) not in self._laid:
            self._laid[id(cells)] = self._written_out(cells)
        return self._laid[id(cells)]

    def lays(self, number: int, place: Place | None) -> bool:
        """Count so many cells as laid; False where all layouts come to too many, which is told."""
        before, self._cells = self._cells, self._cells + number
        if before <= MOST_CELLS < self._cells:
            message = f"the units of this size lay more than {MOST_CELLS} parts together."
            hint = "Look for a count that is far too large."
            self.error("too-many-patches", "R8", message, place, hint)
        return self._cells <= MOST_CELLS

    def _written_out(self, cells: CellsValue) -> tuple[Cell, ...]:
        if not self.lays(0, cells.place):
            return ()
        self.used_names.update(cells.names)
        try:
            laid = cells.laid(self.names)
        except KeyError as missing:
            self._no_number(cells, str(missing.args[0]), f"'{cells.text}'")
        except ValueFault as fault:
            self.error("cells", "R8", str(fault), cells.place)
        else:
            if all(cell.part is None for cell in laid):
                message = f"'{cells.text}' lays no part in this size."
                self.error("cells", "R8", message, cells.place, "Lay at least one.")
            self.mirrors = self.mirrors or any("mirror" in cell.turns for cell in laid)
            return laid if self.lays(len(laid), cells.place) else ()
        return ()

    def _no_number(self, value: CountValue | CellsValue, name: str, what: str) -> None:
        message = f"{what}: this size has no number called '{name}'."
        near = get_close_matches(name, self.names, 1)
        hint = f"Did you mean '{near[0]}'?" if near else f"Add `{name}: …` to the size."
        self.error("no-number", "R9", message, value.place, hint)
