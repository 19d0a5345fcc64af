"""Cutting lays: the strips of each fabric in order of cutting, and what is cut from each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from patternbook.cutting.records import FabricPlan, Strip
from patternbook.diagrams import labels, words
from patternbook.diagrams.lay_block import Block, block
from patternbook.diagrams.lay_groups import Group, Said, groups, tells
from patternbook.diagrams.lay_pieces import strip
from patternbook.diagrams.lay_sheets import draw_sheets
from patternbook.diagrams.lay_words import edge, said
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.forms import by_name
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count, selvage
from patternbook.strokes.stroke import Drawing, Line

MOST: Final = (3.5, 8.5)
CLOTH: Final = 2.0  # inches on paper for the width of the cloth, or less where words need it
AIR: Final = 7.0  # points between strips


def lays(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing for every fabric of every size that pieces or binding are cut from."""
    for size in pattern.sizes:
        for fabric, plan in size.plans.cutting.fabrics.items():
            if plan.strips:
                yield lay(size, fabric, plan)


def lay(size: Size, fabric: str, plan: FabricPlan) -> Drawing:
    """The lay of one fabric."""
    widest = max([size.quilt.width, plan.width, *(sheet.across for sheet in plan.sheets)])

    def drawn(pen: Pen) -> None:
        if plan.sheets:
            draw_sheets(pen, size, fabric, plan)
        else:
            _strips(Place(pen, size, fabric, plan))

    pen = fitted(drawn, MOST, CLOTH / float(widest))
    title = f"{words.title(fabric or 'cloth')}, {size.name}: how it is cut"
    called = name("lay", fabric or "cloth", size.name)
    return cropped(pen, called, title, _described(size, fabric, plan))


@dataclass(frozen=True)
class Place:
    """Where and in what a lay's strips are drawn."""

    pen: Pen
    size: Size
    fabric: str
    plan: FabricPlan

    @property
    def wide(self) -> float:
        """The longest strip: the cloth from selvedge to selvedge."""
        return float(max(one.length for one in self.plan.strips))

    @property
    def numbers(self) -> float:
        """The room that the strips' widths take beside them."""
        texts = (words.length(one.width, self.size.system) for one in self.plan.strips)
        return max(self.pen.text_width(text, 8) for text in texts)


def _strips(place: Place) -> None:
    """The strips one below the other; the fold of the cloth runs down behind them."""
    pen, plan = place.pen, place.plan
    y = start = _head(place)
    behind = len(pen.strokes)
    made = groups(plan.strips)
    for number, group in enumerate(made, start=1):
        if group.strip.along == "length":
            y = _lengths(place, made, number, y)
        elif not group.strip.beside:
            y = _strip(place, group, number, y)
    if by_name[plan.form].strips:
        return  # each strip comes cut: no fold of the cloth runs through them
    for share in _folds(plan):
        fold = ((place.wide * share, start - pen.pt(3)), (place.wide * share, y - pen.pt(2)))
        pen.strokes.insert(behind, Line(fold, "fold"))
        pen.label(place.wide * share, y + pen.pt(4), "fold", 8)


def _folds(plan: FabricPlan) -> tuple[float, ...]:
    """Where the cloth is folded while strips are cut: in the middle, or once more on each side."""
    folds = max((step.folds for step in plan.steps if step.kind == "straighten"), default=1)
    parts = 2 ** max(folds, 1)
    return tuple(part / parts for part in range(1, parts))


def _head(place: Place) -> float:
    """The width of the cloth; gives where the strips begin."""
    pen, plan = place.pen, place.plan
    wide = max(one.length for one in plan.strips)
    text = f"usable width {words.length(wide, place.size.system)}"
    pen.dimension((0, 0), (place.wide, 0), text, 0, 8)
    return pen.pt(8)


def _lengths(place: Place, made: Sequence[Group], number: int, y: float) -> float:
    """A length of the cloth, and the strips that are cut beside its pieces."""
    pen, group = place.pen, made[number - 1]
    last = max(at for at, one in enumerate(made, start=1) if one.strip.along == "length")
    strips = [(at, one) for at, one in enumerate(made, start=1) if one.strip.beside]
    drawn = Block(
        pen, place.size, place.fabric, place.plan, group, number, strips if number == last else ()
    )
    low = block(drawn, y)
    _left(place, group.strip, number, y, float(group.strip.width))
    return low + pen.pt(AIR)


def _strip(place: Place, group: Group, number: int, y: float) -> float:
    pen, size, one = place.pen, place.size, group.strip
    wide, high = float(one.length), float(one.width)
    lines: list[Said] = tells(size, place.plan, group)
    tall = max(high, pen.pt(labels.LINE * len(lines)))
    top = y + (tall - high) / 2
    if group.times > 1:
        edge(pen, 0, top + high, wide)
    strip(pen, size, one, place.plan.form, size.cloths.fabric(place.fabric, number), 0, top)
    _left(place, one, number, top, high)
    said(pen, size.system, lines, wide + pen.pt(9), y + tall / 2)
    return y + tall + pen.pt(AIR)


def _left(place: Place, one: Strip, number: int, top: float, high: float) -> None:
    """The number of the cut, the strip's width, and the selvedges, which are trimmed off."""
    pen, wide = place.pen, float(one.length)
    selvage(pen, (-pen.pt(1.5), top + high), (-pen.pt(1.5), top), 1)
    selvage(pen, (wide + pen.pt(1.5), top), (wide + pen.pt(1.5), top + high), 1)
    text = words.length(one.width, place.size.system)
    count(pen, -pen.pt(25) - place.numbers, top + high / 2, number, size=8)
    bar = -pen.pt(10)
    pen.arrow(((bar, top + high), (bar, top)), "dimension", "both", 3.5)
    pen.label(-pen.pt(14), top + high / 2, text, 8, anchor="end")


def _described(size: Size, fabric: str, plan: FabricPlan) -> str:
    made = groups(plan.strips)
    told = []
    for number, group in enumerate(made, start=1):
        first, *lines = (line.text for line in tells(size, plan, group))
        width = words.length(group.strip.width, size.system)
        lengthwise = " along the length" if group.strip.along == "length" else ""
        where = " beside it" if group.strip.beside else lengthwise
        told.append(f"{number}: {width} wide{where} {first}: {', '.join(lines) or 'spare'}")
    return (
        f"Cutting lay of {fabric or 'the cloth'} for {size.name}, usable width "
        f"{words.length(plan.width, size.system)}, strips in order of cutting, pieces from the "
        f"left. {'; '.join(told)}."
    )
