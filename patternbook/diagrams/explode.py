"""The parts of a unit apart from one another, line by line, as they lie on the table."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from patternbook.diagrams.laid import Lying, parts
from patternbook.diagrams.pattern import Size
from patternbook.quilt.records import LayoutMade, Placed, Unit


@dataclass(frozen=True)
class Apart:
    """Lines of parts with gaps between; `by` rows or columns. Borders lie outside them."""

    by: str
    lines: tuple[tuple[Lying, ...], ...]
    borders: tuple[Lying, ...]

    @property
    def all(self) -> tuple[Lying, ...]:
        """Every part, line after line, then the borders."""
        return (*(part for line in self.lines for part in line), *self.borders)


def apart(
    size: Size, unit: Unit, made: LayoutMade, gap: float, between: float | None = None
) -> Apart:
    """The parts `gap` apart along a line, the lines `between` apart (if not stated, `gap`)."""
    lying = parts(size, unit)
    step = gap if between is None else between
    lines = []
    for row, line in enumerate(made.lines):
        along = [number * gap for number in range(len(line.parts))]
        moves = [(far, row * step) if made.by == "rows" else (row * step, far) for far in along]
        pairs = zip(line.parts, moves, strict=True)
        lines.append(tuple(lying[part].moved(*move) for part, move in pairs))
    return Apart(made.by, tuple(lines), _borders(made, lying, lines, gap))


def _borders(
    made: LayoutMade,
    lying: Mapping[Placed, Lying],
    lines: list[tuple[Lying, ...]],
    gap: float,
) -> tuple[Lying, ...]:
    """Border strips moved out to their side, each border a gap farther than the one inside."""
    right = max(part.x + part.across for line in lines for part in line)
    low = max(part.y + part.down for line in lines for part in line)
    wide = max(float(line.parts[-1].x + line.parts[-1].across) for line in made.lines)
    high = max(float(line.parts[-1].y + line.parts[-1].down) for line in made.lines)
    left, top = float(made.lines[0].parts[0].x), float(made.lines[0].parts[0].y)
    grown = (right - wide, low - high)
    out = []
    for border in made.borders:
        for part in map(lying.__getitem__, border.parts):
            dx = _outward(part.x, part.across, left, wide, gap * border.number, grown[0])
            dy = _outward(part.y, part.down, top, high, gap * border.number, grown[1])
            out.append(part.moved(dx, dy))
    return tuple(out)


def _outward(at: float, long: float, start: float, end: float, gap: float, grown: float) -> float:
    """How far a strip moves: out of the way, or to the middle of what it lies along."""
    if at + long <= start:
        return -gap
    return grown + gap if at >= end else grown / 2
