"""The steps of a layout: like rows joined, the rows joined to one another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final, Literal

from patternbook.exact import ROOT3, Exact
from patternbook.quilt.edges import Joining
from patternbook.quilt.meeting import Meetings
from patternbook.quilt.pressing import LinePressing, PressingPlan
from patternbook.quilt.records import LayoutMade, Line, Placed, Quilt, Sides, Unit
from patternbook.quilt.slanting import as_placed, seams_between, triangle
from patternbook.sewing.counting import laid, taken
from patternbook.sewing.records import LinesStep, LineStep, Pressed, Step
from patternbook.sewing.rounds import Joined, rounds

# Along a zigzag of hexagons two sides are sewn for every √3 sides of its width.
HEXAGON_SEAM: Final = ROOT3.inverse() * 2


class LayoutSteps:
    """One layout's steps before its borders, of which `make` are sewn."""

    def __init__(
        self, unit: Unit, made: LayoutMade, plan: PressingPlan, quilt: Quilt, meetings: Meetings
    ) -> None:
        self.unit, self.made, self.plan = unit, made, plan
        self.quilt, self.meetings = quilt, meetings
        self.seams = Exact(quilt.seam * 2)

    def steps(self, make: int) -> Iterator[Step]:
        """Each different line with its like, then all lines; a line of one part needs no seam."""
        for lines in self._alike():
            yield self._line(lines, make)
        if len(self.made.lines) > 1 or self.made.corners:
            yield self._lines(make)

    def alone(self) -> tuple[str, ...]:
        """The parts that no line joins, each being a line by itself."""
        if self._bare():
            return ()
        return tuple(line.parts[0].part for line in self.made.lines if len(line.parts) == 1)

    def _bare(self) -> bool:
        """Whether the unit is one single part, with nothing round it."""
        lines, around = self.made.lines, self.made.borders or self.made.corners
        return len(lines) == 1 and len(lines[0].parts) == 1 and not around

    def _alike(self) -> list[tuple[int, ...]]:
        """The lines that hold the same parts in one order, by their numbers from 0."""
        alike: dict[tuple[object, ...], list[int]] = {}
        for number, line in enumerate(self.made.lines):
            if len(line.parts) > 1 or self._bare():
                key = (line.role, *((part.part, part.turn) for part in _named(line)))
                alike.setdefault(key, []).append(number)
        return [tuple(numbers) for numbers in alike.values()]

    def _line(self, numbers: tuple[int, ...], make: int) -> LineStep:
        line, names = self.made.lines[numbers[0]], _names(self.made.lines[numbers[0]])
        seams, all_ = len(line.parts) - 1, len(numbers) * make
        over = line.across if line.role == "column" else line.down
        papers = self.made.setting == "hexagons"
        fillers = sum(map(triangle, line.parts)) if line.role == "slant" else 0
        matches, same_way = _meets(self.meetings.line(self.unit.name, numbers[0]))
        return LineStep(
            unit=self.unit.name,
            kind="line",
            one=len(numbers),
            make=all_,
            parts=taken(names, all_),
            measure=Sides(line.across - line.down * fillers + self.seams, line.down + self.seams),
            seams=seams,
            seam_length=(over / 2 if papers else over + self.seams) * (seams * all_),
            matches=matches,
            same_way=same_way,
            rounds=() if self._odd else rounds(names, self._joined(line), all_),
            press=() if papers else self.plan.lines[numbers[0]].seams,
            role=line.role,
            numbers=self._numbers(numbers),
            lines=numbers,
            sequence=laid(_named(line)),
            drift=self._drift(seams),
            pressed=self._pressed(numbers),
            triangles=fillers,
            papers=papers,
        )

    def _lines(self, make: int) -> LinesStep:
        lines, corners = self.made.lines, self.made.corners
        seams = len(lines) - 1 + len(corners)
        size, upright = self.made.before_borders, self.made.by == "columns"
        alone = [line.parts[0] for line in lines if len(line.parts) == 1]
        matches, same_way = _meets(self.meetings.lines(self.unit.name))
        return LinesStep(
            unit=self.unit.name,
            kind="lines",
            one=1,
            make=make,
            parts=taken((part.part for part in (*alone, *corners)), make),
            measure=size,
            seams=seams,
            seam_length=self._between(size.down if upright else size.across) * make,
            matches=matches,
            same_way=same_way,
            rounds=() if self._odd else rounds(_ends(lines), self._stacked(lines), make),
            press=() if self.made.setting == "hexagons" else self.plan.between,
            by=self.made.by,
            count=len(lines),
            blocks=sum(line.role != "sash" for line in lines),
            sequence=laid(alone) if len(alone) == len(lines) and not self._odd else (),
            # Of the corners of a top on point two lie across the slanting rows.
            drift=self._drift(len(lines) - 1 + min(2, len(corners))),
            corners=corners[0].part if corners else None,
            slanting=self.made.setting == "on point",
            papers=self.made.setting == "hexagons",
        )

    @property
    def _odd(self) -> bool:
        """Whether the rows are no upright rectangles, so that groups of them have no measure."""
        return self.made.setting != "straight"

    def _between(self, raw: Exact) -> Exact:
        """All seams between the lines, each so long from raw edge to raw edge."""
        lines = self.made.lines
        if self.made.setting == "on point":
            return sum((seam + self.seams for seam in seams_between(self.made)), Exact(0))
        if self.made.setting == "hexagons":  # two sides of a hexagon for every one across
            zigzag = (raw - self.seams) * HEXAGON_SEAM
            return zigzag * (len(lines) - 1)
        return raw * (len(lines) - 1)

    def _joined(self, line: Line) -> Joined:
        if line.role == "column":
            downs = [part.down for part in line.parts]
            return Joined(downs, line.across, "down", self.seams, self.seams)
        acrosses = [part.across for part in line.parts]
        return Joined(acrosses, line.down, "across", self.seams, self.seams)

    def _stacked(self, lines: Sequence[Line]) -> Joined:
        if self.made.by == "columns":
            return Joined(
                [line.across for line in lines], lines[0].down, "across", self.seams, self.seams
            )
        return Joined(
            [line.down for line in lines], lines[0].across, "down", self.seams, self.seams
        )

    def _pressed(self, numbers: tuple[int, ...]) -> tuple[Pressed, ...]:
        alike: dict[LinePressing, list[int]] = {}
        for number in numbers:
            alike.setdefault(self.plan.lines[number], []).append(number)
        return tuple(
            Pressed(self._numbers(tuple(of)), press.word, press.stated, press.seams)
            for press, of in alike.items()
        )

    def _numbers(self, numbers: tuple[int, ...]) -> tuple[int, ...]:
        role: Literal["row", "column", "sash", "slant"] = self.made.lines[numbers[0]].role
        own = [i for i, line in enumerate(self.made.lines) if line.role == role]
        count = {line: number for number, line in enumerate(own, 1)}
        return tuple(count[number] for number in numbers)

    def _drift(self, seams: int) -> Fraction:
        return self.quilt.settings.drift * 2 * seams


def _named(line: Line) -> tuple[Placed, ...]:
    """The parts of a line as a sentence names them."""
    if line.role != "slant":
        return line.parts
    return tuple(part._replace(turn=as_placed(part.turn)) for part in line.parts)


def _names(line: Line) -> tuple[str, ...]:
    return tuple(part.part for part in line.parts)


def _ends(lines: Sequence[Line]) -> tuple[str, ...]:
    """What each line is known by when lines are joined: its parts, one after the other."""
    return tuple(" ".join(_names(line)) for line in lines)


def _meets(joining: Joining) -> tuple[int, int]:
    """How many places must match, and how many of them cannot nest."""
    return len(joining.meets), sum(meet.same_way for meet in joining.meets)
