"""Which strokes may be drawn in one go without changing what lies on top of what.

A quilt has thousands of patches and a handful of fabrics; a page is small and quick when all
patches of a fabric are one path. A stroke joins the lowest layer of its look that lies above
every stroke it touches; where there is none it starts a new layer. Nearness is settled by
boxes, and between patches by a separating line along one of their edges, so that neighbours
which only meet at an edge never hold one another up.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

from patternbook.strokes.stroke import STYLES, Arrow, Drawing, Label, Patch, Point, Stroke

Box = tuple[float, float, float, float]
_SQUARES: Final = 32  # the sheet is ruled into so many squares a side, to find neighbours
_WIDE: Final = 40  # strokes over more squares than this are compared by box alone
_TOUCH: Final = 1e-6


@dataclass
class Layer:
    """Strokes of one look that no other stroke comes between, and the box round them all."""

    look: tuple[object, ...]
    box: Box
    strokes: list[Stroke] = field(default_factory=list)


def layers(drawing: Drawing) -> list[Layer]:
    """The strokes in layers, lowest first."""
    stack = _Stack(drawing)
    for stroke in drawing.strokes:
        stack.lay(stroke)
    return stack.layers


def _look(stroke: Stroke) -> tuple[object, ...]:
    match stroke:
        case Patch():
            return "patch", stroke.fill, stroke.outline
        case Label():
            return ("label",)
        case _:
            return type(stroke).__name__, stroke.role


class _Stack:
    def __init__(self, drawing: Drawing) -> None:
        self.pt = 1 / 72 / drawing.scale
        self.square = max(drawing.width, drawing.height) / _SQUARES
        self.layers: list[Layer] = []
        self.of_look: dict[tuple[object, ...], list[int]] = defaultdict(list)
        self.near: dict[tuple[int, int], list[tuple[Box, int, Stroke]]] = defaultdict(list)
        self.wide: list[tuple[Box, int, Stroke]] = []

    def lay(self, stroke: Stroke) -> None:
        box, look = self._box(stroke), _look(stroke)
        squares = self._squares(box)
        above = self._topmost(stroke, box, squares)
        at = next((layer for layer in self.of_look[look] if layer > above), len(self.layers))
        if at == len(self.layers):
            self.layers.append(Layer(look, box))
            self.of_look[look].append(at)
        layer = self.layers[at]
        layer.strokes.append(stroke)
        layer.box = _union(layer.box, box)
        for square in squares:
            self.near[square].append((box, at, stroke))
        if not squares:
            self._widen(box, at, stroke)

    def _widen(self, box: Box, at: int, stroke: Stroke) -> None:
        """Long lines of one layer count as one wide box; a wide patch keeps its shape."""
        if not isinstance(stroke, Patch):
            for index, (old, layer, other) in enumerate(self.wide):
                if layer == at:
                    self.wide[index] = (_union(old, box), at, other)
                    return
        self.wide.append((box, at, stroke))

    def _topmost(self, stroke: Stroke, box: Box, squares: Sequence[tuple[int, int]]) -> int:
        """The highest layer with a stroke that this one has to lie above; -1 where none is."""
        if not squares:
            return self._topmost_whole(stroke, box)
        found = -1
        for boxes in (*(self.near[square] for square in squares), self.wide):
            for other, layer, below in boxes:
                if layer > found and _meet(box, other) and _over(stroke, below):
                    found = layer
        return found

    def _topmost_whole(self, stroke: Stroke, box: Box) -> int:
        """The same for a wide stroke, which keeps clear of layers as a whole."""
        alike = None if isinstance(stroke, Patch) else _look(stroke)
        for at in range(len(self.layers) - 1, -1, -1):
            if _meet(box, self.layers[at].box) and self.layers[at].look != alike:
                return at
        return -1

    def _box(self, stroke: Stroke) -> Box:
        if isinstance(stroke, Label):
            return self._label_box(stroke)
        xs, ys = zip(*stroke.points, strict=True)
        box = min(xs), min(ys), max(xs), max(ys)
        if isinstance(stroke, Patch):
            return _grown(box, -_TOUCH * self.square)
        reach = stroke.size if isinstance(stroke, Arrow) else STYLES[stroke.role].width / 2
        return _grown(box, reach * self.pt)

    def _label_box(self, label: Label) -> Box:
        """Rather too wide than too narrow: no letter is wider than its size."""
        wide, high = len(label.text) * label.size * self.pt, label.size * self.pt
        if label.angle:
            high = wide
        return label.x - wide, label.y - high, label.x + wide, label.y + high

    def _squares(self, box: Box) -> list[tuple[int, int]]:
        """The squares under the box; none where it is wide."""
        left, top, right, low = (int(side // self.square) for side in box)
        if (right - left + 1) * (low - top + 1) > _WIDE:
            return []
        return [(x, y) for x in range(left, right + 1) for y in range(top, low + 1)]


def _union(one: Box, two: Box) -> Box:
    (a, b, c, d), (e, f, g, h) = one, two
    return min(a, e), min(b, f), max(c, g), max(d, h)


def _grown(box: Box, by: float) -> Box:
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def _meet(one: Box, two: Box) -> bool:
    return one[0] < two[2] and two[0] < one[2] and one[1] < two[3] and two[1] < one[3]


def _over(stroke: Stroke, below: Stroke) -> bool:
    """Whether a stroke whose box meets another's has to be drawn after it."""
    if isinstance(stroke, Patch) and isinstance(below, Patch):
        return not _parted(stroke.points, below.points)
    # Lines of one role, and labels, look the same whichever of them is drawn first.
    return isinstance(stroke, Patch) or _look(stroke) != _look(below)


def _parted(one: Sequence[Point], two: Sequence[Point]) -> bool:
    """Whether a line along an edge of either keeps two polygons apart."""
    if len(one) > 8 or len(two) > 8:
        return False
    return any(
        _spread(one, edge)[1] <= _spread(two, edge)[0] + slack
        or _spread(two, edge)[1] <= _spread(one, edge)[0] + slack
        for edge, slack in _edges(one, two)
    )


def _edges(one: Sequence[Point], two: Sequence[Point]) -> Iterator[tuple[Point, float]]:
    """Directions square to each edge, and how much counts as touching."""
    for points in (one, two):
        for (ax, ay), (bx, by) in zip(points, (*points[1:], points[0]), strict=True):
            normal = (by - ay, ax - bx)
            yield normal, _TOUCH * (abs(normal[0]) + abs(normal[1])) ** 2


def _spread(points: Sequence[Point], along: Point) -> tuple[float, float]:
    reach = [x * along[0] + y * along[1] for x, y in points]
    return min(reach), max(reach)
