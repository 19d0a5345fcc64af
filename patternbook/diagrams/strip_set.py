"""A strip set broken in its length, the cuts across it, and the slice that they give."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.as_made import ARROW, LONG, headed
from patternbook.diagrams.laid import Lying, draw, turn_mark
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.pressing import arrow
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.shown import Shown
from patternbook.quilt.records import StripSetMade, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import scissors
from patternbook.strokes.stroke import Drawing
from patternbook.strokes.tones import PAPER, WASTE

MOST: Final = (7.2, 2.0)
LARGEST: Final = 0.15
HIGH: Final = 25.0  # points of a slice that has room for arrows below its letters
CUTS: Final = 3  # slices that are drawn before the break


def strip_sets(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing for every unit that is a slice of a strip set."""
    for size, unit in pattern.units():
        if isinstance(unit.made, StripSetMade):
            yield _set(pattern, size, unit, unit.made)


def _set(pattern: Pattern, size: Size, unit: Unit, made: StripSetMade) -> Drawing:
    sets = [
        (one.name, other.made.sets)
        for one in pattern.sizes
        if (other := one.quilt.units.get(unit.name)) and isinstance(other.made, StripSetMade)
    ]

    def drawn(pen: Pen) -> None:
        right = _lying(pen, size, unit, made)
        _told(pen, size, made, sets)
        _slice(pen, size, unit, made, right)

    scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
    wide = words.length(made.set_width, size.system)
    title = f"{words.title(unit.name)}: strip set {wide} wide, cut every {_segment(size, made)}"
    return cropped(
        fitted(drawn, MOST, scale),
        name("set", unit.name),
        title + pattern.drawn_for(size, unit),
        _described(size, unit, made, sets),
    )


def _segment(size: Size, made: StripSetMade) -> str:
    return words.length(made.segment, size.system)


def _lying(pen: Pen, size: Size, unit: Unit, made: StripSetMade) -> float:
    """The set as it lies to be cut: strips across, the first one on top; gives its right end."""
    segment = float(made.segment)
    cut_to = segment * CUTS
    right = cut_to + max(segment, pen.pt(46))
    levels = _levels(size, made)
    fills = size.fills_in(unit.name)
    for (_, top, low), fill in zip(levels, fills, strict=True):
        pen.rectangle(0, top, right, low - top, fill)
    whole = levels[-1][2]
    left_over = right - min(float(made.strip_length - made.segment * made.per_set), segment * 0.8)
    if left_over < right:
        pen.rectangle(left_over, 0, right - left_over, whole, WASTE)
    for (letter, top, low), fill in zip(levels, fills, strict=True):
        patch = Shown(letter, 0, top, segment, low - top, fill)
        if not labels.inside(pen, patch, letter):
            pen.label(-pen.pt(5), (top + low) / 2, letter, 8, weight=600, anchor="end")
    _break(pen, (cut_to + left_over) / 2, whole)
    for number in range(1, CUTS + 1):
        x = segment * number
        pen.line(((x, -pen.pt(4)), (x, whole + pen.pt(4))), "cut")
        scissors(pen, x, whole + pen.pt(12), 90)
    pen.line(((left_over, -pen.pt(4)), (left_over, whole + pen.pt(4))), "cut")
    pen.dimension((0, 0), (segment, 0), _segment(size, made), pen.pt(9), 8)
    width = words.length(made.set_width, size.system)
    pen.dimension((0, whole), (0, 0), width, pen.pt(16), 8)
    return right


def _levels(size: Size, made: StripSetMade) -> list[tuple[str, float, float]]:
    """Where each strip lies in the set: the outer ones keep their outer seam allowance."""
    seam = float(size.quilt.seam)
    levels = []
    top = 0.0
    for number, letter in enumerate(made.strips):
        wide = float(size.quilt.pieces[letter].cut.across) - 2 * seam
        wide += seam * ((number == 0) + (number == len(made.strips) - 1))
        levels.append((letter, top, top + wide))
        top += wide
    return levels


def _break(pen: Pen, x: float, low: float) -> None:
    """A gap with a zig-zag on both sides: the set is longer than it is drawn."""
    half, high = pen.pt(3), pen.pt(3)
    out = pen.pt(3)
    steps = 6
    ys = [-out + (low + 2 * out) * step / steps for step in range(steps + 1)]
    one = [(x - half + (high if step % 2 else 0), y) for step, y in enumerate(ys)]
    other = [(x + half + (high if step % 2 else 0), y) for step, y in enumerate(ys)]
    pen.patch([*one, *reversed(other)], PAPER, None)
    pen.line(one, "outline")
    pen.line(other, "outline")


def _told(pen: Pen, size: Size, made: StripSetMade, sets: list[tuple[str, int]]) -> None:
    """How many sets, and how many slices of each."""
    low = _levels(size, made)[-1][2]
    long = words.length(made.strip_length, size.system)
    text = f"Sets: {words.by_size(sets)}. Each, {long} long, is cut into {made.per_set} slices."
    y = low + pen.pt(26)
    pen.label(0, y, text, 8, anchor="start")


def _slice(pen: Pen, size: Size, unit: Unit, made: StripSetMade, right: float) -> None:
    """The slice as made, turned so that the strips stand from left to right."""
    raw = float(size.quilt.seam)
    start = right + pen.pt(40)
    middle = float(made.set_width) / 2
    pen.arrow(((right + pen.pt(8), middle), (right + pen.pt(28), middle)), "edge", "end", 7)
    part = Lying(
        unit.name,
        Lying.upright,
        start + raw,
        middle - float(unit.finished.down) / 2,
        float(unit.finished.across),
        float(unit.finished.down),
    )
    for patch in draw(pen, size, part, raw):
        if not labels.inside(pen, patch, patch.letter):
            x = patch.x + patch.across / 2
            labels.under(pen, [labels.Tag(x, patch.y, patch.letter)], patch.y + patch.down)
    turn_mark(pen, part, raw)
    top, low = part.y - raw, part.y + part.down + raw
    end = part.x + part.across + raw
    aside = _pressed(pen, size, unit, part, low)
    across, down = (words.length(side, size.system) for side in unit.measure)
    pen.dimension((end, low), (start, low), across, pen.pt(18 if aside else 9), 8)
    pen.dimension((end, top), (end, low), down, pen.pt(8), 8)
    headed(pen, unit, start, top)


def _pressed(pen: Pen, size: Size, unit: Unit, part: Lying, low: float) -> bool:
    """Arrows over the seams, or one for all of them below a slice too small for that."""
    pressed = size.plans.sewing.pressing[unit.name].lines[0]
    seams = [part.x + float(one.x) for one in unit.placed[1:]]
    narrowest = min(float(one.across) for one in unit.placed)
    if narrowest < pen.pt(ARROW):
        if pressed.uniform is not None:
            arrow(pen, part.middle[0], low + pen.pt(7), pressed.uniform, upright=True, long=LONG)
        return pressed.uniform is not None
    within = part.down >= pen.pt(HIGH)
    y = part.y + part.down * 0.85 if within else low + pen.pt(7)
    for x, way in zip(seams, pressed.seams, strict=True):
        arrow(pen, x, y, way, upright=True)
    return not within


def _described(size: Size, unit: Unit, made: StripSetMade, sets: list[tuple[str, int]]) -> str:
    strips = words.listed(made.strips)
    way = size.plans.sewing.pressing[unit.name].lines[0].uniform
    pressed = f", seams pressed to the {way}" if way and way != "open" else ""
    length = words.length(made.strip_length, size.system)
    return (
        f"Strip set for {words.title(unit.name)}: strips {strips} side by side, {length} long, "
        f"{words.length(made.set_width, size.system)} wide from raw edge to raw edge; "
        f"sets: {words.by_size(sets)}. "
        f"Each is cut across every {_segment(size, made)}, {made.per_set} slices from each. "
        f"A slice as made has {strips} from left to right and measures "
        f"{words.sides(unit.measure, size.system)}{pressed}."
    )
