"""Fusible web: where the shapes are traced on it, reversed, one row of each kind."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from patternbook.cutting.records import WebBox, WebPlan, WebRow
from patternbook.diagrams import labels, words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.shape import Points, box
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.shown import shaped
from patternbook.quilt.points import outlined
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count
from patternbook.strokes.stroke import Drawing, Fill

MOST: Final = (3.5, 8.5)
WIDE: Final = 1.8  # inches on paper for the width of the web
AIR: Final = 7.0  # points between rows
PAPER: Final = Fill("#ffffff")


def webs(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing for every web of every size."""
    for size in pattern.sizes:
        for plan in size.plans.cutting.webs.values():
            yield _web(size, plan)


def _web(size: Size, plan: WebPlan) -> Drawing:
    def drawn(pen: Pen) -> None:
        wide = f"width {words.length(plan.width, size.system)}"
        pen.dimension((0, 0), (float(plan.width), 0), wide, 0, 8)
        y = pen.pt(8)
        for number, (row, boxes) in enumerate(_rows(plan), start=1):
            _row(pen, size, plan, row, boxes, y, number)
            y += float(row.down) + pen.pt(AIR)

    pen = fitted(drawn, MOST, WIDE / float(plan.width))
    title = f"{words.title(plan.fabric)}, {size.name}: shapes traced reversed"
    return cropped(pen, name("web", plan.fabric, size.name), title, _described(size, plan))


def _rows(plan: WebPlan) -> Iterator[tuple[WebRow, Sequence[WebBox]]]:
    """Each kind of row, and the boxes of its first one, from its upper edge."""
    low = plan.length - plan.length
    for row in plan.rows:
        here = [box for box in plan.boxes if low <= box.y < low + row.down]
        yield row, [box._replace(y=box.y - low) for box in here]
        low += row.down * row.times


def _row(
    pen: Pen,
    size: Size,
    plan: WebPlan,
    row: WebRow,
    boxes: Sequence[WebBox],
    y: float,
    number: int,
) -> None:
    wide, high = float(plan.width), float(row.down)
    pen.rectangle(0, y, wide, high, PAPER, "outline")
    for one in boxes:
        _traced(pen, size, plan, one, y)
    text = words.length(row.down, size.system)
    count(pen, -pen.pt(25) - pen.text_width(text, 8), y + high / 2, number, size=8)
    bar = -pen.pt(10)
    pen.arrow(((bar, y + high), (bar, y)), "dimension", "both", 3.5)
    pen.label(-pen.pt(14), y + high / 2, text, 8, anchor="end")
    step, right = pen.pt(labels.LINE), wide + pen.pt(9)
    pen.label(right, y + high / 2 - step / 2, f"× {row.times}", 8, anchor="start", weight=600)
    pen.label(right, y + high / 2 + step / 2, _each(row), 8, anchor="start")


def _traced(pen: Pen, size: Size, plan: WebPlan, one: WebBox, y: float) -> None:
    """One shape, reversed, in the box that is cut round it."""
    left, top = float(one.x), float(one.y) + y
    pen.line((*box(left, top, float(one.across), float(one.down)),), "outline", closed=True)
    margin = float(plan.margin)
    points = tuple((x + left + margin, z + top + margin) for x, z in _reversed(size, one))
    if points:
        pen.patch(points, PAPER, "mark")
        labels.inside(pen, shaped(one.letter, points, PAPER), one.letter)


def _reversed(size: Size, one: WebBox) -> Points:
    """The shape's outline in its own box, as it is traced."""
    piece = size.quilt.pieces.get(one.letter)
    if piece is None or piece.template is None:
        return ()
    points = outlined(piece.template.sew)
    wide, high = (max(point[axis] for point in points) for axis in (0, 1))
    turned = [(wide - x, y) for x, y in points]
    return tuple((high - y, x) for x, y in turned) if one.turned else tuple(turned)


def _each(row: WebRow) -> str:
    return words.listed([f"{number} {letter}" for letter, number in row.shapes])


def _described(size: Size, plan: WebPlan) -> str:
    told = [
        f"{number}: {words.counted(row.times, 'row')}, each {words.length(row.down, size.system)} "
        f"long with {_each(row)}"
        for number, row in enumerate(plan.rows, start=1)
    ]
    return (
        f"{words.title(plan.fabric)} for {size.name}, "
        f"{words.length(plan.width, size.system)} wide: the shapes are traced reversed in rows "
        f"across it. {'; '.join(told)}."
    )
