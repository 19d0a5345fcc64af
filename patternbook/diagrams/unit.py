"""Each unit from its parts to 'as made': lettered, measured raw edge to raw edge, pressed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from patternbook.diagrams import labels, pieced, words
from patternbook.diagrams.as_made import AsMade
from patternbook.diagrams.explode import apart
from patternbook.diagrams.laid import Lying, any_turned, draw, turn_mark
from patternbook.diagrams.naming import name
from patternbook.diagrams.panels import in_lines
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.shown import Shown
from patternbook.diagrams.slant import slants
from patternbook.quilt.place import patches
from patternbook.quilt.records import LayoutMade, PiecedMade, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import plus, seam
from patternbook.strokes.stroke import Drawing

MOST: Final = (3.5, 3.3)
FEW: Final = 12  # parts that are shown apart,
SHORT: Final = 6  # of a line; a longer one is shown as rounds of pairs
SEAMS: Final = 4  # parts that have the seams drawn on them
LARGEST: Final = 0.16  # inches on paper for an inch of cloth


def units(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing a unit; slices of strip sets are drawn with their set."""
    for size, unit in pattern.units():
        if isinstance(unit.made, LayoutMade):
            yield _unit(pattern, size, unit, unit.made)
        elif isinstance(unit.made, PiecedMade):
            yield _pieced(pattern, size, unit, unit.made)


def _unit(pattern: Pattern, size: Size, unit: Unit, made: LayoutMade) -> Drawing:
    longest = max(len(line.parts) for line in made.lines)
    few = len(unit.placed) <= FEW and longest <= SHORT and not slants(made)

    def drawn(pen: Pen) -> None:
        right = _before(pen, size, unit, made) if few else 0.0
        AsMade(pen, size, unit, made, right).drawn(named=few)

    scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
    pen = fitted(drawn, MOST, scale)
    measure = words.sides(unit.measure, size.system)
    title = f"{words.title(unit.name)}, {measure} raw edge to raw edge"
    return cropped(
        pen,
        name("unit", unit.name),
        title + pattern.drawn_for(size, unit),
        described(size, unit, made),
    )


def _pieced(pattern: Pattern, size: Size, unit: Unit, made: PiecedMade) -> Drawing:
    """A unit that is sewn in a way of its own: what is done, step by step, and as made."""
    scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
    pen = in_lines(pieced.panels(size, unit, made), MOST, scale)
    measure = words.sides(unit.measure, size.system)
    title = f"{words.title(unit.name)}, {measure} raw edge to raw edge"
    called = name("unit", unit.name)
    told = pieced.described(size, unit, made)
    return cropped(pen, called, title + pattern.drawn_for(size, unit), told)


def described(size: Size, unit: Unit, made: LayoutMade) -> str:
    """What joins what, in words."""
    what, start = ("Column", "top") if made.by == "columns" else ("Row", "left")
    several = len(made.lines) > 1
    lines = [
        f"{what} {number}: {words.run(line.parts)}" if several else words.run(line.parts)
        for number, line in enumerate(made.lines, start=1)
    ]
    way = size.plans.sewing.pressing[unit.name].lines[0].uniform
    pressed = f" Seams are pressed {way}." if way and len(lines) == 1 else ""
    measure = words.sides(unit.measure, size.system)
    return (
        f"{words.title(unit.name)} as made, from the {start}. {'; '.join(lines)}. "
        f"It measures {measure} from raw edge to raw edge.{pressed}"
    )


def _before(pen: Pen, size: Size, unit: Unit, made: LayoutMade) -> float:
    """The parts apart as cut or sewn so far, then an arrow; gives where the arrow ends."""
    raw = float(size.quilt.seam)
    gap = pen.pt(13) + 2 * raw
    laid = apart(size, unit, made, gap)
    slanting = any(patch.outline for patch in patches(size.quilt, unit.name))
    turned = slanting and any_turned(size, unit)
    tags = []
    for part in laid.all:
        found = draw(pen, size, part, raw)
        if turned and part.part in size.quilt.units:
            turn_mark(pen, part, raw)
        if not _named(pen, part, found) and not _below(pen, part, gap, raw):
            tags.append(labels.Tag(part.middle[0], part.y + part.down + raw, part.part))
    low = max(part.y + part.down for part in laid.all) + raw
    labels.under(pen, tags, low)
    _joins(pen, laid.lines, made, raw)
    right = max(part.x + part.across for part in laid.all) + raw
    middle = (low + min(part.y for part in laid.all) - raw) / 2
    ends = ((right + pen.pt(7), middle), (right + pen.pt(25), middle))
    pen.arrow(ends, "edge", "end", 7)
    return ends[1][0] + pen.pt(9) + raw


def _named(pen: Pen, part: Lying, found: Sequence[Shown]) -> bool:
    """The name of a part inside it, where it fits."""
    if len(found) == 1:
        return labels.inside(pen, found[0], part.part)
    return labels.named(pen, part, found, part.part)


def _below(pen: Pen, part: Lying, gap: float, raw: float) -> bool:
    """The name of a unit below it, where there is room for it in the gap."""
    wide = pen.text_width(part.part, labels.LEAST, 600)
    if part.part[0].isupper() or wide > part.across + gap - pen.pt(3):
        return False
    x, y = part.middle[0], part.y + part.down + raw + pen.pt(6.5)
    pen.label(x, y, part.part, labels.LEAST, weight=600)
    return True


def _joins(pen: Pen, lines: Sequence[Sequence[Lying]], made: LayoutMade, raw: float) -> None:
    """A plus between neighbours; the seam on their edges where there are only few parts."""
    few = sum(map(len, lines)) <= SEAMS
    across = made.by == "rows"
    for line in lines:
        for one, other in pairwise(line):
            _join(pen, one, other, raw if few else 0.0, across=across)
    for line, below in pairwise(lines):
        if len(line) == 1 == len(below):
            _join(pen, line[0], below[0], raw if few else 0.0, across=not across)


def _join(pen: Pen, one: Lying, other: Lying, raw: float, *, across: bool) -> None:
    if across:
        plus(pen, (one.x + one.across + other.x) / 2, one.middle[1])
        edges = ((one.x + one.across, one), (other.x, other))
        ends = [((x, part.y), (x, part.y + part.down)) for x, part in edges]
    else:
        plus(pen, one.middle[0], (one.y + one.down + other.y) / 2)
        levels = ((one.y + one.down, one), (other.y, other))
        ends = [((part.x, y), (part.x + part.across, y)) for y, part in levels]
    for start, end in ends if raw else ():
        seam(pen, start, end)
