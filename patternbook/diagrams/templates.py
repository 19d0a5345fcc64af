"""Templates at true scale: cut line, seam line, marks, grain, and what each is for."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from patternbook.diagrams.cutout import Cutout, cutouts
from patternbook.diagrams.papers import papers
from patternbook.diagrams.pattern import Pattern
from patternbook.diagrams.print_bar import print_bar
from patternbook.diagrams.sheet import cropped
from patternbook.diagrams.template_text import Words, write_inside
from patternbook.diagrams.tiles import Tile, draw_joins, parted, shows_something, tiles
from patternbook.quilt.cut_line import Edge, box
from patternbook.quilt.template import HEXAGONS, Curve
from patternbook.strokes.pen import Pen
from patternbook.strokes.placing import Placing
from patternbook.strokes.stroke import Drawing, Point, Role

JOINED: Final = 30.0  # points beside the rim of a tile that are left to its joins
LONG: Final = 4.0  # inches from which an edge has a mark at its middle
UP: Final = (0.0, 1.0)
ACROSS: Final = (1.0, 0.0)


def templates(pattern: Pattern) -> Iterator[Drawing]:
    """The test bar, every template (in tiles where it is larger than a page), paper hexagons."""
    shapes = tuple(cutouts(pattern))
    if not shapes:
        return
    yield print_bar()
    for shape in shapes:
        yield from _drawn(shape)
    for shape in shapes:
        if shape.template.kind in HEXAGONS:
            sheet = papers(shape)
            if sheet is not None:
                yield sheet


def _drawn(shape: Cutout) -> Iterator[Drawing]:
    wide, high = (side * shape.scale for side in shape.size)
    upright, lying = tiles((wide, high)), tiles((high, wide))
    turned = len(lying) < len(upright)
    figure, parts = Figure(shape, turned=turned), lying if turned else upright
    if len(parts) == 1:
        yield figure.whole()
        return
    shown = [tile for tile in parts if shows_something(figure.cut, tile, shape.scale)]
    for tile in shown:
        yield figure.tile(tile)


class Figure:
    """The lines of one template as they lie on the paper, and their drawing."""

    def __init__(self, shape: Cutout, *, turned: bool) -> None:
        self.shape = shape
        way = Placing.still.turned(1) if turned else Placing.still
        left, top, _, _ = box(tuple(map(way.point, shape.cut)))
        self.way = way.moved(-left, -top)
        self.grain = ACROSS if turned else UP
        self.cut = self._lie(shape.cut)

    def _lie(self, curve: Curve) -> Curve:
        return tuple(map(self.way.point, curve))

    def lines(self) -> Iterator[tuple[Curve, Role, bool]]:
        """Every line, what it means, and whether it is closed."""
        shape = self.shape
        yield self.cut, "edge", True
        if not shape.template.laid_on:
            yield self._lie(shape.sew), "seam", True
        for curve in shape.inner:
            yield self._lie(curve), "mark", False
        for ends in self._marks():
            yield self._lie(shape.placed(ends)), "edge", False

    def _marks(self) -> Iterator[tuple[Point, Point]]:
        """Short lines across the allowance, to be matched: the middle and both ends of a curve,
        the middle of a long edge."""
        seam = float(self.shape.seam)
        for edge in self.shape.seams:
            if edge.centre is not None:
                for share in (0.0, 0.5, 1.0):
                    yield _across(edge, share, seam)
            elif math.dist(edge.start, edge.end) * self.shape.scale >= LONG:
                yield _across(edge, 0.5, seam)

    def whole(self) -> Drawing:
        """The template on one sheet."""
        shape, pen = self.shape, Pen(1, 1, self.shape.scale)
        for curve, role, closed in self.lines():
            pen.line(curve, role, closed=closed)
        words = Words(shape.called, (*shape.counted, shape.figures, *shape.notes))
        field = self.cut if shape.template.laid_on else self._lie(shape.sew)
        rest = write_inside(pen, field, words, self.grain, tuple(map(self._lie, shape.inner)))
        _under(pen, self.cut, rest)
        return cropped(pen, shape.name, shape.title, self._alt())

    def tile(self, tile: Tile) -> Drawing:
        """One part of it, with the lines where the others join."""
        shape, pen = self.shape, Pen(1, 1, self.shape.scale)
        left, top, right, low = within = tile.on(shape.scale)
        lines = [
            (part, role)
            for curve, role, closed in self.lines()
            for part in parted(curve, within, closed=closed)
        ]
        for part, role in lines:
            pen.line(part, role)
        draw_joins(pen, tile, shape.scale)
        said = f"Tile {tile.number} of {tile.of}"
        words = Words(shape.called, (said, *shape.counted, shape.figures))
        inset = pen.pt(JOINED)
        left, top, right, low = left + inset, top + inset, right - inset, low - inset
        field = ((left, top), (right, top), (right, low), (left, low))
        write_inside(pen, field, words, self.grain, [part for part, _ in lines])
        title = f"{shape.title} {said}: lay the dashed lines and crosses on one another."
        return cropped(pen, f"{shape.name}-tile-{tile.number}", title, f"{self._alt()} {said}.")

    def _alt(self) -> str:
        lines = "The solid line is cut"
        if not self.shape.template.laid_on:
            lines += ", the dashed line is sewn"
        said = f"Template at true scale. {self.shape.title} {lines};"
        return f"{said} the arrow is the straight grain."


def _under(pen: Pen, cut: Curve, words: Words | None) -> None:
    """What had no room inside stands under the shape."""
    if words is None:
        return
    left, _, _, low = box(cut)
    lines = (*filter(None, (words.head,)), *words.lines)
    for number, line in enumerate(lines):
        pen.label(left, low + pen.pt(9 + 11 * number), line, 8, anchor="start")


def _across(edge: Edge, share: float, seam: float) -> tuple[Point, Point]:
    """From the seam line to the cut line, so far along the edge."""
    out = edge.out(seam)
    if edge.centre is None:
        return _between(edge.start, edge.end, share), _between(out.start, out.end, share)
    middle = _between(edge.start, edge.end, 0.5)
    bow = _between(edge.centre, middle, edge.radius / math.dist(middle, edge.centre))
    at = {0.0: edge.start, 0.5: bow, 1.0: edge.end}[share]
    return at, _between(edge.centre, at, out.radius / edge.radius)


def _between(start: Point, end: Point, share: float) -> Point:
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share
