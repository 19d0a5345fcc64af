"""Letters in the patches where they fit, beside them at the end of a thin line where not."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from patternbook.diagrams.laid import Lying
from patternbook.diagrams.shown import Shown
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Weight

SIZES: Final = (11.0, 9.0, 8.0)  # points; no letter is smaller than the last
LEAST: Final = SIZES[-1]
BARE: Final = 0.75  # of a unit that a name may take, where it must be seen how that is turned
LINE: Final = 10.5  # points from one line of small words to the next


@dataclass(frozen=True)
class Tag:
    """Words that belong to a place and did not fit there."""

    x: float
    y: float
    text: str


def inside(pen: Pen, patch: Shown, text: str) -> bool:
    """The letter in its patch, as large as suits; False where the smallest does not fit."""
    for size in SIZES:
        place = patch.room(*pen.room(text, size, weight=600))
        if place is not None:
            pen.letter(*place, text, patch.fill, size)
            return True
    return False


def lettered(pen: Pen, part: Lying, found: Sequence[Shown], text: str) -> bool:
    """A part that is one piece with its letter."""
    return part.part == text and inside(pen, found[0], text)


def named(pen: Pen, part: Lying, found: Sequence[Shown], text: str) -> bool:
    """A unit's name on a slip in its middle, lying or standing; False where neither fits."""
    plate = "#ffffff" if len(found) > 1 else None
    x, y = part.middle
    share = BARE if any(one.points for one in found) else 1.0
    across, down = part.across * share, part.down * share
    for size in SIZES[1:]:
        lies = pen.fits(text, size, across, down, weight=600)
        if lies or pen.fits(text, size, down, across, weight=600):
            angle = 0.0 if lies else 90.0
            pen.label(x, y, text, size, weight=600, angle=angle, plate=plate)
            return True
    return False


def beside(pen: Pen, tags: Sequence[Tag], x: float) -> None:
    """Words one below the other from x on, each with a thin line from its place."""
    step = pen.pt(LINE)
    ordered = sorted(tags, key=lambda tag: tag.y)
    last = float("-inf")
    for tag in ordered:
        y = max(tag.y, last + step)
        last = y
        elbow = x - pen.pt(4)
        pen.line(((tag.x, tag.y), (elbow, y), (x - pen.pt(1), y)), "leader")
        pen.label(x, y, tag.text, LEAST, anchor="start", weight=600)


def under(pen: Pen, tags: Sequence[Tag], y: float, weight: Weight = 600) -> float:
    """Words below their places, in as many rows as keep them apart; gives where they end."""
    rows: list[float] = []
    step = pen.pt(LINE)
    for tag in sorted(tags, key=lambda tag: tag.x):
        half = pen.text_width(tag.text, LEAST, weight) / 2
        row = next((n for n, end in enumerate(rows) if tag.x - half > end), len(rows))
        if row == len(rows):
            rows.append(0.0)
        rows[row] = tag.x + half + pen.pt(3)
        at = y + pen.pt(7) + row * step
        if row:
            pen.line(((tag.x, tag.y), (tag.x, at - pen.pt(4))), "leader")
        pen.label(tag.x, at, tag.text, LEAST, weight=weight)
    return y + len(rows) * step


def brace(pen: Pen, x: float, start: float, end: float, text: str) -> None:
    """A bracket to the right of a stretch of like pieces, with what they are."""
    out = x + pen.pt(4)
    inset = min(pen.pt(1), (end - start) / 6)
    pen.line(
        ((x, start + inset), (out, start + inset), (out, end - inset), (x, end - inset)),
        "dimension",
    )
    pen.label(out + pen.pt(4), (start + end) / 2, text, LEAST, anchor="start", weight=600)
