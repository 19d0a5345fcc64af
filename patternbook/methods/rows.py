"""Rows and columns: cells laid side by side and repeated to fill, with or without sashing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property

from patternbook.exact import Exact
from patternbook.linear import Sum
from patternbook.methods.cells import Laid, Lines, lines
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import Line, Outline, Placed, Turn
from patternbook.methods.row_figures import sole_template, stated_side, template_place
from patternbook.methods.sashing import Frame, frame, with_between
from patternbook.methods.sums import gathered, level
from patternbook.methods.world import Rule, Span, StripNeed, Tally, Term, World, tally

UNEVEN = Rule("row-height", "R1", "Parts side by side must be equally high: check the odd one.")
MATING = Rule("template-seam", "R13", "Edges that are sewn together are equally long.")
LENGTH = Rule("row-length", "R8", None)
SASH = Rule("sash-length", "R7", "A sash is as long as the block beside it.")
STONE = Rule("cornerstone", "R7", "A cornerstone is as wide as the sashes that meet there.")


class Grid:
    """The equations and places of one layout's rows; columns are rows with the sides changed."""

    def __init__(self, name: str, unit: WrittenLayout, world: World) -> None:
        self.name, self.unit, self.world = name, unit, world
        self.columns = unit.rows is None
        self.word = "column" if self.columns else "row"
        self.lines = _told_once(lines(name, unit, world))
        self.frame = frame(unit, world)
        # Of a row whose parts differ in height, and of rows that differ in length, the one that
        # the others are held to.
        self._high: dict[tuple[tuple[str, Turn], ...], Laid] = {}
        self._long = 0

    def span(self) -> tuple[Tally, Tally]:
        """Add the equations of rows; the tallies of the longest way and the other, before
        borders: across and down."""
        for number, line in self._patterns():
            self._level_line(number, line)
        met = Counter(_kinds(line) for line in self.lines)
        patterns = list(self._patterns())
        rows = [(met[_kinds(line)], self.row_tally(n, line)) for n, line in patterns]
        rules = [MATING if sole_template(line, self.world) else LENGTH for _, line in patterns]
        wanted = stated_side(self.name, self.unit, "across", self.columns, self.world)
        believed = level(rows, rules, self.world, wanted)
        self._long = patterns[believed][0] - 1 if patterns else 0
        if self.frame is not None and self.lines:
            self._sash_equations(self.frame)
        return self.tallies

    @cached_property
    def tallies(self) -> tuple[Tally, Tally]:
        """Finished width and length before borders, as written-out sums."""
        if not self.lines:
            empty = Tally(self.name, (), self.unit.place)
            return empty, empty
        along = self.row_tally(self._long + 1, self.lines[self._long])
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
        across, down = self._lying(cell)
        return Span(down, across) if self.columns else Span(across, down)

    def _lying(self, cell: Laid) -> Span:
        """A cell's width and length on the table. A strip is as long as each place wants it."""
        if not self.world.is_strip(cell.part):
            return self.world.span(cell.part, cell.turn, cell.place)
        wide = self.world.strip_width(cell.part, cell.place)
        long = self._strip_length(cell)
        return Span(long, wide) if cell.turn.sideways else Span(wide, long)

    def _strip_length(self, cell: Laid) -> Sum:
        """The length of a strip in one written row, for the equations to find."""
        spot = f"{cell.place.line}:{cell.place.column}" if cell.place else ""
        turn = str(cell.turn.quarters % 2)
        return self.world.unknown(("units", self.name, "strip", cell.part, turn, spot))

    def _level_line(self, number: int, line: tuple[Laid, ...]) -> None:
        word = "width" if self.columns else "height"
        kinds = _kinds(line)
        met = Counter(kinds)
        different = {(cell.part, cell.turn): cell for cell in line}
        tallies = []
        for kind, cell in different.items():
            what = f"the {word} of {cell.part} in {self.word} {number}"
            place = template_place(cell.part, self.world) or cell.place
            one = tally(what, [(cell.part, self._of(cell).down)], place)
            tallies.append((met[kind], one))
        rules = [
            MATING if template_place(cell.part, self.world) else UNEVEN
            for cell in different.values()
        ]
        believed = level(tallies, rules, self.world, self._wanted_high(line))
        self._high[kinds] = list(different.values())[believed]

    def _wanted_high(self, line: tuple[Laid, ...]) -> Exact | None:
        """What the height of all rows leaves for those like this one, where that is known."""
        whole = stated_side(self.name, self.unit, "down", self.columns, self.world)
        if whole is None or self.frame is not None:
            return None
        alike = [other for other in self.lines if _kinds(other) == _kinds(line)]
        for other in self.lines:
            high = self.world.known(self._of(other[0]).down)
            if other not in alike:
                if high is None:
                    return None
                whole = whole - high
        return whole / len(alike)

    def row_tally(self, number: int, line: tuple[Laid, ...]) -> Tally:
        """The parts of one row in order, with the sashes between."""
        parts = [(cell.part, self._of(cell).across) for cell in line]
        if self.frame is not None:
            sash = (self.frame.sash.part, self._of(self.frame.sash).across)
            parts = with_between(parts, sash, self.frame.round)
        place = sole_template(line, self.world) or line[0].place
        return gathered(f"{self.word} {number} of {self.name}", parts, place)

    def _stack(self) -> Tally:
        parts = [
            (self._line_label(number), self._of(self._high.get(_kinds(line), line[0])).down)
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
            if len(self.lines) == 1 and not frame.round:  # nothing lies between rows
                return
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
        parts: Counter[str] = Counter()
        for cell, number in self._counted():
            parts[cell.part] += number
        return parts

    def _counted(self) -> Iterator[tuple[Laid, int]]:
        """Every cell, sash and cornerstone, and how many of it there are."""
        yield from Counter(cell for line in self.lines for cell in line).items()
        if self.frame is None or not self.lines:
            return
        cells, rows, rim = len(self.lines[0]), len(self.lines), self.frame.rim
        yield self.frame.sash, (cells + rim) * rows
        stones = self.frame.stones
        yield self.frame.cross, (1 if stones is None else cells) * (rows + rim)
        if stones is not None:
            stone = Laid(stones, Turn(), self.frame.sash.place)
            yield stone, (cells + rim) * (rows + rim)

    def strips(self, units: int) -> list[StripNeed]:
        """The lengths of strip that so many layouts take; told where nothing fixes one."""
        lengths: Counter[tuple[str, Exact]] = Counter()
        for cell, number in self._counted():
            if self.world.is_strip(cell.part):
                form = self._strip_length(cell)
                if self.world.known(form) is None:
                    self._unfixed(cell)
                long = self.world.length(form) + self.world.length(self.world.seam) * 2
                lengths[cell.part, long] += number * units
        return [
            StripNeed(letter, self.name, long, number, whole=False)
            for (letter, long), number in lengths.items()
        ]

    def _unfixed(self, cell: Laid) -> None:
        message = f"nothing fixes the length of the strip {cell.part} in '{self.name}'."
        hint = f"State its length: {cell.part}'s cut as width x length instead of x WOF."
        self.world.error("not-fixed", "R10", message, cell.place, hint)

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
            span = self._lying(cell)
            across, down = self.world.length(span.across), self.world.length(span.down)
            parts.append(Placed(cell.part, cell.turn, x, y, across, down))
            x, y = (x, y + down) if self.columns else (x + across, y)
        first = parts[0]
        if self.columns:
            return Line("column", tuple(parts), first.across, y - corner[1])
        return Line("sash" if role == "sash" else "row", tuple(parts), x - corner[0], first.down)

    def corners(self, x: Exact, y: Exact) -> tuple[Placed, ...]:
        """Straight rows have no corners of their own."""
        del x, y
        return ()

    def edge(self, x: Exact, y: Exact) -> Outline | None:
        """Straight rows come to an upright rectangle."""
        del x, y
        return None


def _kinds(line: Iterable[Laid]) -> tuple[tuple[str, Turn], ...]:
    """A row without its place: rows alike have the same kinds."""
    return tuple((cell.part, cell.turn) for cell in line)


def _told_once(rows: Lines) -> Lines:
    """Rows that are written alike more than once all as the first of them."""
    first = {_kinds(row): row for row in reversed(rows)}
    return tuple(first[_kinds(row)] for row in rows)
