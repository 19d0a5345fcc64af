"""Blocks set on point: rows on the slant, triangles of cloth along the edges and corners."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import cached_property
from typing import Final, NamedTuple

from patternbook.exact import ROOT2, Exact
from patternbook.linear import Sum
from patternbook.methods.cells import Laid, Lines, cells_of, lines, repeated
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import Line, Outline, Placed, Spot, Turn
from patternbook.methods.sashing import Frame
from patternbook.methods.setting_triangles import Triangle, fitted, larger_or_smaller
from patternbook.methods.sums import level
from patternbook.methods.world import Rule, StripNeed, Tally, Term, World, here, tally

SQUARE: Final = Rule("on-point-square", "R22", "A block set on point must be square.")
ONE_SIZE: Final = Rule("on-point-size", "R22", "Blocks set on point must all be of one size.")
HALF: Final = Fraction(1, 2)


class Cell(NamedTuple):
    """One block: its middle in whole diagonals of a block, across and down."""

    laid: Laid
    across: Fraction
    down: Fraction


class OnPoint:
    """The equations and places of blocks set on point: `across` × `down` of them in the main
    grid, and one in every gap between four."""

    columns = False
    word = "row"
    frame: Frame | None = None

    def __init__(self, name: str, unit: WrittenLayout, world: World) -> None:
        self.name, self.unit, self.world = name, unit, world
        self.lines = self._main()
        self.across = len(self.lines[0]) if self.lines else 0
        self.down = len(self.lines)
        self.between = self._between()
        side, corner = here(unit.side_triangle, world.size), here(unit.corner_triangle, world.size)
        self.sides = Triangle("side-triangle", str(side), "twice", side.place) if side else None
        self.corners_by = (
            Triangle("corner-triangle", str(corner), "once", corner.place) if corner else None
        )

    def _main(self) -> Lines:
        """The main grid, every row as long as the first; nothing where it is at fault (told)."""
        found = self._faults()
        if found is not None:
            message, hint = found
            self.world.error("on-point-rows", "R22", message, self.unit.place, hint)
            return ()
        rows = lines(self.name, self.unit, self.world)
        odd = next((n for n, row in enumerate(rows, 1) if len(row) != len(rows[0])), None)
        if odd is None:
            return rows
        message = (
            f"row {odd} of '{self.name}' has {len(rows[odd - 1])} blocks, row 1 has "
            f"{len(rows[0])}: set on point, all rows of the main grid are equally long."
        )
        hint = "The blocks in the gaps between are written under `between`."
        self.world.error("on-point-rows", "R22", message, rows[odd - 1][0].place, hint)
        return ()

    def _faults(self) -> tuple[str, str] | None:
        """What the setting cannot be written with, and what to do instead."""
        if self.unit.rows is None:
            return f"'{self.name}' is set on point and has no rows.", "Write `rows:` from the top."
        if self.unit.sashing is not None:
            hint = "Sew the sashes to each block first: a unit with `borders`, set on point."
            return f"'{self.name}' is set on point and has sashing.", hint
        return None

    def _between(self) -> Lines:
        """The blocks in the gaps: as written, else the same as in the main grid."""
        if self.across < 2 or self.down < 2:
            return ()
        unit, world = self.unit, self.world
        texts = here(unit.between, world.size) or here(unit.rows, world.size) or ()
        written = [cells_of(text, world) for text in texts]
        if not written or not all(written):
            return ()
        if not world.lays((self.across - 1) * (self.down - 1), unit.place):
            return ()
        return repeated(written, self.across - 1, self.down - 1)

    # ---- the equations

    def span(self) -> tuple[Tally, Tally]:
        """Add the equations: all blocks square and of one size, the triangles as they want."""
        kinds = Counter((cell.laid.part, cell.laid.turn) for cell in self.cells())
        first = {(cell.laid.part, cell.laid.turn): cell.laid for cell in self.cells()}
        sides = []
        for kind, laid in first.items():
            across, down = self.world.span(laid.part, laid.turn, laid.place)
            wide = tally(f"the width of {laid.part}", [(laid.part, across)], laid.place)
            high = tally(f"the length of {laid.part}", [(laid.part, down)], laid.place)
            self.world.equal(high, wide, SQUARE)
            sides.append((kinds[kind], wide))
        level(sides, ONE_SIZE, self.world)
        for triangle, finished in self._triangles():
            if not fitted(self.name, triangle, finished, self.unit, self.world):
                self.world.hopeless(self.name)
        return self.tallies

    def _triangles(self) -> Iterator[tuple[Triangle | None, Tally]]:
        """Which triangles are needed, and what the square of each finishes at."""
        label = self._label()
        if self.across + self.down > 2:
            one = Term(f"{label} × √2", 1, self.side * ROOT2)
            yield (
                self.sides or Triangle("side-triangle", "", "twice", None),
                Tally(f"the diagonal of {label}", (one,), self.unit.place),
            )
        half = Term(f"{label} ÷ √2", 1, self.side * (ROOT2 / 2))
        yield (
            self.corners_by or Triangle("corner-triangle", "", "once", None),
            Tally(f"half the diagonal of {label}", (half,), self.unit.place),
        )

    @property
    def side(self) -> Sum:
        """The finished side of a block."""
        cell = self.lines[0][0]
        return self.world.span(cell.part, cell.turn, cell.place).across

    def _label(self) -> str:
        parts = {cell.laid.part for cell in self.cells()}
        return parts.pop() if len(parts) == 1 else "the blocks"

    @cached_property
    def tallies(self) -> tuple[Tally, Tally]:
        """Finished width and length before borders: so many diagonals of a block."""
        if not self.lines:
            empty = Tally(self.name, (), self.unit.place)
            return empty, empty
        label, diagonal = f"{self._label()} on point", self.side * ROOT2
        return (
            Tally(self.name, (Term(label, self.across, diagonal),), self.unit.place),
            Tally(self.name, (Term(label, self.down, diagonal),), self.unit.place),
        )

    def line_tallies(self, number: int, line: tuple[Laid, ...]) -> tuple[Tally, Tally]:
        """Width and length of one row of the main grid, point to point."""
        across = Term(f"{self._label()} on point", len(line), self.side * ROOT2)
        down = across._replace(times=1)
        what = f"row {number} of {self.name}"
        return Tally(what, (across,), line[0].place), Tally(what, (down,), line[0].place)

    # ---- once all is solved

    def cells(self) -> Iterator[Cell]:
        """Every block with its middle, the main grid first."""
        for down, row in enumerate(self.lines):
            for across, laid in enumerate(row):
                yield Cell(laid, across + HALF, down + HALF)
        for down, row in enumerate(self.between, 1):
            for across, laid in enumerate(row, 1):
                yield Cell(laid, Fraction(across), Fraction(down))

    def need(self) -> Counter[str]:
        """How many of each part one layout takes, borders apart."""
        parts = Counter(cell.laid.part for cell in self.cells())
        if self.sides and self.across + self.down > 2:
            parts[self.sides.letter] += 2 * (self.across + self.down - 2)
        if self.corners_by and self.lines:
            parts[self.corners_by.letter] += 4
        return parts

    def strips(self, units: int) -> list[StripNeed]:
        """No cell is a strip here."""
        del units
        return []

    def placed(self, x: Exact, y: Exact) -> tuple[Line, ...]:
        """The rows on the slant from the top left, each from its lower left end; the top left
        corner of the whole is at (x, y)."""
        for triangle, finished in self._triangles():
            if triangle is not None and triangle.letter:
                larger_or_smaller(self.name, triangle, finished, self.side, self.world)
        where = _Places(self.world.length(self.side), x, y)
        slants: dict[Fraction, list[Cell]] = {}
        for cell in self.cells():
            slants.setdefault(cell.across + cell.down, []).append(cell)
        made = []
        for number, key in enumerate(sorted(slants)):
            blocks = sorted(slants[key], key=lambda cell: cell.across)
            parts = [where.block(cell, self.world) for cell in blocks]
            parts = [*self._lower(number, where), *parts, *self._upper(number, where)]
            made.append(Line("slant", tuple(parts), where.side * len(parts), where.side))
        return tuple(made)

    def _lower(self, row: int, where: _Places) -> Sequence[Placed]:
        """The triangle at the lower left end of a row on the slant, if it has one there."""
        if row == self.down - 1 or self.sides is None:
            return ()
        if row < self.down - 1:
            return (where.edge(self.sides.letter, Fraction(0), row + 1, 3),)
        return (where.edge(self.sides.letter, row - self.down + 1, self.down, 2),)

    def _upper(self, row: int, where: _Places) -> Sequence[Placed]:
        """The triangle at the upper right end of a row on the slant, if it has one there."""
        if row == self.across - 1 or self.sides is None:
            return ()
        if row < self.across - 1:
            return (where.edge(self.sides.letter, row + 1, Fraction(0), 0),)
        return (where.edge(self.sides.letter, self.across, row - self.across + 1, 1),)

    def corners(self, x: Exact, y: Exact) -> tuple[Placed, ...]:
        """The four corner triangles, clockwise from the top left."""
        if self.corners_by is None or not self.lines:
            return ()
        where = _Places(self.world.length(self.side), x, y)
        letter, across, down = self.corners_by.letter, self.across, self.down
        spots = ((0, 0), (across, 0), (across, down), (0, down))
        return tuple(where.corner(letter, *spot, turn) for turn, spot in enumerate(spots))

    def edge(self, x: Exact, y: Exact) -> Outline | None:
        """Set on point, the whole is an upright rectangle."""
        del x, y
        return None


class _Places:
    """Where things lie, counted in diagonals of a block from the top left corner."""

    def __init__(self, side: Exact, x: Exact, y: Exact) -> None:
        self.side, self.long, self.x, self.y = side, side * ROOT2, x, y

    def spot(self, across: Fraction | int, down: Fraction | int) -> Spot:
        return Spot(self.x + self.long * across, self.y + self.long * down)

    def block(self, cell: Cell, world: World) -> Placed:
        """A block on its corner; a piece of cloth with its outline."""
        laid, across, down = cell
        corner = self.spot(across - HALF, down - HALF)
        outline = None
        if not world.is_unit(laid.part):
            ends = ((0, -HALF), (HALF, 0), (0, HALF), (-HALF, 0))
            outline = Outline(tuple(self.spot(across + dx, down + dy) for dx, dy in ends))
        turn = laid.turn._replace(on_point=True)
        return Placed(laid.part, turn, *corner, self.long, self.long, outline)

    def edge(
        self, letter: str, across: Fraction | int, down: Fraction | int, quarters: int
    ) -> Placed:
        """A side triangle whose long edge has its middle there; as made it lies at the top."""
        return self._triangle(letter, EDGE, Fraction(across), Fraction(down), quarters)

    def corner(
        self, letter: str, across: Fraction | int, down: Fraction | int, quarters: int
    ) -> Placed:
        """A corner triangle; as made it lies at the top left."""
        return self._triangle(letter, CORNER, Fraction(across), Fraction(down), quarters)

    def _triangle(
        self, letter: str, shape: Sequence[Point], across: Fraction, down: Fraction, quarters: int
    ) -> Placed:
        points = [_turned(point, quarters) for point in shape]
        spots = tuple(self.spot(across + dx, down + dy) for dx, dy in points)
        left, top = min(spot.x for spot in spots), min(spot.y for spot in spots)
        wide = max(spot.x for spot in spots) - left
        high = max(spot.y for spot in spots) - top
        return Placed(letter, Turn(quarters), left, top, wide, high, Outline(spots))


Point = tuple[Fraction, Fraction]
_NO: Final = Fraction(0)
EDGE: Final[tuple[Point, ...]] = ((-HALF, _NO), (HALF, _NO), (_NO, HALF))
CORNER: Final[tuple[Point, ...]] = ((_NO, _NO), (HALF, _NO), (_NO, HALF))


def _turned(point: Point, quarters: int) -> Point:
    """The point a quarter turn clockwise so many times (y runs downward)."""
    x, y = point
    for _ in range(quarters):
        x, y = -y, x
    return x, y
