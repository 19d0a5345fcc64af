"""How far strokes reach on the sheet, so that a drawing can be seen to lose nothing at its rim."""

from __future__ import annotations

import math

from patternbook.strokes.lettering import CAP_HEIGHT, text_width
from patternbook.strokes.stroke import STYLES, Drawing, Label, Patch, Point, Stroke

Box = tuple[float, float, float, float]
_SHARE = {"start": 0.0, "middle": 0.5, "end": 1.0}
_DESCENT = 0.24  # how far letters such as g hang below the line, as a share of the size


def outside(drawing: Drawing) -> tuple[Stroke, ...]:
    """The strokes that reach over the rim by more than the half of a thin line."""
    slack = 0.6 / 72 / drawing.scale
    return tuple(
        stroke
        for stroke, (left, top, right, low) in (
            (stroke, reach(stroke, drawing.scale)) for stroke in drawing.strokes
        )
        if min(left, top, drawing.width - right, drawing.height - low) < -slack
    )


def reach(stroke: Stroke, scale: float) -> Box:
    """Left, top, right and low side of all that the stroke covers, in units of the drawing."""
    pt = 1 / 72 / scale
    if isinstance(stroke, Label):
        return _box(_corners(stroke, pt), 0)
    role = stroke.outline if isinstance(stroke, Patch) else stroke.role
    return _box(stroke.points, STYLES[role].width / 2 * pt if role else 0)


def _box(points: tuple[Point, ...], more: float) -> Box:
    xs, ys = zip(*points, strict=True)
    return min(xs) - more, min(ys) - more, max(xs) + more, max(ys) + more


def _corners(label: Label, pt: float) -> tuple[Point, ...]:
    """The corners round the words, turned with them."""
    size = label.size * pt
    wide = text_width(label.text, label.size, label.weight, italic=label.italic) * pt
    left, top = -wide * _SHARE[label.anchor], -size * CAP_HEIGHT / 2
    low = -top + size * _DESCENT
    cos, sin = math.cos(math.radians(label.angle)), -math.sin(math.radians(label.angle))
    corners = ((left, top), (left + wide, top), (left + wide, low), (left, low))
    return tuple((label.x + x * cos - y * sin, label.y + x * sin + y * cos) for x, y in corners)
