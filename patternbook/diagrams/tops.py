"""The quilt top: all sizes to one scale, each size by itself, and the cover picture."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.laid import SMALL
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.quilt.records import LayoutMade
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Role

COVER: Final = (5.4, 6.0)
ALL: Final = (7.2, 3.2)
ONE: Final = (3.5, 4.3)
LARGEST: Final = 0.12
BINDING: Final = 0.375  # inches of a double binding that show on the front


def cover(pattern: Pattern) -> Iterator[Drawing]:
    """One size as large as the cover takes it, bound."""
    if pattern.cover not in pattern.tops:
        return
    size = pattern.cover

    def drawn(pen: Pen) -> None:
        bound(pen, size, 0, 0)
        patched(pen, size, 0, 0, "ground")

    title = f"{pattern.heading.pattern}, {size.name} size"
    yield cropped(fitted(drawn, COVER, LARGEST * 2), "cover", title, described(size))


def tops(pattern: Pattern) -> Iterator[Drawing]:
    """All sizes side by side to one scale, then each by itself."""
    if not pattern.tops:
        return
    pen = fitted(lambda pen: _side_by_side(pen, pattern), ALL, LARGEST)
    told = "; ".join(described(size) for size in pattern.tops)
    yield cropped(pen, "tops", "All sizes, to one scale", told)
    for size in pattern.tops:
        yield _top(size)


def patched(pen: Pen, size: Size, x: float, y: float, role: Role | None = None) -> None:
    """Every patch of the top in its tone; small ones with a fine outline."""
    patches = size.plans.patches
    least = min(float(min(patch.across, patch.down)) for patch in patches)
    role = role or ("fine" if least < pen.pt(SMALL * 2) else "outline")
    for patch, fill in zip(patches, size.fills(), strict=True):
        box = (float(patch.x) + x, float(patch.y) + y, float(patch.across), float(patch.down))
        pen.rectangle(*box, fill, role)


def framed(pen: Pen, size: Size, x: float, y: float) -> None:
    """The edge of the top."""
    if size.quilt.finished:
        pen.rectangle(x, y, *map(float, size.quilt.finished), None, "edge")


def bound(pen: Pen, size: Size, x: float, y: float) -> None:
    """The binding: a narrow frame outside the finished edge."""
    binding, top = size.quilt.binding, size.quilt.finished
    if binding is None or top is None:
        return
    wide = BINDING * (2.54 if size.system.unit == "cm" else 1)
    across, down = map(float, top)
    fill = size.cloths.fabric(binding.fabric)
    pen.rectangle(x - wide, y - wide, across + 2 * wide, down + 2 * wide, fill, "outline")


def measured(pen: Pen, size: Size, x: float, y: float) -> None:
    """Arrows for width and length, finished."""
    if size.quilt.finished is None:
        return
    across, down = map(float, size.quilt.finished)
    wide, long = (words.length(side, size.system) for side in size.quilt.finished)
    low = y + down
    pen.dimension((x + across, low), (x, low), f"width {wide}", pen.pt(9), 8)
    pen.dimension((x, low), (x, y), f"length {long}", pen.pt(8), 8)


def _side_by_side(pen: Pen, pattern: Pattern) -> None:
    x = 0.0
    tallest = max(float(size.quilt.finished.down) for size in pattern.tops if size.quilt.finished)
    for size in pattern.tops:
        if size.quilt.finished is None:
            continue
        across, down = map(float, size.quilt.finished)
        y = tallest - down
        patched(pen, size, x, y)
        framed(pen, size, x, y)
        measured(pen, size, x, y)
        pen.label(x + across / 2, y - pen.pt(9), words.title(size.name), 10, weight=600)
        x += max(across, pen.pt(48)) + pen.pt(34)


def _top(size: Size) -> Drawing:
    def drawn(pen: Pen) -> None:
        patched(pen, size, 0, 0)
        framed(pen, size, 0, 0)
        measured(pen, size, 0, 0)
        _lettered(pen, size)

    pen = fitted(drawn, ONE, LARGEST)
    return cropped(pen, name("top", size.name), f"{words.title(size.name)} top", described(size))


def _lettered(pen: Pen, size: Size) -> None:
    """One patch of every letter is named: in it where that fits, else at the right edge."""
    seen: set[str] = set()
    tags = []
    top = size.quilt.finished
    if top is None:
        return
    for patch, fill in zip(size.plans.patches, size.fills(), strict=True):
        if patch.letter in seen:
            continue
        box = (float(patch.x), float(patch.y), float(patch.across), float(patch.down))
        if labels.inside(pen, labels.Shown(patch.letter, *box, fill), patch.letter):
            seen.add(patch.letter)
    for patch in sorted(size.plans.patches, key=lambda patch: (-patch.x - patch.across, patch.y)):
        if patch.letter not in seen:
            seen.add(patch.letter)
            x, y = (float(patch.x + patch.across / 2), float(patch.y + patch.down / 2))
            tags.append(labels.Tag(x, y, patch.letter))
    labels.beside(pen, tags, float(top.across) + pen.pt(14))


def described(size: Size) -> str:
    """The top in words: size, how it is put together, how many patches."""
    quilt = size.quilt
    if quilt.finished is None or quilt.top is None:
        return size.name
    made = quilt.units[quilt.top].made
    how = ""
    if isinstance(made, LayoutMade):
        rows = [line for line in made.lines if line.role != "sash"]
        what = made.by if len(rows) > 1 else made.by[:-1]
        first = words.run(part.part for part in rows[0].parts)
        how = f", {len(rows)} {what}, the first of {first}"
        how += f", {len(made.borders)} borders" if len(made.borders) > 1 else ""
        how += ", one border" if len(made.borders) == 1 else ""
    measure = words.sides(quilt.finished, quilt.system)
    number = len(size.plans.patches)
    return f"{words.title(size.name)}: {measure} finished, {number} patches{how}"

