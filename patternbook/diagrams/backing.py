"""The backing: how many lengths of cloth, where they are seamed, and the quilt upon it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from patternbook.cutting.records import BackingPlan
from patternbook.diagrams import words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Fill
from patternbook.strokes.tones import PAPER, WASTE, ghost

ALL: Final = (7.2, 2.6)
ONE: Final = (2.4, 2.6)
LARGEST: Final = 0.1


def backings(pattern: Pattern) -> Iterator[Drawing]:
    """All sizes side by side to one scale, then each by itself."""
    planned = [
        (size, plan) for size in pattern.tops if (plan := size.plans.cutting.backing) is not None
    ]
    if not planned:
        return
    scale = LARGEST / (2.54 if pattern.first.system.unit == "cm" else 1)

    def side_by_side(pen: Pen) -> None:
        x = 0.0
        for size, plan in planned:
            _back(pen, size, plan, x)
            wide, _ = _made(plan)
            pen.label(x + wide / 2, -pen.pt(9), words.title(size.name), 10, weight=600)
            x += max(wide, pen.pt(66)) + pen.pt(40)

    told = " ".join(_described(size, plan) for size, plan in planned)
    pen = fitted(side_by_side, ALL, scale)
    yield cropped(pen, "backings", "Backings, to one scale", told)
    for size, plan in planned:
        pen = fitted(_alone(size, plan), ONE, scale)
        title = f"Backing, {size.name}: {_panels(size, plan)}"
        yield cropped(pen, name("backing", size.name), title, _described(size, plan))


def _alone(size: Size, plan: BackingPlan) -> Callable[[Pen], None]:
    return lambda pen: _back(pen, size, plan, 0.0)


def _made(plan: BackingPlan) -> tuple[float, float]:
    """Width and length as seamed, before it is trimmed."""
    across, down = plan.size.across, plan.size.down or plan.best.made
    if plan.best.panels == 1:
        whole = (plan.best.made, plan.best.each)
    else:
        whole = (plan.best.each, plan.best.made)
    wide, long = whole if plan.best.seams == "crosswise" else whole[::-1]
    return float(max(wide, across)), float(max(long, down))


def _back(pen: Pen, size: Size, plan: BackingPlan, x: float) -> None:
    """The lengths as they are seamed, what is trimmed off hatched, the quilt in outline."""
    wide, long = _made(plan)
    across, down = float(plan.size.across), float(plan.size.down or plan.best.made)
    fill: Fill = size.cloths.fabric(plan.fabric) if plan.fabric else PAPER
    pen.rectangle(x, 0, wide, long, WASTE, "outline")
    pen.rectangle(x, 0, across, down, ghost(fill), None)
    _seams(pen, plan, x, wide, long)
    pen.rectangle(x, 0, across, down, None, "edge")
    top = size.top
    pen.rectangle(x + (across - top[0]) / 2, (down - top[1]) / 2, *top, None, "outline")
    pen.label(x + across / 2, down / 2, "quilt", 8, plate="#ffffff")
    texts = [words.length(side, size.system) for side in (plan.size.across, plan.size.down or 0)]
    pen.dimension((x + across, long), (x, long), texts[0], pen.pt(8), 8)
    pen.dimension((x, down), (x, 0), texts[1], pen.pt(8), 8)
    pen.label(x + wide / 2, long + pen.pt(26), _panels(size, plan), 8)


def _seams(pen: Pen, plan: BackingPlan, x: float, wide: float, long: float) -> None:
    """The seams between the lengths of cloth: each keeps its width less the allowances."""
    step = float(plan.best.made) / plan.best.panels
    for number in range(1, plan.best.panels):
        at = number * step
        if plan.best.seams == "crosswise":
            pen.line(((x, at), (x + wide, at)), "seam")
        else:
            pen.line(((x + at, 0), (x + at, long)), "seam")


def _panels(size: Size, plan: BackingPlan) -> str:
    each = words.length(plan.best.each, size.system)
    return (
        f"{plan.best.panels} × {each} of cloth" if plan.best.panels > 1 else f"1 length of {each}"
    )


def _described(size: Size, plan: BackingPlan) -> str:
    cut = words.cut(plan.size, size.system)
    if plan.best.panels == 1:
        return f"Backing for {size.name}: one length of cloth, trimmed to {cut}."
    seams = words.counted(plan.best.panels - 1, "seam")
    way = "across" if plan.best.seams == "crosswise" else "down"
    each = words.length(plan.best.each, size.system)
    return (
        f"Backing for {size.name}: {plan.best.panels} lengths of cloth, each {each} long, joined "
        f"by {seams} running {way} the quilt, trimmed to {cut}."
    )
