"""Cutting lays: the strips of each fabric in order of cutting, and what is cut from each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final, NamedTuple

from patternbook.cutting.records import FabricPlan, Sheet, Strip
from patternbook.diagrams import labels, words
from patternbook.diagrams.lay_groups import Group, groups, tell, tells
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.shape import box
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.shown import Shown, shaped
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count, selvage
from patternbook.strokes.stroke import Drawing, Fill, Line, Weight
from patternbook.strokes.tones import WASTE

MOST: Final = (3.5, 8.5)
CLOTH: Final = 2.0  # inches on paper for the width of the cloth, or less where words need it
AIR: Final = 7.0  # points between strips


def lays(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing for every fabric of every size that pieces or binding are cut from."""
    for size in pattern.sizes:
        for fabric, plan in size.plans.cutting.fabrics.items():
            if plan.strips:
                yield _lay(size, fabric, plan)


def _lay(size: Size, fabric: str, plan: FabricPlan) -> Drawing:
    widest = max([size.quilt.width, plan.width, *(sheet.across for sheet in plan.sheets)])

    def drawn(pen: Pen) -> None:
        if plan.sheets:
            _sheets(pen, size, fabric, plan)
        else:
            _strips(pen, size, fabric, plan)

    pen = fitted(drawn, MOST, CLOTH / float(widest))
    title = f"{words.title(fabric or 'cloth')}, {size.name}: how it is cut"
    called = name("lay", fabric or "cloth", size.name)
    return cropped(pen, called, title, _described(size, fabric, plan))


def _sheets(pen: Pen, size: Size, fabric: str, plan: FabricPlan) -> None:
    y = 0.0
    for number, sheet in enumerate(plan.sheets, start=1):
        y = _sheet(pen, size, fabric, plan, sheet, number, y)


def _strips(pen: Pen, size: Size, fabric: str, plan: FabricPlan) -> None:
    """The strips one below the other; the fold of the cloth runs down behind them."""
    y = start = _head(pen, size, plan)
    behind = len(pen.strokes)
    made = groups(plan.strips)
    widths = [words.length(group.strip.width, size.system) for group in made]
    numbers = max(pen.text_width(text, 8) for text in widths)
    for number, group in enumerate(made, start=1):
        y = _strip(Place(pen, size, fabric, numbers), group, number, y)
    middle = float(plan.strips[0].length) / 2
    fold = Line(((middle, start - pen.pt(3)), (middle, y - pen.pt(2))), "fold")
    pen.strokes.insert(behind, fold)
    pen.label(middle, y + pen.pt(4), "fold", 8)


def _head(pen: Pen, size: Size, plan: FabricPlan) -> float:
    """The width of the cloth, its fold and its selvages; gives where the strips begin."""
    wide = float(plan.strips[0].length)
    system = size.system
    pen.dimension(
        (0, 0), (wide, 0), f"usable width {words.length(plan.strips[0].length, system)}", 0, 8
    )
    return pen.pt(8)


class Place(NamedTuple):
    """Where and in what a lay's strips are drawn; `numbers` is the room their widths take."""

    pen: Pen
    size: Size
    fabric: str
    numbers: float


def _strip(place: Place, group: Group, number: int, y: float) -> float:
    pen, size, fabric, numbers = place
    strip = group.strip
    wide, high = float(strip.length), float(strip.width)
    lines = tells(size, group)
    tall = max(high, pen.pt(labels.LINE * len(lines)))
    top = y + (tall - high) / 2
    fill = size.cloths.fabric(fabric, number)
    if group.times > 1:
        pen.line(((pen.pt(2), top + high + pen.pt(2)), (wide, top + high + pen.pt(2))), "outline")
    pen.rectangle(0, top, wide, high, WASTE, "outline")
    if strip.join:
        _joined(pen, strip, fill, top)
    else:
        _pieces(pen, size, strip, fill, 0, top)
    _ends(pen, strip, top)
    text = words.length(strip.width, size.system)
    count(pen, -pen.pt(25) - numbers, top + high / 2, number, size=8)
    bar = -pen.pt(10)
    pen.arrow(((bar, top + high), (bar, top)), "dimension", "both", 3.5)
    pen.label(-pen.pt(14), top + high / 2, text, 8, anchor="end")
    _told(pen, lines, wide, y, tall)
    return y + tall + pen.pt(AIR)


def _ends(pen: Pen, strip: Strip, top: float) -> None:
    """The selvages, which are trimmed off."""
    wide, high = float(strip.length), float(strip.width)
    selvage(pen, (-pen.pt(1.5), top + high), (-pen.pt(1.5), top), 1)
    selvage(pen, (wide + pen.pt(1.5), top), (wide + pen.pt(1.5), top + high), 1)


def _pieces(pen: Pen, size: Size, strip: Strip, fill: Fill, x: float, y: float) -> None:
    """The pieces of one strip from the left; each letter is written in its piece."""
    for cut in strip.cuts:
        lanes = max(cut.lanes, 1)
        along, across = float(cut.along), float(cut.across)
        if cut.whole:
            along = float(strip.length)
        left = cut.number
        for _ in range(cut.columns):
            for lane in range(min(lanes, left)):
                patch = Shown(cut.letter, x, y + lane * across, along, across, fill)
                _piece(pen, size, patch)
            left -= lanes
            x += along


def _piece(pen: Pen, size: Size, patch: Shown) -> None:
    """One piece, with the cuts from corner to corner where it is cut into triangles."""
    pen.rectangle(patch.x, patch.y, patch.across, patch.down, patch.fill, "outline")
    piece = size.quilt.pieces.get(patch.letter)
    right, low = patch.x + patch.across, patch.y + patch.down
    if piece and piece.diagonal:
        pen.line(((patch.x, low), (right, patch.y)), "cut")
    if piece and piece.diagonal == "twice":
        pen.line(((patch.x, patch.y), (right, low)), "cut")
    for part in _parts(patch, piece.diagonal if piece else None):
        labels.inside(pen, part, patch.letter)


def _parts(patch: Shown, diagonal: str | None) -> Iterator[Shown]:
    """The triangles that a piece is cut into, or the piece itself."""
    corners = box(patch.x, patch.y, patch.across, patch.down)
    first, second, third, fourth = corners
    if diagonal is None:
        yield patch
    elif diagonal == "once":
        for half in ((first, second, fourth), (second, third, fourth)):
            yield shaped(patch.letter, half, patch.fill)
    else:
        middle = (patch.x + patch.across / 2, patch.y + patch.down / 2)
        for one, other in pairwise((*corners, first)):
            yield shaped(patch.letter, (one, other, middle), patch.fill)


def _joined(pen: Pen, strip: Strip, fill: Fill, top: float) -> None:
    """Strips that are sewn end to end: the whole strip is used."""
    wide, high = float(strip.length), float(strip.width)
    patch = Shown("", 0, top, wide, high, fill)
    pen.rectangle(0, top, wide, high, fill, "outline")
    text = words.listed(strip.letters)
    labels.inside(pen, patch, text)


def _told(pen: Pen, lines: Sequence[tuple[str, bool]], wide: float, y: float, tall: float) -> None:
    step = pen.pt(labels.LINE)
    start = y + (tall - step * len(lines)) / 2 + step / 2
    for number, (text, heavy) in enumerate(lines):
        weight: Weight = 600 if heavy else 400
        pen.label(wide + pen.pt(9), start + number * step, text, 8, anchor="start", weight=weight)


# ---- pre-cut squares, quarters and panels


def _sheet(
    pen: Pen, size: Size, fabric: str, plan: FabricPlan, sheet: Sheet, number: int, y: float
) -> float:
    """One pre-cut piece of cloth with its strips as they lie in it."""
    across, down = float(sheet.across), float(sheet.down)
    fill = size.cloths.fabric(fabric, number)
    pen.rectangle(0, y, across, down, WASTE, "edge")
    far = 0.0
    lines: list[tuple[str, bool]] = [(f"× {sheet.times}", True)]
    for row in sheet.rows:
        strip = plan.strips[row.strip]
        for _ in range(row.times):
            if sheet.turned:
                _upright(pen, size, strip, fill, far, y)
            else:
                _pieces(pen, size, strip, fill, 0, y + far)
            far += float(strip.width)
        lines += [(tell(size, cut, strip), False) for cut in strip.cuts]
    count(pen, -pen.pt(12), y + down / 2, number, size=8)
    text = words.size(sheet.across, sheet.down, size.system)
    pen.label(0, y - pen.pt(7), text, 8, anchor="start")
    _told(pen, list(dict.fromkeys(lines)), max(across, pen.text_width(text, 8)), y, down)
    return y + max(down, pen.pt(labels.LINE * len(lines))) + pen.pt(AIR + 12)


def _upright(pen: Pen, size: Size, strip: Strip, fill: Fill, x: float, y: float) -> None:
    """The pieces of a strip that stands."""
    for cut in strip.cuts:
        for _ in range(cut.columns):
            for lane in range(min(max(cut.lanes, 1), cut.number)):
                sides = (float(cut.across), float(cut.along))
                _piece(pen, size, Shown(cut.letter, x + lane * sides[0], y, *sides, fill))
            y += float(cut.along)


def _described(size: Size, fabric: str, plan: FabricPlan) -> str:
    told = []
    for number, group in enumerate(groups(plan.strips), start=1):
        lines = [text for text, _ in tells(size, group)]
        width = words.length(group.strip.width, size.system)
        told.append(f"{number}: {width} wide {lines[0]}: {', '.join(lines[1:]) or 'spare'}")
    return (
        f"Cutting lay of {fabric or 'the cloth'} for {size.name}, usable width "
        f"{words.length(plan.width, size.system)}, strips in order of cutting. {'; '.join(told)}."
    )
