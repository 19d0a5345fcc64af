"""Each unit from its parts to 'as made': lettered, measured raw edge to raw edge, pressed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.explode import apart
from patternbook.diagrams.laid import Lying, draw, lying, turn_mark
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.pressing import arrow
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.quilt.records import LayoutMade, Unit
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


def _unit(pattern: Pattern, size: Size, unit: Unit, made: LayoutMade) -> Drawing:
    longest = max(len(line.parts) for line in made.lines)
    few = len(unit.placed) <= FEW and longest <= SHORT

    def drawn(pen: Pen) -> None:
        right = _before(pen, size, unit, made) if few else 0.0
        _after(pen, size, unit, made, right)

    scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
    pen = fitted(drawn, MOST, scale)
    measure = words.sides(unit.measure, size.system)
    title = f"{words.title(unit.name)}, {measure} raw edge to raw edge"
    return cropped(
        pen, name("unit", unit.name), title + pattern.drawn_for(size, unit), described(size, unit, made)
    )


def described(size: Size, unit: Unit, made: LayoutMade) -> str:
    """What joins what, in words."""
    what = "column" if made.by == "columns" else "row"
    start = "top" if made.by == "columns" else "left"
    lines = [
        f"{what} {number} from the {start}: {words.run(part.part for part in line.parts)}"
        for number, line in enumerate(made.lines, start=1)
    ]
    if len(lines) == 1:
        lines = [f"from the {start}: {words.run(part.part for part in made.lines[0].parts)}"]
    way = size.plans.sewing.pressing[unit.name].lines[0].uniform
    pressed = f" Seams are pressed {way}." if way and len(lines) == 1 else ""
    measure = words.sides(unit.measure, size.system)
    return (
        f"{words.title(unit.name)} as made; {'; '.join(lines)}. "
        f"It measures {measure} from raw edge to raw edge.{pressed}"
    )


# ---- before


def _before(pen: Pen, size: Size, unit: Unit, made: LayoutMade) -> float:
    """The parts apart as cut or sewn so far, then an arrow; gives where the arrow ends."""
    raw = float(size.quilt.seam)
    gap = pen.pt(13) + 2 * raw
    laid = apart(size, unit, made, gap)
    tags = []
    for part in laid.all:
        found = draw(pen, size, part, raw)
        if not _named(pen, part, found):
            tags.append(labels.Tag(part.middle[0], part.y + part.down + raw, part.part))
    low = max(part.y + part.down for part in laid.all) + raw
    labels.under(pen, tags, low)
    _joins(pen, laid.lines, made, raw)
    right = max(part.x + part.across for part in laid.all) + raw
    middle = (low + min(part.y for part in laid.all) - raw) / 2
    ends = ((right + pen.pt(7), middle), (right + pen.pt(25), middle))
    pen.arrow(ends, "edge", "end", 7)
    return ends[1][0] + pen.pt(9) + raw


def _named(pen: Pen, part: Lying, found: Sequence[labels.Shown]) -> bool:
    """The name of a part inside it, where it fits."""
    if len(found) == 1:
        return labels.inside(pen, found[0], part.part)
    return labels.named(pen, part, found, part.part)


def _joins(
    pen: Pen, lines: Sequence[Sequence[Lying]], made: LayoutMade, raw: float
) -> None:
    """A plus between neighbours; the seam on their edges where there are only few parts."""
    few = sum(map(len, lines)) <= SEAMS
    across = made.by == "rows"
    for line in lines:
        for one, other in zip(line, line[1:], strict=False):
            _join(pen, one, other, raw if few else 0.0, across=across)
    for line, below in zip(lines, lines[1:], strict=False):
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


# ---- after


def _after(pen: Pen, size: Size, unit: Unit, made: LayoutMade, x: float) -> None:
    raw = float(size.quilt.seam)
    parts = [lying(part).moved(x, 0) for part in unit.placed]
    whole = Lying(
        unit.name, Lying.upright, x, 0, float(unit.finished.across), float(unit.finished.down)
    )
    found = draw(pen, size, whole, raw)
    turn_mark(pen, whole, raw)
    bare = [patch for patch in found if not labels.inside(pen, patch, patch.letter)]
    left_over = [part for part in parts if any(_holds(part, patch) for patch in bare)]
    if made.by == "columns":
        _braced(pen, left_over, whole.x + whole.across + raw)
    else:
        _tagged(pen, left_over, whole.down + raw)
    aside = _pressed(pen, size, unit, made, whole)
    _measured(pen, size, unit, whole, aside=aside, left=made.by == "columns")
    _headed(pen, unit, whole, raw)


def _holds(part: Lying, patch: labels.Shown) -> bool:
    """Whether the patch is this part; the patches of a unit are named where it is made."""
    x, y = part.middle
    within = patch.x < x < patch.x + patch.across and patch.y < y < patch.y + patch.down
    return within and part.part == patch.letter


def _braced(pen: Pen, parts: Sequence[Lying], x: float) -> None:
    """Stretches of like pieces too thin for a letter, in a column."""
    for run in _runs(parts):
        text = f"{len(run)} {run[0].part}" if len(run) > 1 else run[0].part
        labels.brace(pen, x + pen.pt(2), run[0].y, run[-1].y + run[-1].down, text)


def _tagged(pen: Pen, parts: Sequence[Lying], y: float) -> None:
    """The same in a row."""
    tags = []
    for run in _runs(parts):
        middle = (run[0].x + run[-1].x + run[-1].across) / 2
        text = f"{len(run)} {run[0].part}" if len(run) > 1 else run[0].part
        tags.append(labels.Tag(middle, run[0].y + run[0].down, text))
    labels.under(pen, tags, y)


def _runs(parts: Sequence[Lying]) -> list[list[Lying]]:
    """Neighbours of one letter."""
    runs: list[list[Lying]] = []
    for part in parts:
        last = runs[-1][-1] if runs else None
        if last and last.part == part.part and _touch(last, part):
            runs[-1].append(part)
        else:
            runs.append([part])
    return runs


def _touch(one: Lying, other: Lying) -> bool:
    near = 1e-6
    return (
        abs(one.x + one.across - other.x) < near and abs(one.y - other.y) < near
    ) or (abs(one.y + one.down - other.y) < near and abs(one.x - other.x) < near)


def _pressed(pen: Pen, size: Size, unit: Unit, made: LayoutMade, whole: Lying) -> bool:
    """Arrows over the seams; where the parts are too thin for them, one beside the unit."""
    plan = size.plans.sewing.pressing[unit.name]
    across = made.by == "rows"
    for line, pressed in zip(made.lines, plan.lines, strict=True):
        parts = [lying(part).moved(whole.x, 0) for part in line.parts]
        sides = [part.across if across else part.down for part in parts]
        if pressed.seams and min(sides) < pen.pt(15):
            return _beside(pen, pressed.uniform, whole, float(size.quilt.seam))
        for part, way in zip(parts[1:], pressed.seams, strict=True):
            share = 0.2
            x, y = (part.x, part.y + part.down * share)
            if not across:
                x, y = (part.x + part.across * (1 - share), part.y)
            arrow(pen, x, y, way, upright=across)
    for line, way in zip(made.lines[1:], plan.between, strict=True):
        x, y = float(line.parts[0].x) + whole.x, float(line.parts[0].y)
        at = (x + float(line.across) * 0.8, y) if across else (x, y + float(line.down) * 0.2)
        arrow(pen, *at, way, upright=not across)
    return False


def _beside(pen: Pen, way: str | None, whole: Lying, raw: float) -> bool:
    x, y = whole.middle
    if way in {"up", "down"}:
        arrow(pen, whole.x - raw - pen.pt(7), y, way, upright=False, long=30)  # type: ignore[arg-type]
    elif way in {"left", "right"}:
        low = whole.y + whole.down + raw
        arrow(pen, x, low + pen.pt(7), way, upright=True, long=30)  # type: ignore[arg-type]
    return way is not None


def _measured(
    pen: Pen, size: Size, unit: Unit, whole: Lying, *, aside: bool, left: bool
) -> None:
    """Width below, length at the side, raw edge to raw edge."""
    raw = float(size.quilt.seam)
    start, end = whole.x - raw, whole.x + whole.across + raw
    top, low = whole.y - raw, whole.y + whole.down + raw
    across, down = (words.length(side, size.system) for side in unit.measure)
    below = pen.pt(16 if aside and not left else 8)
    pen.dimension((end, low), (start, low), across, below, 8)
    if left:
        pen.dimension((start, low), (start, top), down, pen.pt(16 if aside else 8), 8)
    else:
        pen.dimension((end, top), (end, low), down, pen.pt(8), 8)


def _headed(pen: Pen, unit: Unit, whole: Lying, raw: float) -> None:
    """The unit's name, and that this is how it lies as made."""
    y = whole.y - raw - pen.pt(9)
    x = whole.x - raw
    text = f"{words.title(unit.name)}, as made"
    mark = Lying(unit.name, Lying.upright, x, y - pen.pt(3.2), pen.pt(8), pen.pt(6.5))
    turn_mark(pen, mark)
    pen.label(x + pen.pt(11), y, text, 9, anchor="start", weight=600)
