"""Paper hexagons at true scale, as many as a sheet holds: cloth is folded round them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.cutout import Cutout
from patternbook.diagrams.naming import name
from patternbook.diagrams.sheet import cropped
from patternbook.diagrams.tiles import MOST
from patternbook.exact import Exact
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Point

LETTER: Final = 9.0  # points


def papers(cutout: Cutout) -> Drawing | None:
    """A sheet of them; None where not even two go on a page."""
    side = cutout.template.side or Exact(0)
    middles = _middles(float(side) * cutout.scale)
    half = cutout.template.kind == "half hexagon"
    each = len(middles) * (2 if half else 1)
    if each < 2:
        return None
    pen = Pen(1, 1, cutout.scale)
    for x, y in middles:
        _hexagon(pen, x / cutout.scale, y / cutout.scale, float(side), cutout.letter, half=half)
    title = (
        f"Papers for {cutout.letter}: {cutout.template.kind}s, "
        f"sides {words.length(side, cutout.system)}, no seam allowance. "
        f"{each} on a sheet: {'; '.join(_sheets(cutout, each))}."
    )
    alt = f"A sheet of {each} paper {cutout.template.kind}s to cut out along the lines. {title}"
    sizes = () if len(cutout.counts) == cutout.of_sizes else tuple(n for n, _ in cutout.counts)
    return cropped(pen, name("template", "papers", cutout.letter, *sizes), title, alt)


def _sheets(cutout: Cutout, each: int) -> Iterator[str]:
    """`print 15 sheets for the 270 of crib`."""
    for size, number in cutout.counts:
        sheets = -(-number // each)
        copies = f"print {sheets} sheet{'' if sheets == 1 else 's'}"
        of = f" of {size}" if cutout.of_sizes > 1 else ""
        yield f"{copies} for the {number}{of}"


def _middles(side: float) -> list[Point]:
    """The middles of hexagons that share their edges, in inches, within what a page holds."""
    wide, high = side * math.sqrt(3), side * 2
    rows = 1 + int((MOST[1] - high) / (side * 1.5) + 1e-9) if high <= MOST[1] else 0
    found = []
    for row in range(rows):
        over = wide / 2 if row % 2 else 0.0
        columns = int((MOST[0] - over) / wide + 1e-9)
        found += [
            (over + wide * (column + 0.5), side + row * side * 1.5) for column in range(columns)
        ]
    return found


def _hexagon(pen: Pen, x: float, y: float, side: float, letter: str, *, half: bool) -> None:
    turns = (math.pi / 6 + math.pi / 3 * corner for corner in range(6))
    corners = [(x + side * math.cos(turn), y + side * math.sin(turn)) for turn in turns]
    pen.line(corners, "sewn", closed=True)
    if half:
        pen.line(((x, y - side), (x, y + side)), "sewn")
    for middle in (x - side * 0.4, x + side * 0.4) if half else (x,):
        pen.label(middle, y, letter, LETTER, weight=600)
