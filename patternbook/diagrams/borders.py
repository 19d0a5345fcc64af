"""Borders: measure the quilt first, then cut; the first pair before the second."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.laid import Lying, draw, parts, shown
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.pressing import arrow
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.quilt.records import Border, LayoutMade, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count
from patternbook.strokes.stroke import Drawing
from patternbook.strokes.tones import PAPER, ghost

MOST: Final = (3.5, 3.4)
LARGEST: Final = 0.08
GAP: Final = 15.0  # points between the quilt and a strip


def borders(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing for the top's borders, of the size that has most, and one for each unit that
    has borders of its own."""
    made = [(size, size.quilt.units[size.quilt.top or ""]) for size in pattern.tops]
    bordered = [
        (size, unit, unit.made)
        for size, unit in made
        if isinstance(unit.made, LayoutMade) and unit.made.borders
    ]
    if bordered:
        size, unit, layout = max(bordered, key=lambda one: len(one[2].borders))
        note = f" (drawn for {size.name})" if len(pattern.tops) > 1 else ""
        yield _borders(size, unit, layout, "borders", note)
    for size, unit in pattern.units():
        own = unit.name != size.quilt.top
        if own and isinstance(unit.made, LayoutMade) and unit.made.borders:
            note = pattern.drawn_for(size, unit)
            yield _borders(size, unit, unit.made, name("borders", unit.name), note)


def _borders(size: Size, unit: Unit, made: LayoutMade, called: str, note: str) -> Drawing:
    scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
    pen = fitted(lambda pen: _drawn(pen, size, unit, made), MOST, scale)
    return cropped(pen, called, f"Borders: measure first{note}", _described(size, made))


def _drawn(pen: Pen, size: Size, unit: Unit, made: LayoutMade) -> None:
    lying = parts(size, unit)
    around = {part for border in made.borders for part in border.parts}
    inner = [part for part in unit.placed if part not in around]
    for part in inner:
        for patch in shown(size, lying[part]):
            patch.put(pen, ghost(patch.fill), "ground")
    left, top = (
        float(min(sides)) for sides in zip(*((one.x, one.y) for one in inner), strict=True)
    )
    right = max(float(part.x + part.across) for part in inner)
    low = max(float(part.y + part.down) for part in inner)
    centre = Lying("", Lying.upright, left, top, right - left, low - top)
    pen.rectangle(left, top, right - left, low - top, None, "edge")
    order = 0
    for border in made.borders:
        order = _strips(pen, size, border, [lying[part] for part in border.parts], centre, order)
    _measured(pen, centre, upright=made.borders[0].first == "sides")


def _strips(
    pen: Pen, size: Size, border: Border, strips: list[Lying], centre: Lying, order: int
) -> int:
    """The strips of one border, moved out; numbered pair by pair in order of sewing."""
    far = pen.pt(GAP) * border.number
    mid_x, mid_y = centre.middle
    for strip in strips:
        x, y = strip.middle
        stands = strip.down > strip.across
        upright = stands if abs(strip.down - strip.across) > 1e-9 else None
        dx = 0.0 if upright is False else far * (1 if x > mid_x else -1)
        dy = 0.0 if upright is True else far * (1 if y > mid_y else -1)
        moved = strip.moved(dx, dy)
        for patch in draw(pen, size, moved)[:1]:
            if not labels.inside(pen, patch, patch.letter):
                tag = labels.Tag(*moved.middle, patch.letter)
                labels.beside(pen, [tag], moved.x + moved.across + pen.pt(10))
        if upright is not None:
            first = (border.first == "sides") == upright
            _numbered(pen, moved, order + (1 if first else 2), upright=upright)
            _pressed(pen, moved, centre, upright=upright)
    return order + 2


def _numbered(pen: Pen, strip: Lying, number: int, *, upright: bool) -> None:
    """The order of sewing, a quarter along the strip."""
    x, y = strip.middle
    at = (x, strip.y + strip.down / 4) if upright else (strip.x + strip.across / 4, y)
    count(pen, *at, number, size=8)


def _pressed(pen: Pen, strip: Lying, centre: Lying, *, upright: bool) -> None:
    """Toward the border, over the gap beside the strip."""
    x, y = strip.middle
    mid_x, mid_y = centre.middle
    if upright:
        right = x > mid_x
        edge = strip.x if right else strip.x + strip.across
        at = (edge - pen.pt(GAP / 2) * (1 if right else -1), y + strip.down / 4)
        arrow(pen, *at, "right" if right else "left", upright=True)
    else:
        low = y > mid_y
        edge = strip.y if low else strip.y + strip.down
        at = (x + strip.across / 4, edge - pen.pt(GAP / 2) * (1 if low else -1))
        arrow(pen, *at, "down" if low else "up", upright=False)


def _measured(pen: Pen, centre: Lying, *, upright: bool) -> None:
    """Three places to measure, the middle one the most important."""
    for share, role in ((0.2, "mark"), (0.5, "emphasis"), (0.8, "mark")):
        if upright:
            x = centre.x + centre.across * share
            ends = ((x, centre.y), (x, centre.y + centre.down))
        else:
            y = centre.y + centre.down * share
            ends = ((centre.x, y), (centre.x + centre.across, y))
        pen.arrow(ends, role, "both", 7.0 if share == 0.5 else 5.0)  # type: ignore[arg-type]
    pen.label(*centre.middle, "measure", 9, weight=600, plate=PAPER.colour)


def _described(size: Size, made: LayoutMade) -> str:
    told = []
    for border in made.borders:
        side, end = (
            words.length(one, size.system) for one in (border.side_length, border.end_length)
        )
        pairs = [
            f"two {border.side} strips at the sides (about {side})",
            f"two {border.end} strips at top and bottom (about {end})",
        ]
        if border.first == "ends":
            pairs.reverse()
        stones = f", with {border.stones} at the corners" if border.stones else ""
        told.append(f"border {border.number}: first {pairs[0]}, then {pairs[1]}{stones}")
    return (
        "The quilt with its border strips apart. It is measured through the middle and in two "
        f"more places before the strips are cut; {'; '.join(told)}."
    )
