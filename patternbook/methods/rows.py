"""Rows and columns: cells laid side by side and repeated to fill, with or without sashing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from typing import NamedTuple, TypeVar

from patternbook.exact import Exact
from patternbook.linear import Sum
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import Line, Placed, Turn
from patternbook.methods.world import Rule, Span, Tally, Term, World, here, tally
from patternbook.notice import Place
from patternbook.value import CellsValue, CountValue, PerSize

T = TypeVar("T")

MOST_CELLS = 50_000
UNEVEN = Rule("row-height", "R1", "Parts side by side must be equally high: check the odd one.")
LENGTH = Rule("row-length", "R8", None)
SASH = Rule("sash-length", "R7", "A sash is as long as the block beside it.")
STONE = Rule("cornerstone", "R7", "A cornerstone is as wide as the sashes that meet there.")


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


def lines(name: str, unit: WrittenLayout, world: World) -> tuple[tuple[Laid, ...], ...]:
    """The cells of each row (or column) in this size, repeated until the layout is full."""
    if unit.rows is not None and unit.columns is not None:
        message = f"'{name}' has both rows and columns; the columns are not read."
        world.error("rows-and-columns", "R10", message, unit.place, "Keep one of the two.")
    texts = _texts(name, unit, world)
    written = [_cells(text, world) for text in texts]
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


def _cells(text: CellsValue, world: World) -> tuple[Laid, ...]:
    laid = [cell for cell in world.laid(text) if cell.part is not None]
    return tuple(Laid(str(cell.part), turn_of(cell.turns), text.place) for cell in laid)


class Frame(NamedTuple):
    """Sashing of a layout: the parts, and whether a ring of them goes round the outside."""

    sash: Laid
    cross: Laid
    stones: str | None
    round: bool

    @property
    def rim(self) -> int:
        """How many more sashes than blocks stand in a row: one with a ring, else one fewer."""
        return 1 if self.round else -1


def frame(unit: WrittenLayout, world: World) -> Frame | None:
    """The layout's sashing in this size."""
    sashing = unit.sashing
    if sashing is None:
        return None
    sash = Laid(str(here(sashing.sash, world.size)), Turn(), sashing.place)
    cross, stones = here(sashing.cross, world.size), here(sashing.stones, world.size)
    over = Laid(str(cross), Turn(), sashing.place) if cross else sash._replace(turn=Turn(1))
    ring = sashing.round.at(world.size) == "yes"
    return Frame(sash, over, str(stones) if stones else None, ring)


def level(tallies: Sequence[tuple[int, Tally]], rule: Rule, world: World) -> None:
    """Hold all sums equal, each met so many times. What most agree on is believed; the odd one
    out is blamed."""
    values = [(times, world.known(one.sum())) for times, one in tallies]
    common: Counter[Exact] = Counter()
    for times, value in values:
        if value is not None:
            common[value] += times
    most = common.most_common(1)
    believed = next((n for n, (_, value) in enumerate(values) if most and value == most[0][0]), 0)
    for number, (_, one) in enumerate(tallies):
        if number != believed:
            world.equal(one, tallies[believed][1], rule)


class Grid:
    """The equations and places of one layout's rows; columns are rows with the sides changed."""

    def __init__(self, name: str, unit: WrittenLayout, world: World) -> None:
        self.name, self.unit, self.world = name, unit, world
        self.columns = unit.rows is None
        self.word = "column" if self.columns else "row"
        self.lines = lines(name, unit, world)
        self.frame = frame(unit, world)

    def span(self) -> tuple[Tally, Tally]:
        """Add the equations of rows; the tallies of the longest way and the other, before
        borders: across and down."""
        for number, line in self._patterns():
            self._level_line(number, line)
        met = Counter(_kinds(line) for line in self.lines)
        rows = [(met[_kinds(line)], self.row_tally(n, line)) for n, line in self._patterns()]
        level(rows, LENGTH, self.world)
        if self.frame is not None and self.lines:
            self._sash_equations(self.frame)
        return self.tallies

    @cached_property
    def tallies(self) -> tuple[Tally, Tally]:
        """Finished width and length before borders, as written-out sums."""
        if not self.lines:
            empty = Tally(self.name, (), self.unit.place)
            return empty, empty
        along = self.row_tally(1, self.lines[0])
        along = Tally(self.name, along.terms, self.unit.place)
        return (self._stack(), along) if self.columns else (along, self._stack())

    def line_tallies(self, number: int, line: tuple[Laid, ...]) -> tuple[Tally, Tally]:
        """Finished width and length of one row (or column)."""
        along = self.row_tally(number, line)
        over = tally(along.what, [(line[0].part, self._of(line[0]).down)], line[0].place)
        return (over, along) if self.columns else (along, over)

    def _patterns(self) -> Iterator[tuple[int, tuple[Laid, ...]]]:
        """Each different row once, with its number from 1."""
        seen: set[tuple[tuple[str, Turn], ...]] = set()
        for number, line in enumerate(self.lines, 1):
            cells = _kinds(line)
            if cells not in seen:
                seen.add(cells)
                yield number, line

    def _of(self, cell: Laid) -> Span:
        """A cell's length along its row, and its height across it."""
        across, down = self.world.span(cell.part, cell.turn, cell.place)
        return Span(down, across) if self.columns else Span(across, down)

    def _level_line(self, number: int, line: tuple[Laid, ...]) -> None:
        word = "width" if self.columns else "height"
        met = Counter(_kinds(line))
        different = {(cell.part, cell.turn): cell for cell in line}
        tallies = []
        for kind, cell in different.items():
            what = f"the {word} of {cell.part} in {self.word} {number}"
            one = tally(what, [(cell.part, self._of(cell).down)], cell.place)
            tallies.append((met[kind], one))
        level(tallies, UNEVEN, self.world)

    def row_tally(self, number: int, line: tuple[Laid, ...]) -> Tally:
        """The parts of one row in order, with the sashes between."""
        parts = [(cell.part, self._of(cell).across) for cell in line]
        if self.frame is not None:
            sash = (self.frame.sash.part, self._of(self.frame.sash).across)
            parts = with_between(parts, sash, self.frame.round)
        return gathered(f"{self.word} {number} of {self.name}", parts, line[0].place)

    def _stack(self) -> Tally:
        parts = [
            (self._line_label(number), self._of(line[0]).down)
            for number, line in enumerate(self.lines, 1)
        ]
        if self.frame is not None:
            cross = (self.frame.cross.part, self._of(self.frame.cross).down)
            parts = with_between(parts, cross, self.frame.round)
        return gathered(self.name, parts, self.unit.place)

    def _line_label(self, number: int) -> str:
        line = self.lines[number - 1]
        alike = all(cell.part == line[0].part for cell in line)
        return line[0].part if alike else f"{self.word}s"

    def _sash_equations(self, frame: Frame) -> None:
        first, world = self.lines[0], self.world
        if self.columns:
            message = f"'{self.name}' is laid in columns; sashing goes with rows."
            world.error("sash-columns", "R10", message, self.unit.place, "Write it as `rows:`.")
            return
        sash, cross = self._of(frame.sash), self._of(frame.cross)
        for number, line in self._patterns():
            self._same(
                f"sash {frame.sash.part}", sash.down, f"row {number}", self._of(line[0]).down
            )
        if frame.stones is None:
            row = self.row_tally(1, first)
            one = Tally(
                f"the cross sash {frame.cross.part}",
                (Term(frame.cross.part, 1, cross.across),),
                frame.cross.place,
            )
            world.equal(one, row, SASH)
            return
        self._stone_equations(frame, sash, cross)

    def _stone_equations(self, frame: Frame, sash: Span, cross: Span) -> None:
        stone = self.world.span(frame.stones or "", Turn(), frame.sash.place)
        for cell in {cell.part: cell for _, line in self._patterns() for cell in line}.values():
            across = self._of(cell).across
            self._same(f"cross sash {frame.cross.part}", cross.across, cell.part, across)
        self._same(
            f"cornerstone {frame.stones}",
            stone.across,
            f"sash {frame.sash.part}",
            sash.across,
            STONE,
        )
        self._same(
            f"cornerstone {frame.stones}",
            stone.down,
            f"cross sash {frame.cross.part}",
            cross.down,
            STONE,
        )

    def _same(self, one: str, a: Sum, other: str, b: Sum, rule: Rule = SASH) -> None:
        place = self.frame.sash.place if self.frame else None
        self.world.equal(tally(one, [(one, a)], place), tally(other, [(other, b)], place), rule)

    # ---- once all is solved

    def need(self) -> Counter[str]:
        """How many of each part one layout takes, borders apart."""
        parts = Counter(cell.part for line in self.lines for cell in line)
        if self.frame is not None and self.lines:
            cells, rows, rim = len(self.lines[0]), len(self.lines), self.frame.rim
            parts[self.frame.sash.part] += (cells + rim) * rows
            parts[self.frame.cross.part] += (1 if self.frame.stones is None else cells) * (
                rows + rim
            )
            if self.frame.stones is not None:
                parts[self.frame.stones] += (cells + rim) * (rows + rim)
        return parts

    def placed(self, x: Exact, y: Exact) -> tuple[Line, ...]:
        """The rows in place, the first at (x, y), sash rows between them."""
        at, made = (x if self.columns else y), []
        rows: list[tuple[str, list[Laid]]] = [
            (self.word, self._with_sashes(line)) for line in self.lines
        ]
        if self.frame is not None:
            cross = ("sash", self._sash_row(self.frame))
            rows = with_between(rows, cross, self.frame.round)
        for role, cells in rows:
            line = self._line(role, cells, (at, y) if self.columns else (x, at))
            made.append(line)
            at = at + (line.across if self.columns else line.down)
        return tuple(made)

    def _with_sashes(self, line: tuple[Laid, ...]) -> list[Laid]:
        if self.frame is None:
            return list(line)
        return with_between(list(line), self.frame.sash, self.frame.round)

    def _sash_row(self, frame: Frame) -> list[Laid]:
        if frame.stones is None:
            return [frame.cross]
        stone = Laid(frame.stones, Turn(), frame.sash.place)
        return with_between([frame.cross] * len(self.lines[0]), stone, frame.round)

    def _line(self, role: str, cells: Sequence[Laid], corner: tuple[Exact, Exact]) -> Line:
        x, y = corner
        parts = []
        for cell in cells:
            span = self.world.span(cell.part, cell.turn, cell.place)
            across, down = self.world.length(span.across), self.world.length(span.down)
            parts.append(Placed(cell.part, cell.turn, x, y, across, down))
            x, y = (x, y + down) if self.columns else (x + across, y)
        first = parts[0]
        if self.columns:
            return Line("column", tuple(parts), first.across, y - corner[1])
        return Line("sash" if role == "sash" else "row", tuple(parts), x - corner[0], first.down)


def _kinds(line: Iterable[Laid]) -> tuple[tuple[str, Turn], ...]:
    """A row without its place: rows alike have the same kinds."""
    return tuple((cell.part, cell.turn) for cell in line)


def with_between(items: list[T], between: T, outside: bool) -> list[T]:
    """The items with one thing between every two, and at both ends where `outside`."""
    mixed = [thing for item in items for thing in (between, item)]
    return [*mixed, between] if outside else mixed[1:]


def gathered(what: str, parts: Sequence[tuple[str, Sum]], place: Place | None) -> Tally:
    """A tally with all parts of one name and length counted together, in order of meeting."""
    terms: dict[tuple[str, int], Term] = {}
    sums: list[Sum] = []
    for label, each in parts:
        kind = next((i for i, known in enumerate(sums) if known == each), len(sums))
        if kind == len(sums):
            sums.append(each)
        old = terms.get((label, kind))
        terms[label, kind] = Term(label, old.times + 1 if old else 1, each)
    return Tally(what, tuple(terms.values()), place)
