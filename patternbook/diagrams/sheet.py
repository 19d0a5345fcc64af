"""Sheets cut to what is drawn on them, so that nothing is clipped, at a scale that fits."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable

from patternbook.strokes.lettering import CAP_HEIGHT, text_width
from patternbook.strokes.pen import Pen
from patternbook.strokes.placing import Placing
from patternbook.strokes.stroke import STYLES, Arrow, Drawing, Label, Patch, Stroke

Box = tuple[float, float, float, float]
Inches = tuple[float, float]
_EDGE = 2.0  # points of white round everything
_DESCENDER = 0.2  # of the size, below the letters' foot
_TRIES = 12


def reach(stroke: Stroke, pt: float) -> Box:
    """The box that a stroke covers: left, top, right, bottom."""
    if isinstance(stroke, Label):
        return _label(stroke, pt)
    around = pt * _half_width(stroke)
    xs, ys = zip(*stroke.points, strict=True)
    return min(xs) - around, min(ys) - around, max(xs) + around, max(ys) + around


def _half_width(stroke: Stroke) -> float:
    if isinstance(stroke, Arrow):
        return stroke.size / 2
    if isinstance(stroke, Patch):
        return STYLES[stroke.outline].width / 2 if stroke.outline else 0.0
    return 0.0 if isinstance(stroke, Label) else STYLES[stroke.role].width / 2


def _label(label: Label, pt: float) -> Box:
    wide = text_width(label.text, label.size, label.weight, italic=label.italic) * pt
    start = {"start": 0.0, "middle": -wide / 2, "end": -wide}[label.anchor]
    up = label.size * CAP_HEIGHT / 2 * pt
    low = up + label.size * _DESCENDER * pt
    turn = math.radians(label.angle)
    corners = [
        (
            label.x + x * math.cos(turn) + y * math.sin(turn),
            label.y - x * math.sin(turn) + y * math.cos(turn),
        )
        for x in (start, start + wide)
        for y in (-up, low)
    ]
    xs, ys = zip(*corners, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def extent(strokes: Iterable[Stroke], pt: float) -> Box:
    """The box round all strokes."""
    lefts, tops, rights, lows = zip(*(reach(stroke, pt) for stroke in strokes), strict=True)
    return min(lefts), min(tops), max(rights), max(lows)


def cropped(pen: Pen, name: str, title: str, alt: str) -> Drawing:
    """The drawing on a sheet that is just as large as what was drawn."""
    edge = pen.pt(_EDGE)
    left, top, right, low = extent(pen.strokes, pen.pt(1))
    moved = Placing.still.moved(edge - left, edge - top)
    strokes = tuple(moved.stroke(stroke) for stroke in pen.strokes)
    return Drawing(
        name, title, alt, right - left + 2 * edge, low - top + 2 * edge, pen.scale, strokes
    )


def fitted(draw: Callable[[Pen], object], most: Inches, scale: float) -> Pen:
    """The pen after drawing at that scale, or at the largest that fits the inches allowed.

    Letters do not shrink with the scale: the part of the size that does is found by trying.
    """
    pen, size = _tried(draw, scale)
    for _ in range(_TRIES):
        if all(side <= allowed for side, allowed in zip(size, most, strict=True)):
            break
        half = _tried(draw, scale / 2)[1]
        shares = zip(size, half, most, strict=True)
        fits = (_scale(scale, one, other, allowed) for one, other, allowed in shares)
        scale = min(scale * 0.97, *fits)
        pen, size = _tried(draw, scale)
    return pen


def _scale(scale: float, size: float, half: float, allowed: float) -> float:
    """The scale at which a side comes to what is allowed, if the rest of it stays as it is."""
    growing = max(size - half, size / 20) * 2
    return scale * max(0.1, 1 - (size - allowed) * 1.005 / growing)


def _tried(draw: Callable[[Pen], object], scale: float) -> tuple[Pen, Inches]:
    pen = Pen(1, 1, scale)
    draw(pen)
    left, top, right, low = extent(pen.strokes, pen.pt(1))
    edges = 2 * _EDGE / 72
    return pen, ((right - left) * scale + edges, (low - top) * scale + edges)
