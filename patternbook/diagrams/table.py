"""A layout laid apart on the table: lines and parts with gaps, repeats left out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from patternbook.diagrams import labels
from patternbook.diagrams.laid import Lying, any_turned, draw, parts, turn_mark
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.pressing import arrow, clear
from patternbook.diagrams.words import repeats
from patternbook.quilt.pressing import LinePressing, Way
from patternbook.quilt.records import LayoutMade, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count

GAP: Final = 9.0  # points between parts, less where they are many
SHARE: Final = 80.0  # points that all gaps of a row may take
SHARES: Final = (0.12, 0.88, 0.25, 0.75)  # where else on a seam an arrow may stand
HEADS: Final = 5.0  # points that an arrow's ends and its white slip take beyond it
SKIP: Final = 22.0  # points where a repeat is left out


def shortened(things: Sequence[object]) -> tuple[int, ...]:
    """The places that are drawn of a line that goes on repeating: the first two repeats and the
    last; all where that saves nothing."""
    period = len(repeats(things))
    first, last = 2 * period, period + len(things) % period
    if first + last + period > len(things):
        return tuple(range(len(things)))
    return (*range(first), *range(len(things) - last, len(things)))


def kinds(made: LayoutMade) -> list[tuple[str, tuple[object, ...]]]:
    """Every line as its role and its parts as they are turned."""
    return [(line.role, tuple((one.part, one.turn) for one in line.parts)) for line in made.lines]


@dataclass(frozen=True)
class Row:
    """One line on the table: its number (sash rows have none), its parts, and between which of
    them seams are shown; a part that follows a repeat left out has no seam before it."""

    number: int | None
    parts: tuple[Lying, ...]
    skipped: tuple[bool, ...]
    pressed: LinePressing
    kept: tuple[int, ...]


class Table:
    """A layout laid apart on the sheet."""

    def __init__(self, size: Size, unit: Unit, made: LayoutMade, pen: Pen) -> None:
        self.size = size
        self.unit = unit
        self.made = made
        self.pen = pen
        self.across = made.by == "rows"
        self.pressing = size.plans.sewing.pressing[unit.name]

    @cached_property
    def lines(self) -> tuple[int, ...]:
        """The lines that are drawn."""
        return shortened(kinds(self.made))

    @cached_property
    def places(self) -> tuple[tuple[int, ...], ...]:
        """The parts of each line that are drawn; repeats are left out of all lines or of none."""
        lines = [parts_ for _, parts_ in kinds(self.made)]
        short = [shortened(line) for line in lines]
        if len({(len(line), places) for line, places in zip(lines, short, strict=True)}) > 1:
            return tuple(tuple(range(len(line))) for line in lines)
        return tuple(short)

    @cached_property
    def gap(self) -> float:
        """Between the parts of a line."""
        longest = max(len(places) for places in self.places)
        return self.pen.pt(min(GAP, SHARE / max(1, longest - 1)))

    @cached_property
    def rows(self) -> tuple[Row, ...]:
        """The lines laid out one after the other."""
        lying = parts(self.size, self.unit)
        found: list[Row] = []
        at, before = 0.0, -1
        numbers = iter(range(1, len(self.made.lines) + 1))
        called = [None if line.role == "sash" else next(numbers) for line in self.made.lines]
        for index in self.lines:
            if index != before + 1:
                at += self.pen.pt(SKIP)
            before = index
            line = self.made.lines[index]
            row = self._row(index, called[index], [lying[part] for part in line.parts], at)
            found.append(row)
            at += float(line.down if self.across else line.across) + self.pen.pt(GAP + 2)
        return tuple(found)

    def _row(self, index: int, number: int | None, line: Sequence[Lying], at: float) -> Row:
        laid, skipped, along = [], [], 0.0
        kept = self.places[index]
        for place, part_at in enumerate(kept):
            part = line[part_at]
            missing = place > 0 and part_at != kept[place - 1] + 1
            along += self.pen.pt(SKIP) - self.gap if missing else 0.0
            x, y = (along, at) if self.across else (at, along)
            laid.append(part.moved(x - part.x, y - part.y))
            skipped.append(missing)
            along += self._long(part) + self.gap
        return Row(number, tuple(laid), tuple(skipped), self.pressing.lines[index], kept)

    def drawn(self) -> int:
        """Parts, names, numbers and arrows; how many names did not fit their parts."""
        pen, units = self.pen, self.size.quilt.units
        turned = any_turned(self.size, self.unit)
        bare: dict[str, labels.Tag] = {}
        named: set[str] = set()
        for row in self.rows:
            for part in row.parts:
                found = draw(pen, self.size, part)
                is_unit = part.part in units
                if turned and is_unit:
                    turn_mark(pen, part)
                fits = labels.named if is_unit else labels.lettered
                if fits(pen, part, found, part.part):
                    named.add(part.part)
                else:
                    self._last(bare, part)
        by_hand = self.made.setting == "hexagons"  # over papers, where nothing is pressed
        aside = [] if by_hand else [self._pressed(row) for row in self.rows]
        if not by_hand:
            self._between()
        self._numbered()
        self._left_out()
        tags = [tag for part, tag in bare.items() if part not in named]
        if self.across and len(self.rows) > 1:
            labels.beside(pen, tags, self._right + pen.pt(46 if any(aside) else 12))
        else:
            labels.under(pen, tags, self._low)
        return len(tags)

    def _last(self, bare: dict[str, labels.Tag], part: Lying) -> None:
        """Keep the last part of its name in the first row that has one: its name stands beside."""
        x, y = part.middle
        y += part.down / 4 if self.across else 0  # clear of the arrow beside the row
        before = bare.get(part.part)
        if before is None or (self.across and before.y == y):
            bare[part.part] = labels.Tag(x, y, part.part)

    @cached_property
    def _right(self) -> float:
        return max(part.x + part.across for row in self.rows for part in row.parts)

    @cached_property
    def _low(self) -> float:
        return max(part.y + part.down for row in self.rows for part in row.parts)

    def _numbered(self) -> None:
        """The number of every row of blocks at its start."""
        pen = self.pen
        for row in self.rows if len(self.made.lines) > 1 else ():
            if row.number is not None:
                x, y = row.parts[0].middle
                at = (-pen.pt(11), y) if self.across else (x, -pen.pt(11))
                count(pen, *at, row.number, size=8)

    def _pressed(self, row: Row) -> bool:
        """One arrow beside a line that is pressed one way, else one over every seam; whether
        arrows stand at the right."""
        pen, way = self.pen, row.pressed.uniform
        if way is not None and len(row.pressed.seams) > 1:
            x, y = row.parts[0].middle
            at = (self._right + pen.pt(14), y) if self.across else (x, self._low + pen.pt(14))
            arrow(pen, *at, way, upright=self.across, long=18)
            return self.across
        for place in range(1, len(row.parts)):
            if not row.skipped[place]:
                seam = row.pressed.seams[row.kept[place] - 1]
                one, other = row.parts[place - 1 : place + 1]
                at, long = self._seam(one, other)
                arrow(pen, *at, seam, upright=self.across, long=long)
        return False

    def _seam(self, one: Lying, other: Lying) -> tuple[tuple[float, float], float]:
        """The place between two parts where an arrow is out of the way of their names, and how
        long it may be there."""
        places = self._places_between(one, other)
        long = GAP + HEADS
        for at in places:
            if clear(self.pen, *at, upright=self.across, long=long):
                return at, GAP
        return places[0], min(GAP, self.gap / self.pen.pt(1) - HEADS)

    def _places_between(self, one: Lying, other: Lying) -> list[tuple[float, float]]:
        """Along the seam: in the middle, or near the start where the parts are long."""
        if self.across:
            low = min(one.down, other.down)
            first = 0.5 if low < 2 * max(one.across, other.across) else 0.12
            x = (one.x + one.across + other.x) / 2
            return [(x, one.y + low * share) for share in (first, *SHARES)]
        wide = min(one.across, other.across)
        y = (one.y + one.down + other.y) / 2
        return [(one.x + wide * share, y) for share in (0.5, *SHARES)]

    def _between(self) -> None:
        """Arrows over the seams between the lines: one for all beside them where they are all
        pressed one way, else one each, at the last of the largest parts."""
        if len(set(self.pressing.between)) == 1:
            self._between_all(self.pressing.between[0])
            return
        for index, row, below in zip(self.lines, self.rows, self.rows[1:], strict=False):
            if index + 1 not in self.lines:
                continue
            one, other = max(reversed(row.parts), key=self._long), below.parts[0]
            way = self.pressing.between[index]
            if self.across:
                at = (one.x + one.across * 0.25, (one.y + one.down + other.y) / 2)
            else:
                at = ((one.x + one.across + other.x) / 2, one.y + one.down * 0.25)
            arrow(self.pen, *at, way, upright=not self.across, long=GAP + 1)

    def _between_all(self, way: Way) -> None:
        """One arrow over the seam between the first two lines, out beside them."""
        first, below = self.rows[0].parts[-1], self.rows[1].parts[-1]
        far = self.pen.pt(36)
        if self.across:
            at = (self._right + far, (first.y + first.down + below.y) / 2)
        else:
            at = ((first.x + first.across + below.x) / 2, self._low + far)
        arrow(self.pen, *at, way, upright=not self.across, long=18)

    def _long(self, part: Lying) -> float:
        return part.across if self.across else part.down

    def _left_out(self) -> None:
        """Three dots where a repeat is left out."""
        pen = self.pen
        for row in self.rows:
            for part, skipped in zip(row.parts, row.skipped, strict=True):
                if skipped:
                    x, y = part.middle
                    far = pen.pt(SKIP / 2)
                    at = (part.x - far, y) if self.across else (x, part.y - far)
                    self._dots(*at, level=self.across)
        for index, below in zip(self.lines, self.rows, strict=True):
            if index and index - 1 not in self.lines:
                first = below.parts[0]
                x, y = first.middle
                far = pen.pt((SKIP + GAP + 2) / 2)
                at = (x, first.y - far) if self.across else (first.x - far, y)
                self._dots(*at, level=not self.across)

    def _dots(self, x: float, y: float, *, level: bool) -> None:
        for step in (-1, 0, 1):
            far = self.pen.pt(5 * step)
            self.pen.dot(x + (far if level else 0), y + (0 if level else far), 2.4)
