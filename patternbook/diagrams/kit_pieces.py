"""Small pictures of the pieces of a kit, for the labels that are clipped to their piles."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.cutting.kits_bag import Bagged, bag
from patternbook.cutting.records import BINDING, CuttingPlan
from patternbook.diagrams.cloths import Cloths, cloths
from patternbook.diagrams.naming import name
from patternbook.diagrams.shape import Points, around, box, moved
from patternbook.diagrams.sheet import cropped
from patternbook.quilt.points import outlined
from patternbook.quilt.records import Quilt
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Fill

MOST: Final = 0.72  # inches that the longer side takes on the label
LEAST: Final = 0.1  # and the shorter one at least, however long a strip is


def kit_pieces(quilt: Quilt, one: CuttingPlan) -> Iterator[Drawing]:
    """One drawing for each letter of the bag, and for the binding."""
    tones = cloths((quilt,))
    drawn: set[str] = set()
    for line in bag(quilt, one):
        if line.letter not in drawn:
            drawn.add(line.letter)
            yield _piece(quilt, line, tones)


def _piece(quilt: Quilt, line: Bagged, tones: Cloths) -> Drawing:
    pen = Pen(1, 1, 1)
    shape = _shape(quilt, line)
    pen.patch(shape, _fill(line, tones))
    called = "binding" if line.letter == BINDING else line.letter
    cloth = f" of {line.fabric}" if line.fabric else ""
    return cropped(pen, name("kit-piece", line.letter), "", f"{called}: {_word(line)}{cloth}.")


def _fill(line: Bagged, tones: Cloths) -> Fill:
    return tones.fabric(line.fabric)


def _word(line: Bagged) -> str:
    if line.diagonal:
        return "a triangle"
    if line.kind == "strips":
        return "a strip"
    return "a square" if line.size.across == line.size.down else "a rectangle"


def _shape(quilt: Quilt, line: Bagged) -> Points:
    """The piece as it is cut, as large as the label has room for; the box keeps its true sides
    where that leaves them wide enough to be seen."""
    piece = quilt.pieces.get(line.letter)
    if line.kind == "patches" and piece and piece.template and piece.template.trims:
        return _scaled(outlined(piece.template.sew))
    across, down = float(line.size.across), float(line.size.down or 8 * line.size.across)
    if line.diagonal == "once":
        return _scaled(((0, 0), (across, down), (0, down)))
    if line.diagonal == "twice":
        return _scaled(((0, 0), (across, 0), (across / 2, down / 2)))
    if line.kind != "patches":  # strips lie
        across, down = max(across, down), min(across, down)
    return _scaled(box(0, 0, across, down))


def _scaled(points: Points) -> Points:
    left, top, across, down = around(points)
    scale = MOST / max(across, down)
    wide, high = (max(side * scale, LEAST) for side in (across, down))
    placed = moved(points, -left, -top)
    return tuple((x / across * wide, y / down * high) for x, y in placed)
