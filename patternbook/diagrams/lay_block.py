"""A length of the cloth: pieces along it side by side, and the strips that are cut beside them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternbook.cutting.records import FabricPlan
from patternbook.diagrams import labels, words
from patternbook.diagrams.lay_groups import Group, Said, tells
from patternbook.diagrams.lay_pieces import lying, piece, strip
from patternbook.diagrams.lay_words import said
from patternbook.diagrams.pattern import Size
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count
from patternbook.strokes.tones import WASTE

Told = tuple[float, int | None, list[Said]]


@dataclass(frozen=True)
class Block:
    """What is drawn: a group of lengths by its number, and the numbered strips beside it."""

    pen: Pen
    size: Size
    fabric: str
    plan: FabricPlan
    group: Group
    number: int
    strips: Sequence[tuple[int, Group]]


def block(drawn: Block, y: float) -> float:
    """Draws it; gives where the drawing and its words end."""
    pen, size, plan, group = drawn.pen, drawn.size, drawn.plan, drawn.group
    one = group.strip
    wide, high = float(one.length), float(one.width)
    taken = float(one.length - one.left)
    pen.rectangle(0, y, wide, high, WASTE, "outline")
    for patch in lying(one, plan.form, size.cloths.fabric(drawn.fabric, drawn.number), 0, y):
        piece(pen, size, patch)
    lines = tells(size, plan, group)
    told: list[Told] = [(y + pen.pt(labels.LINE) * len(lines) / 2, None, lines)]
    top = y
    for at, other in drawn.strips:
        fill = size.cloths.fabric(drawn.fabric, at)
        start = top
        for _ in range(other.times):
            strip(pen, size, other.strip, plan.form, fill, taken, top)
            top += float(other.strip.width)
        width = words.length(other.strip.width, size.system)
        first, *rest = tells(size, plan, other)
        heading = Said(f"{width} {first.text}", heavy=True, rulers=first.rulers)
        told.append(((start + top) / 2, at, [heading, *rest]))
    return max(y + high, _beside(pen, size, told, wide))


def _beside(pen: Pen, size: Size, told: Sequence[Told], wide: float) -> float:
    """Words to the right, no two over one another, each with a line from its strip."""
    x, end = wide + pen.pt(9), float("-inf")
    for middle, number, lines in told:
        half = pen.pt(labels.LINE) * len(lines) / 2
        at = max(middle, end + half + (pen.pt(3) if number else 0))
        end = at + half
        if number is None:
            said(pen, size.system, lines, x, at)
            continue
        pen.line(((wide, middle), (x, at)), "leader")
        count(pen, x + pen.pt(7), at, number, size=8)
        said(pen, size.system, lines, x + pen.pt(18), at)
    return end
