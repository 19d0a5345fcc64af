"""The pieces of one strip in their places: in columns, in stacks, and from both ends if folded."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from patternbook.cutting.records import Cut, Strip
from patternbook.cutting.steps import folded
from patternbook.diagrams import labels, words
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.shape import box
from patternbook.diagrams.shown import Shown, shaped
from patternbook.forms import by_name
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Fill
from patternbook.strokes.tones import WASTE


def lying(strip: Strip, form: str, fill: Fill, x: float, y: float) -> Iterator[Shown]:
    """Every piece of a strip. One that stays folded is cut from both of its ends at once, and
    what is left lies at the fold."""
    left, right = x, x + float(strip.length)
    for cut in strip.cuts:
        along = float(strip.length if cut.whole else cut.along)
        halves = cut.columns // 2 if folded(by_name[form], strip) else 0
        for column in range(cut.columns):
            behind = column >= cut.columns - halves
            right -= along if behind else 0
            yield from _column(cut, column, along, fill, right if behind else left, y)
            left += 0 if behind else along


def _column(cut: Cut, column: int, along: float, fill: Fill, x: float, y: float) -> Iterator[Shown]:
    """One cut across the strip: its pieces side by side, and those that lie above them."""
    for one in cut.stacked:
        lanes = max(one.lanes, 1)
        wide = along if one is cut else float(one.along)
        for _ in range(min(lanes, one.number - column * lanes)):
            yield Shown(one.letter, x, y, wide, float(one.across), fill)
            y += float(one.across)


def upright(strip: Strip, fill: Fill, x: float, y: float) -> Iterator[Shown]:
    """The pieces of a strip that stands, in a pre-cut piece of cloth that is turned."""
    for cut in strip.cuts:
        for column in range(cut.columns):
            for one in _column(cut, column, float(cut.along), fill, 0.0, 0.0):
                yield Shown(one.letter, x + one.y, y, one.down, one.across, fill)
            y += float(cut.along)


def strip(pen: Pen, size: Size, one: Strip, form: str, fill: Fill, x: float, y: float) -> None:
    """A strip with its pieces; what is left over is hatched."""
    wide, high = float(one.length), float(one.width)
    pen.rectangle(x, y, wide, high, WASTE, "outline")
    if one.join:
        patch = Shown("", x, y, wide, high, fill)
        pen.rectangle(x, y, wide, high, fill, "outline")
        labels.inside(pen, patch, words.listed(one.letters))
        return
    for patch in lying(one, form, fill, x, y):
        piece(pen, size, patch)
    if folded(by_name[form], one):
        middle = x + wide / 2
        reach = pen.pt(3)
        pen.line(((middle, y - reach), (middle, y + high + reach)), "fold")


def piece(pen: Pen, size: Size, patch: Shown) -> None:
    """One piece, with the cuts from corner to corner where it is cut into triangles."""
    pen.rectangle(patch.x, patch.y, patch.across, patch.down, patch.fill, "outline")
    known = size.quilt.pieces.get(patch.letter)
    right, low = patch.x + patch.across, patch.y + patch.down
    if known and known.diagonal:
        pen.line(((patch.x, low), (right, patch.y)), "cut")
    if known and known.diagonal == "twice":
        pen.line(((patch.x, patch.y), (right, low)), "cut")
    for part in _parts(patch, known.diagonal if known else None):
        labels.inside(pen, part, patch.letter)


def _parts(patch: Shown, diagonal: str | None) -> Iterator[Shown]:
    """The triangles that a piece is cut into, or the piece itself."""
    corners = box(patch.x, patch.y, patch.across, patch.down)
    first, second, third, fourth = corners
    if diagonal is None:
        yield patch
    elif diagonal == "once":
        for half in ((first, second, fourth), (second, third, fourth)):
            yield shaped(patch.letter, half, patch.fill)
    else:
        middle = (patch.x + patch.across / 2, patch.y + patch.down / 2)
        for one, other in pairwise((*corners, first)):
            yield shaped(patch.letter, (one, other, middle), patch.fill)
