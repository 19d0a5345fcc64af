"""The backing: how many lengths of cloth, where they are seamed, and the quilt upon it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from patternbook.cutting.records import BackingPlan
from patternbook.diagrams import words
from patternbook.diagrams.backing_bands import Band, bands, patched
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.round_corners import rounded
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Fill
from patternbook.strokes.tones import PAPER, WASTE, ghost

ALL: Final = (7.2, 2.4)
ONE: Final = (2.4, 2.6)
LARGEST: Final = 0.1
BESIDE: Final = 8.0  # points between an edge and its measure
BELOW: Final = 26.0  # points between its foot and the words under the measure
LETTERS: Final = 8.0
WHITE: Final = Fill("#ffffff")


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
            above = 9.0 if _along_length(plan) or not plan.best.joins else 25.0
            pen.label(x + wide / 2, -pen.pt(above), words.title(size.name), 10, weight=600)
            aside = 20.0 if _along_length(plan) and plan.best.joins else 0.0
            x += max(wide, pen.pt(66)) + pen.pt(40 + aside)

    told = " ".join(_described(size, plan) for size, plan in planned)
    pen = fitted(side_by_side, ALL, scale)
    title = "Backings, to one scale, seen from the back; the small box is the label"
    yield cropped(pen, "backings", title, told)
    for size, plan in planned:
        pen = fitted(_alone(size, plan), ONE, scale)
        title = f"Backing, {size.name}: {_panels(size, plan)}"
        yield cropped(pen, name("backing", size.name), title, _described(size, plan))


def _alone(size: Size, plan: BackingPlan) -> Callable[[Pen], None]:
    return lambda pen: _back(pen, size, plan, 0.0)


def _along_length(plan: BackingPlan) -> bool:
    """Whether the lengths of cloth lie one below the other."""
    return plan.best.seams == "crosswise"


def _made(plan: BackingPlan) -> tuple[float, float]:
    """Width and length as seamed, before it is trimmed."""
    across, down = plan.size.across, plan.size.down or plan.best.made
    wide, long = plan.best.each, plan.best.made
    if not _along_length(plan):
        wide, long = long, wide
    return float(max(wide, across)), float(max(long, down))


def _back(pen: Pen, size: Size, plan: BackingPlan, x: float) -> None:
    """The lengths as they are seamed, what is trimmed off hatched, the quilt in outline."""
    wide, long = _made(plan)
    across, down = float(plan.size.across), float(plan.size.down or plan.best.made)
    fill: Fill = size.cloths.fabric(plan.fabric) if plan.fabric else PAPER
    pen.rectangle(x, 0, wide, long, WASTE, "outline")
    pen.rectangle(x, 0, across, down, ghost(fill), None)
    laid = tuple(bands(plan))
    for band in laid:
        _band(pen, size, plan, band, x)
    pen.rectangle(x, 0, across, down, None, "edge")
    _quilt(pen, size, x, across, down)
    _measures(pen, size, plan, laid, x)
    pen.label(x + wide / 2, long + pen.pt(BELOW), _panels(size, plan), LETTERS)


def _band(pen: Pen, size: Size, plan: BackingPlan, band: Band, x: float) -> None:
    """The seam where a length begins; a strip of spare cloth in the tones of its patches."""
    each, across = float(plan.best.each), not _along_length(plan)
    for start, long, fabric in patched(plan, band):
        box = (
            (band.start, start, band.wide, long) if across else (start, band.start, long, band.wide)
        )
        pen.rectangle(x + box[0], *box[1:], size.cloths.fabric(fabric), "outline")
    for at in (band.start, *([band.end] if band.insert else [])):
        if at > 0:
            ends = ((x + at, 0), (x + at, each)) if across else ((x, at), (x + each, at))
            pen.line(ends, "seam")


def _quilt(pen: Pen, size: Size, x: float, across: float, down: float) -> None:
    """The quilt in the middle, its corners as they are bound, the label at its lower right."""
    wide, long = size.top
    left, top = x + (across - wide) / 2, (down - long) / 2
    binding = size.quilt.binding
    radius = float(binding.radius) if binding and binding.radius else 0.0
    pen.patch(rounded(left, top, wide, long, radius), None, "outline")
    pen.label(x + across / 2, down / 2, "quilt", LETTERS, plate="#ffffff")
    label = size.plans.cutting.label
    if label is not None and label.finished.down is not None:
        sides = float(label.finished.across), float(label.finished.down)
        if radius + sides[0] < wide / 2 and sides[1] < long / 2:
            inside = radius / 3 + pen.pt(2)
            corner = left + wide - inside - sides[0], top + long - inside - sides[1]
            pen.rectangle(*corner, *sides, WHITE, "outline")


def _measures(pen: Pen, size: Size, plan: BackingPlan, laid: tuple[Band, ...], x: float) -> None:
    """The trimmed backing's sides, and how far apart its seams lie."""
    across, down = float(plan.size.across), float(plan.size.down or plan.best.made)
    wide, long = (
        words.length(side, size.system) for side in (plan.size.across, plan.size.down or 0)
    )
    beside, high = pen.pt(BESIDE), _made(plan)[1]
    stacked = _along_length(plan)
    pen.dimension((x, down), (x, 0), long, beside, LETTERS)
    if stacked or len(laid) < 2:
        pen.dimension((x + across, high), (x, high), wide, beside, LETTERS)
    else:
        pen.dimension((x, 0), (x + across, 0), wide, beside, LETTERS)
    for band in laid if len(laid) > 1 else ():
        text = words.length(band.shows, size.system)
        end = min(band.end, down if stacked else across)
        if end - band.start < pen.text_width(text, LETTERS) + pen.pt(6):
            continue
        if stacked:
            edge = x + _made(plan)[0]
            pen.dimension((edge, band.start), (edge, end), text, beside, LETTERS)
        else:
            pen.dimension((x + end, high), (x + band.start, high), text, beside, LETTERS)


def _panels(size: Size, plan: BackingPlan) -> str:
    each = words.length(plan.best.each, size.system)
    told = (
        f"{plan.best.panels} × {each} of cloth" if plan.best.panels > 1 else f"1 length of {each}"
    )
    return f"{told} and a strip" if plan.best.insert else told


def _described(size: Size, plan: BackingPlan) -> str:
    cut, best = words.cut(plan.size, size.system), plan.best
    if not best.joins:
        return f"Backing for {size.name}: one length of cloth, trimmed to {cut}."
    seams = words.counted(best.joins, "seam")
    way = "across" if best.seams == "crosswise" else "down"
    each = words.length(best.each, size.system)
    lengths = f"{words.counted(best.panels, 'length')} of cloth, each {each} long"
    if best.insert is not None:
        wide = words.length(best.insert.width, size.system)
        lengths = f"{lengths} and a strip of spare cloth cut {wide} wide"
    apart = ", ".join(words.length(band.shows, size.system) for band in bands(plan))
    return (
        f"Backing for {size.name}: {lengths}, joined by {seams} running {way} the quilt, {apart} "
        f"apart, trimmed to {cut}."
    )
