"""A drawing as matplotlib artists: one path for patches of a fabric, one for lines of a role."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import cast

import numpy as np
from matplotlib.artist import Artist
from matplotlib.backend_bases import RendererBase
from matplotlib.colors import to_rgba
from matplotlib.patches import PathPatch
from matplotlib.path import Path
from matplotlib.transforms import Affine2D, Transform

from patternbook.strokes.hatching import hatching
from patternbook.strokes.lettering import CAP_HEIGHT, face
from patternbook.strokes.paper import Paper, Sheet
from patternbook.strokes.renderer import Lettering
from patternbook.strokes.stacking import layers
from patternbook.strokes.stroke import (
    STYLES,
    Arrow,
    Drawing,
    Label,
    Line,
    LineStyle,
    Patch,
    Point,
    Stroke,
)

_START = {"start": 0.0, "middle": 0.5, "end": 1.0}


def paper(drawing: Drawing) -> Paper:
    """The drawing on a sheet of its own size, for a page or for SVG."""
    sheet = Paper(*drawing.inches)
    draw(drawing, sheet)
    return sheet


def draw(drawing: Drawing, sheet: Sheet) -> None:
    """Put the drawing on a sheet that is as large as it."""
    up = Affine2D().scale(drawing.scale, -drawing.scale).translate(0, drawing.inches[1])
    place, pt = up + sheet.dpi_scale_trans, 1 / 72 / drawing.scale
    artists = (one for layer in layers(drawing) for one in _artists(layer.strokes, pt, place))
    for height, artist in enumerate(artists):
        artist.set_zorder(height)
        sheet.add_artist(artist)


def _artists(strokes: Sequence[Stroke], pt: float, place: Transform) -> Iterable[Artist]:
    """The artists of one layer; all its strokes are of one look."""
    first = strokes[0]
    match first:
        case Patch():
            return _patches(first, cast("Sequence[Patch]", strokes), pt, place)
        case Line():
            lines = cast("Sequence[Line]", strokes)
            ways = _ways((line.points, line.closed) for line in lines)
            return (_stroked(ways, STYLES[first.role], place),)
        case Arrow():
            return _arrows(first, cast("Sequence[Arrow]", strokes), pt, place)
        case Label():
            return _labels(cast("Sequence[Label]", strokes), pt, place)


def _ways(ways: Iterable[tuple[Sequence[Point], bool]]) -> Path:
    """One path of many lines, open or closed."""
    points: list[Point] = []
    codes = bytearray()
    for way, closed in ways:
        points.extend(way)
        codes += b"\1" + b"\2" * (len(way) - 1)
        if closed:
            points.append(way[0])
            codes.append(Path.CLOSEPOLY)
    return Path(np.array(points, float), np.frombuffer(bytes(codes), np.uint8))


def _filled(path: Path, colour: str, place: Transform) -> PathPatch:
    return PathPatch(path, transform=place, facecolor=colour, edgecolor="none", linewidth=0)


def _stroked(path: Path, style: LineStyle, place: Transform, fill: str = "none") -> PathPatch:
    dash = (0, style.dash) if style.dash else "solid"
    return PathPatch(
        path,
        transform=place,
        facecolor=fill,
        edgecolor=style.colour,
        linewidth=style.width,
        linestyle=dash,
        capstyle="round" if style.dash else "butt",
        joinstyle="round",
    )


def _patches(
    first: Patch, patches: Sequence[Patch], pt: float, place: Transform
) -> Iterable[Artist]:
    """The fill of all, then the hatching, then the outline of all."""
    path = _ways((patch.points, True) for patch in patches)
    outline, fill = first.outline and STYLES[first.outline], first.fill
    if outline and not (fill and fill.hatch):
        yield _stroked(path, outline, place, fill.colour if fill else "none")
        return
    if fill:
        yield _filled(path, fill.colour, place)
    if fill and (hatch := fill.hatch):
        lines = [(line, False) for patch in patches for line in hatching(patch.points, hatch, pt)]
        if lines:
            yield _stroked(_ways(lines), LineStyle(hatch.width, hatch.colour), place)
    if outline:
        yield _stroked(path, outline, place)


def _arrows(first: Arrow, arrows: Sequence[Arrow], pt: float, place: Transform) -> Iterable[Artist]:
    shafts, heads = [], []
    for arrow in arrows:
        points = list(arrow.points)
        if arrow.heads != "start":
            points[-1], head = _head(points[-2], points[-1], arrow.size * pt)
            heads.append(head)
        if arrow.heads != "end":
            points[0], head = _head(points[1], points[0], arrow.size * pt)
            heads.append(head)
        shafts.append(points)
    style = STYLES[first.role]
    yield _stroked(_ways((shaft, False) for shaft in shafts), style, place)
    yield _filled(_ways((head, True) for head in heads), style.colour, place)


def _head(before: Point, tip: Point, size: float) -> tuple[Point, Sequence[Point]]:
    """Where the shaft ends, and the head from there to the tip."""
    length = math.dist(before, tip) or 1.0
    dx, dy = ((tip[0] - before[0]) / length * size, (tip[1] - before[1]) / length * size)
    base = (tip[0] - dx, tip[1] - dy)
    wings = [(base[0] + turn * dy * 0.38, base[1] - turn * dx * 0.38) for turn in (1, -1)]
    return (tip[0] - dx * 0.8, tip[1] - dy * 0.8), (tip, *wings)


def _labels(labels: Sequence[Label], pt: float, place: Transform) -> Iterable[Artist]:
    for label in labels:
        if label.plate:
            yield _filled(_ways([(_slip(label, pt), True)]), label.plate, place)
    for label in labels:
        artist = LabelArtist(label)
        artist.set_transform(place)
        yield artist


def _slip(label: Label, pt: float) -> Sequence[Point]:
    """The four corners of the slip under a label."""
    wide = face(label.weight, label.italic).width(label.text) * label.size * pt
    air, half = 1.2 * pt, label.size * CAP_HEIGHT / 2 * pt
    left = -wide * _START[label.anchor] - air
    right = left + wide + 2 * air
    turn = math.radians(label.angle)
    cos, sin = math.cos(turn), -math.sin(turn)
    corners = ((left, -half - air), (right, -half - air), (right, half + air), (left, half + air))
    return [(label.x + x * cos - y * sin, label.y + x * sin + y * cos) for x, y in corners]


class LabelArtist(Artist):
    """One line of words, put down by the booklet's own measures, so that every output agrees."""

    def __init__(self, label: Label) -> None:
        super().__init__()
        self.label = label

    def draw(self, renderer: RendererBase) -> None:
        """Hand the words on, with the place where their base line starts."""
        label = self.label
        own = face(label.weight, label.italic)
        x, y = (float(v) for v in self.get_transform().transform([label.x, label.y]))
        size: float = np.asarray(renderer.points_to_pixels(label.size)).item()
        back, down = own.width(label.text) * size * _START[label.anchor], CAP_HEIGHT * size / 2
        turn = math.radians(label.angle)
        x += -back * math.cos(turn) + down * math.sin(turn)
        y += -back * math.sin(turn) - down * math.cos(turn)
        if renderer.flipy():
            y = renderer.get_canvas_width_height()[1] - y
        gc = renderer.new_gc()
        gc.set_foreground(to_rgba(label.colour), isRGBA=True)
        renderer.draw_text(gc, x, y, label.text, Lettering(own, label.size), label.angle)
        gc.restore()
