"""The quilting map: every line at its real place over a pale top, numbered in order."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.quilting.records import QuiltingMap, StitchLine
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Point
from patternbook.strokes.tones import ghost

ALL: Final = (7.2, 3.4)
ONE: Final = (3.5, 4.6)
LARGEST: Final = 0.1
NUMBER: Final = 8.0  # points


def quiltings(pattern: Pattern) -> Iterator[Drawing]:
    """All sizes side by side to one scale, then each by itself."""
    planned = [(size, size.quilting) for size in pattern.tops if size.quilting is not None]
    if not planned:
        return
    scale = LARGEST / (2.54 if pattern.first.system.unit == "cm" else 1)

    def side_by_side(pen: Pen) -> None:
        x = 0.0
        for size, plan in planned:
            _map(pen, size, plan, x)
            wide = float(size.quilt.finished.across) if size.quilt.finished else 0.0
            pen.label(x + wide / 2, -pen.pt(24), words.title(size.name), 10, weight=600)
            x += wide + pen.pt(30)

    pen = fitted(side_by_side, ALL, scale)
    told = " ".join(described(size, plan) for size, plan in planned)
    yield cropped(pen, "quiltings", "Quilting, all sizes to one scale", told)
    for size, plan in planned:
        pen = fitted(_alone(size, plan), ONE, scale)
        gap = words.length(plan.gap, size.system)
        title = f"Quilting, {size.name}: {len(plan.lines)} lines, at most {gap} apart"
        yield cropped(pen, name("quilting", size.name), title, described(size, plan))


def _alone(size: Size, plan: QuiltingMap) -> Callable[[Pen], None]:
    return lambda pen: _map(pen, size, plan, 0.0)


def _map(pen: Pen, size: Size, plan: QuiltingMap, x: float) -> None:
    _ghost(pen, size, x)
    near = _nearest(plan)
    for line in plan.lines:
        _line(pen, line, plan, x, near)
    _numbers(pen, plan, x)


def _ghost(pen: Pen, size: Size, x: float) -> None:
    """The top, pale, so that the lines read on it."""
    for patch, fill in zip(size.plans.patches, size.fills(), strict=True):
        left, top, across, down = (float(side) for side in patch[1:5])
        pen.rectangle(x + left, top, across, down, ghost(fill), "ground")
    if size.quilt.finished:
        pen.rectangle(x, 0, *map(float, size.quilt.finished), None, "edge")


def _nearest(plan: QuiltingMap) -> float:
    """How close the closest two lines lie: their signs must fit in there."""
    places = sorted(float(line.at) for line in plan.lines)
    return min((b - a for a, b in zip(places, places[1:], strict=False)), default=float(plan.gap))


def _line(pen: Pen, line: StitchLine, plan: QuiltingMap, x: float, near: float) -> None:
    """One line with a dot where it starts, an arrow along it and a bar where it ends."""
    start = (x + float(line.start.x), float(line.start.y))
    end = (x + float(line.end.x), float(line.end.y))
    room = near / pen.pt(1)
    pen.line((start, end), "quilting")
    for share in (0.28, 0.72):
        tail, head = (_along(start, end, share + step) for step in (-0.02, 0.02))
        pen.arrow((tail, head), "quilting", "end", min(5.0, max(2.2, room * 0.8)))
    pen.dot(*start, min(4.5, max(1.8, room * 0.62)))
    half = pen.pt(min(3.5, max(1.0, room * 0.36)))
    out = (half, 0.0) if plan.way == "down" else (0.0, half)
    pen.line(((end[0] - out[0], end[1] - out[1]), (end[0] + out[0], end[1] + out[1])), "edge")


def _along(a: Point, b: Point, share: float) -> Point:
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def _numbers(pen: Pen, plan: QuiltingMap, x: float) -> None:
    """Numbers outside the edge where their lines start; as many as stand clear of one another."""
    by_edge: dict[float, list[StitchLine]] = {}
    for line in plan.lines:
        along = line.start.y if plan.way == "down" else line.start.x
        by_edge.setdefault(float(along), []).append(line)
    far = max(by_edge)
    for along, lines in by_edge.items():
        out = pen.pt(10) if len(by_edge) > 1 and along == far else -pen.pt(10)
        edge = along + float(plan.margin) if out > 0 else along - float(plan.margin)
        for line in _clear(pen, lines, plan):
            at = float(line.at)
            if plan.way == "down":
                pen.label(x + at, edge + out, str(line.order), NUMBER)
            else:
                anchor = "start" if out > 0 else "end"
                side = edge + (pen.pt(4) if out > 0 else -pen.pt(4))
                pen.label(x + side, at, str(line.order), NUMBER, anchor=anchor)


def _clear(pen: Pen, lines: Sequence[StitchLine], plan: QuiltingMap) -> list[StitchLine]:
    """The first line and every so manieth, so far apart that their numbers do not touch."""
    width = pen.text_width(str(len(plan.lines)), NUMBER) if plan.way == "down" else pen.pt(NUMBER)
    kept: list[StitchLine] = []
    for line in sorted(lines, key=lambda line: line.order):
        if not kept or abs(float(line.at - kept[-1].at)) > width + pen.pt(3):
            kept.append(line)
    return kept


def described(size: Size, plan: QuiltingMap) -> str:
    """The quilting in words: way, number, spacing, order."""
    system = size.system
    along = "down the quilt" if plan.way == "down" else "across the quilt"
    turn = sum(1 for line in plan.lines if _first_half(plan, line))
    return (
        f"Quilting of the {size.name} size: {len(plan.lines)} straight lines {along}, at most "
        f"{words.length(plan.gap, system)} apart, none on a long seam. Lines 1 to {turn} go from "
        f"the middle out to one side; then the quilt is turned round for the other half. Every line "
        f"starts and stops {words.length(plan.margin, system)} from the finished edge."
    )


def _first_half(plan: QuiltingMap, line: StitchLine) -> bool:
    """Whether a line is sewn before the quilt is turned round."""
    one, first = (line.start.y, plan.lines[0].start.y) if plan.way == "down" else (line.start.x, plan.lines[0].start.x)
    return one == first
