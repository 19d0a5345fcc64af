"""Hexagons over papers: rows half a cell over, each row's points in the notches of the next."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import cached_property
from itertools import pairwise
from typing import Final

from patternbook.exact import Exact
from patternbook.linear import Sum
from patternbook.methods.cells import Laid, Lines, lines
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import Line, Outline, Placed, Spot, Turn
from patternbook.methods.sashing import Frame
from patternbook.methods.sums import gathered, level
from patternbook.methods.world import Rule, StripNeed, Tally, Term, World, tally

ONE_SIDE: Final = Rule("hexagon-side", "R13", "All hexagons of one layout have the same side.")
LENGTH: Final = Rule(
    "row-length", "R8", "Begin and end every other row with a half: `N H*(across - 1) N/half`."
)
WHOLE, HALVED = "hexagon", "half hexagon"
# Rows follow one another at three quarters of a hexagon's height: 1½ sides of 2.
STEP: Final = Fraction(3, 4)


Odd = tuple[str, Laid, str]


class Hexagons:
    """The equations and places of hexagons that stand on a point, in rows from the top."""

    columns = False
    word = "row"
    frame: Frame | None = None

    def __init__(self, name: str, unit: WrittenLayout, world: World) -> None:
        self.name, self.unit, self.world = name, unit, world
        self.lines = self._rows()

    def _rows(self) -> Lines:
        """The rows as written; nothing where they cannot lie together (told)."""
        fault = self._refused()
        if fault is not None:
            message, hint = fault
            self.world.error("hexagon-rows", "R13", message, self.unit.place, hint)
            return ()
        rows = lines(self.name, self.unit, self.world)
        found = next((fault for fault in self._odd_ones(rows)), None)
        if found is None:
            return rows
        message, cell, hint = found
        self.world.error("hexagon-rows", "R13", message, cell.place, hint)
        return ()

    def _odd_ones(self, rows: Lines) -> Iterator[Odd]:
        """Cells that cannot stand where they do, then rows that do not lie half a cell over."""
        for number, row in enumerate(rows, 1):
            yield from self._odd(number, row)
        for number, (one, other) in enumerate(pairwise(rows), 1):
            if self._whole(one[0]) == self._whole(other[0]):
                message = (
                    f"rows {number} and {number + 1} of '{self.name}' begin alike: their points "
                    "would meet."
                )
                yield message, other[0], "Begin and end every other row with a half hexagon."

    def _refused(self) -> tuple[str, str] | None:
        """What the setting cannot be written with, and what to do instead."""
        if self.unit.rows is None:
            return f"'{self.name}' is set in hexagons and has no rows.", "Write `rows:`."
        if self.unit.sashing is not None:
            return f"'{self.name}' is set in hexagons and has sashing.", "Leave the sashing out."
        if self.unit.borders.at(self.world.size):
            message = (
                f"'{self.name}' is set in hexagons and has borders: a border wants a straight "
                "edge, and its top and bottom are points."
            )
            return message, "Leave the borders out and bind the quilt."
        return None

    def _odd(self, number: int, row: Sequence[Laid]) -> Iterator[Odd]:
        for at, cell in enumerate(row):
            shape = self.world.template(cell.part)
            where = f"in row {number} of '{self.name}'"
            if shape not in (WHOLE, HALVED):
                hint = f"Write `template: hexagon` and its `side` at {cell.part}."
                yield f"{cell.part} {where} is no hexagon.", cell, hint
            if shape == HALVED and not self._at_end(cell, at, len(row)):
                message = (
                    f"{cell.part}, a half hexagon, {where} does not lie with its straight edge on "
                    "the outside."
                )
                yield (
                    message,
                    cell,
                    f"A row begins with {cell.part} and ends with {cell.part}/half.",
                )

    def _at_end(self, cell: Laid, at: int, cells: int) -> bool:
        """Whether a half hexagon has its straight edge outward: as made it begins a row."""
        right = (cell.turn.quarters == 2) != cell.turn.mirrored
        upright = not cell.turn.sideways
        return upright and at == (cells - 1 if right else 0) and cells > 1

    def _whole(self, cell: Laid) -> bool:
        return self.world.template(cell.part) == WHOLE

    # ---- the equations

    def span(self) -> tuple[Tally, Tally]:
        """Add the equations: one side for all, and rows of one length."""
        met = Counter(cell.part for row in self.lines for cell in row)
        first = {cell.part: cell for row in self.lines for cell in row}
        highs = [
            (met[part], tally(f"the height of {part}", [(part, self._down(cell))], cell.place))
            for part, cell in first.items()
        ]
        level(highs, ONE_SIDE, self.world)
        kinds = Counter(tuple(cell.part for cell in row) for row in self.lines)
        different = {
            tuple(cell.part for cell in row): (n, row) for n, row in enumerate(self.lines, 1)
        }
        wides = [(kinds[kind], self._row(*numbered)) for kind, numbered in different.items()]
        level(wides, LENGTH, self.world)
        return self.tallies

    def _down(self, cell: Laid) -> Sum:
        return self.world.span(cell.part, Turn(), cell.place).down

    def _row(self, number: int, row: Sequence[Laid]) -> Tally:
        parts = [(cell.part, self.world.span(cell.part, Turn(), cell.place).across) for cell in row]
        return gathered(f"row {number} of {self.name}", parts, row[0].place)

    @cached_property
    def tallies(self) -> tuple[Tally, Tally]:
        """Finished width, and length from the uppermost points to the lowest."""
        if not self.lines:
            empty = Tally(self.name, (), self.unit.place)
            return empty, empty
        across = Tally(self.name, self._row(1, self.lines[0]).terms, self.unit.place)
        high = self._down(self.lines[0][0])
        label = self.lines[0][0].part
        down = [Term(label, 1, high)]
        if len(self.lines) > 1:
            down.append(Term("rows half over", len(self.lines) - 1, high * STEP))
        return across, Tally(self.name, tuple(down), self.unit.place)

    def line_tallies(self, number: int, line: tuple[Laid, ...]) -> tuple[Tally, Tally]:
        """Finished width of one row, and its height from point to point."""
        what = f"row {number} of {self.name}"
        return self._row(number, line), tally(what, [(line[0].part, self._down(line[0]))])

    # ---- once all is solved

    def need(self) -> Counter[str]:
        """How many of each part one layout takes."""
        return Counter(cell.part for row in self.lines for cell in row)

    def strips(self, units: int) -> list[StripNeed]:
        """No cell is a strip here."""
        del units
        return []

    def placed(self, x: Exact, y: Exact) -> tuple[Line, ...]:
        """The rows in place, the first at (x, y)."""
        return tuple(self._line(row, x, at) for row, at in self._tops(y))

    def _tops(self, y: Exact) -> Iterator[tuple[tuple[Laid, ...], Exact]]:
        if self.lines:
            step = self._high * STEP
            for number, row in enumerate(self.lines):
                yield row, y + step * number

    @property
    def _high(self) -> Exact:
        return self.world.length(self._down(self.lines[0][0]))

    def _line(self, row: Sequence[Laid], x: Exact, y: Exact) -> Line:
        parts, at = [], x
        for cell in row:
            wide = self.world.length(self.world.span(cell.part, Turn(), cell.place).across)
            outline = Outline((*self._upper(cell, at, y, wide), *self._lower(cell, at, y, wide)))
            parts.append(Placed(cell.part, cell.turn, at, y, wide, self._high, outline))
            at = at + wide
        return Line("row", tuple(parts), at - x, self._high)

    def _upper(self, cell: Laid, x: Exact, y: Exact, wide: Exact) -> tuple[Spot, ...]:
        """The corners along the top from the left: shoulder, point, shoulder."""
        shoulder = y + self._high / 4
        if self._whole(cell):
            return Spot(x, shoulder), Spot(x + wide / 2, y), Spot(x + wide, shoulder)
        if _begins(cell):
            return Spot(x, y), Spot(x + wide, shoulder)
        return Spot(x, shoulder), Spot(x + wide, y)

    def _lower(self, cell: Laid, x: Exact, y: Exact, wide: Exact) -> tuple[Spot, ...]:
        """The corners along the bottom from the right."""
        low = y + self._high
        upper = self._upper(cell, x, y, wide)
        return tuple(Spot(spot.x, low - (spot.y - y)) for spot in reversed(upper))

    def corners(self, x: Exact, y: Exact) -> tuple[Placed, ...]:
        """Hexagons need no corners."""
        del x, y
        return ()

    def edge(self, x: Exact, y: Exact) -> Outline | None:
        """The outline of the whole: straight at the sides, pointed at top and bottom."""
        if not self.lines:
            return None
        rows = list(self._tops(y))
        upper = self._zigzag(*rows[0], x)
        low = rows[-1][1] + self._high
        lower = [Spot(spot.x, low - (spot.y - rows[-1][1])) for spot in self._zigzag(*rows[-1], x)]
        return Outline((*upper, *reversed(lower)))

    def _zigzag(self, row: Sequence[Laid], y: Exact, x: Exact) -> list[Spot]:
        """The corners along the top of a row, each once."""
        spots: list[Spot] = []
        for part, cell in zip(self._line(row, x, y).parts, row, strict=True):
            spots += self._upper(cell, part.x, y, part.across)
        return list(dict.fromkeys(spots))


def _begins(cell: Laid) -> bool:
    """Whether a half hexagon lies as made, at the left end of its row."""
    return (cell.turn.quarters == 2) == cell.turn.mirrored
