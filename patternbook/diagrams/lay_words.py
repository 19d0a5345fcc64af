"""The words beside a lay, and the rulers' signs: each ruler small, all to one scale."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Final

from patternbook.cutting.records import Ruler, Strip
from patternbook.cutting.steps import folded
from patternbook.cutting.tools import TABLES
from patternbook.diagrams import labels, words
from patternbook.diagrams.lay_groups import Said
from patternbook.diagrams.pattern import Pattern
from patternbook.diagrams.sheet import cropped
from patternbook.forms import by_name
from patternbook.inch import System
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count
from patternbook.strokes.stroke import Drawing, Fill, Weight
from patternbook.strokes.tones import WASTE

LONG: Final = 14.0  # points that the longest ruler's sign takes
GLASS: Final = Fill("#ffffff")
CLOTH: Final = Fill("#ededed")
WIDE: Final = 7.1  # inches for all signs side by side
ROW: Final = 0.26
GAP: Final = 0.14
KEY: Final = "cuts-key"

Draw = Callable[[float, float], float]


def said(pen: Pen, system: System, lines: Sequence[Said], x: float, middle: float) -> None:
    """Lines of words from x on, about a height; behind each the rulers of its cut."""
    step = pen.pt(labels.LINE)
    start = middle - step * (len(lines) - 1) / 2
    for number, line in enumerate(lines):
        weight: Weight = 600 if line.heavy else 400
        y = start + number * step
        pen.label(x, y, line.text, 8, anchor="start", weight=weight)
        after = x + pen.text_width(line.text, 8, weight) + pen.pt(4)
        for ruler in line.rulers:
            after = _ruler(pen, system, ruler, after, y) + pen.pt(2)


def _ruler(pen: Pen, system: System, ruler: Ruler, x: float, y: float) -> float:
    """A ruler lying down; gives where it ends."""
    unit = pen.pt(LONG) / float(TABLES[system.unit].long_ruler.down)
    wide, high = float(ruler.down) * unit, float(ruler.across) * unit
    pen.rectangle(x, y - high / 2, wide, high, GLASS, "dimension")
    return x + wide


def cuts_key(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing, in inches on paper: the rulers, and how strips lie while they are cut."""
    pen = Pen(1, 1, 1)
    x, y = 0.0, 0.0
    told = tuple(_signs(pen, pattern))
    for text, draw in told:
        wide = pen.pt(LONG + 5) + pen.text_width(text, 8)
        if x and x + wide > WIDE:
            x, y = 0.0, y + ROW
        end = draw(x, y) + pen.pt(4)
        pen.label(end, y, text, 8, anchor="start")
        x = end + pen.text_width(text, 8) + GAP
    if told:
        alt = f"Signs of the cutting lays: {', '.join(text for text, _ in told)}."
        yield cropped(pen, KEY, "Signs of the cutting lays", alt)


def _signs(pen: Pen, pattern: Pattern) -> Iterator[tuple[str, Draw]]:
    system = pattern.first.system
    for ruler in _rulers(pattern):
        yield f"ruler, {words.size(*ruler, system)}", _laid(pen, system, ruler)
    strips = _strips(pattern)
    if strips:
        yield "order", lambda x, y: _order(pen, x, y)
    if any(folded(by_name[form], strip) for form, strip in strips):
        yield "cut folded, from both ends", lambda x, y: _folded(pen, x, y)
    if any(strip.times > 1 for _, strip in strips):
        yield "cut in a stack", lambda x, y: _stacked(pen, x, y)


def _laid(pen: Pen, system: System, ruler: Ruler) -> Draw:
    return lambda x, y: _ruler(pen, system, ruler, x, y)


def _rulers(pattern: Pattern) -> tuple[Ruler, ...]:
    """Those that any cut of these sizes is made with, the smallest first."""
    plans = (plan for size in pattern.sizes for plan in size.plans.cutting.fabrics.values())
    used = {ruler for plan in plans for step in plan.steps for ruler in step.rulers}
    return tuple(sorted(used, key=lambda ruler: (ruler.across * ruler.down, ruler)))


def _strips(pattern: Pattern) -> tuple[tuple[str, Strip], ...]:
    plans = (plan for size in pattern.sizes for plan in size.plans.cutting.fabrics.values())
    return tuple((plan.form, strip) for plan in plans for strip in plan.strips)


def _order(pen: Pen, x: float, y: float) -> float:
    count(pen, x + pen.pt(7), y, 1, size=8)
    return x + pen.pt(14)


def _folded(pen: Pen, x: float, y: float) -> float:
    wide, high = pen.pt(LONG + 7), pen.pt(7)
    pen.rectangle(x, y - high / 2, wide, high, WASTE, "outline")
    for left in (x, x + wide * 0.65):
        pen.rectangle(left, y - high / 2, wide * 0.35, high, CLOTH, "outline")
    reach = pen.pt(7)
    pen.line(((x + wide / 2, y - reach), (x + wide / 2, y + reach)), "fold")
    return x + wide


def _stacked(pen: Pen, x: float, y: float) -> float:
    wide, high = pen.pt(LONG + 7), pen.pt(7)
    edge(pen, x, y + high / 2, wide)
    pen.rectangle(x, y - high / 2, wide, high, CLOTH, "outline")
    return x + wide


def edge(pen: Pen, x: float, low: float, wide: float) -> None:
    """The edge of strips that lie under the one that is drawn."""
    off = pen.pt(2)
    pen.line(((x + off, low + off), (x + wide, low + off)), "outline")
