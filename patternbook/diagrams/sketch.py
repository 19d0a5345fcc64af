"""The sketch of one action: right and wrong sides of the cloth, pencil lines, seams and cuts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import atan2, degrees
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.laid import Lying, draw
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.shape import Points, around, holds
from patternbook.diagrams.shown import Shown, shaped
from patternbook.methods.made import Drawn, Sketch
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import scissors, seam
from patternbook.strokes.stroke import Fill, Role
from patternbook.strokes.tones import PAPER, wrong_side

CLOTH: Final = ("patch", "back")
ROLES: Final[dict[str, Role]] = {"mark": "mark", "sew": "seam", "cut": "cut", "fold": "fold"}
NAMES: Final = {"mark": "pencil line", "sew": "seam", "cut": "cut", "fold": "fold"}
SEWN: Final = Fill("#e6e6e6")  # what was sewn before and has no letter of its own
BLADES: Final = 8.0  # points from the end of a cut to its scissors


def sketched(pen: Pen, size: Size, sketch: Sketch) -> None:
    """All shapes in their order; then the letters, clear of what lies over their cloth."""
    cut = False
    for one in sketch:
        if one.kind in CLOTH:
            _cloth(pen, size, one)
        elif one.kind == "press":
            pen.arrow(one.points, "press", "end", 5.0)
        else:
            _line(pen, one, first=not cut)
            cut = cut or one.kind == "cut"
    low = max(y for one in sketch for _, y in one.points)
    bare = [one for one in _lettered(size, sketch) if not _named(pen, size, one)]
    labels.under(pen, [labels.Tag(*one.middle, one.letter) for one in bare], low)


def _named(pen: Pen, size: Size, one: Shown) -> bool:
    """The letter on its cloth, a unit's name on a slip; nothing where other cloth hides it."""
    if one.letter not in size.quilt.units:
        return labels.inside(pen, one, one.letter) or _hidden(one)
    place = one.room(*pen.room(one.letter, labels.LEAST, weight=600))
    if place is not None:
        pen.label(*place, one.letter, labels.LEAST, weight=600, plate=PAPER.colour)
    return place is not None or _hidden(one)


def _hidden(one: Shown) -> bool:
    return any(holds(over, one.middle) for over in one.over)


def _cloth(pen: Pen, size: Size, one: Drawn) -> None:
    """A piece, or a unit that lies as it was made."""
    fill = _fill(size, one)
    if one.kind == "patch" and one.letter in size.quilt.units:
        x, y, across, down = around(one.points)
        raw = float(size.quilt.seam)
        box = (x + raw, y + raw, across - 2 * raw, down - 2 * raw)
        draw(pen, size, Lying(one.letter, Lying.upright, *box), raw)
    else:
        fill.put(pen, fill.fill)


def _fill(size: Size, one: Drawn) -> Shown:
    if one.letter in size.quilt.units:
        tone = size.fills_in(one.letter)[0]
    else:
        tone = size.fill(one.letter, 1) if one.letter else SEWN
    return shaped(one.letter, one.points, wrong_side(tone) if one.kind == "back" else tone)


def _line(pen: Pen, one: Drawn, *, first: bool) -> None:
    if one.kind == "sew" and len(one.points) == 2:
        seam(pen, *one.points)
        return
    pen.line(one.points, ROLES[one.kind])
    if one.kind == "cut" and first:
        start, end = one.points[:2]
        long = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2) ** 0.5
        way = ((end[0] - start[0]) / long, (end[1] - start[1]) / long)
        far = pen.pt(BLADES)
        at = (start[0] - way[0] * far, start[1] - way[1] * far)
        scissors(pen, *at, degrees(atan2(-way[1], way[0])))


def _lettered(size: Size, sketch: Sketch) -> Iterator[Shown]:
    """The cloths whose letters are still to be seen, each with what lies over it; one letter of
    cloth upon cloth of the same letter is enough."""
    for number, one in enumerate(sketch):
        if one.kind in CLOTH and one.letter:
            yield replace(_fill(size, one), over=tuple(_over(sketch[number + 1 :])))


def _over(later: Sequence[Drawn]) -> Iterator[Points]:
    for one in later:
        if one.kind in CLOTH:
            yield one.points
        else:
            yield from pairwise(one.points)


def told(sketch: Sketch) -> str:
    """What a sketch shows, in words: `wrong side of B, a pencil line, 2 seams`."""
    cloth = [
        f"{'wrong' if one.kind == 'back' else 'right'} side of {one.letter}"
        for one in sketch
        if one.kind in CLOTH and one.letter
    ]
    lines = [
        words.counted(number, name)
        for kind, name in NAMES.items()
        if (number := sum(one.kind == kind for one in sketch))
    ]
    return ", ".join([*dict.fromkeys(cloth), *lines])
