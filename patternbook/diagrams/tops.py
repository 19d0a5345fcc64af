"""The quilt top: all sizes to one scale, each size by itself, and the cover picture."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.laid import SMALL
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.round_corners import SQUARE, corner
from patternbook.diagrams.shape import grown, moved
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.quilt.records import LayoutMade
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Fill, Role

COVER: Final = (5.4, 6.0)
ALL: Final = (7.2, 3.2)
ONE: Final = (3.5, 4.3)
LARGEST: Final = 0.12
WHITE: Final = "#ffffff"
BINDING: Final = 0.375  # inches of a double binding that show on the front


def cover(pattern: Pattern) -> Iterator[Drawing]:
    """One size as large as the cover takes it, bound."""
    if pattern.cover not in pattern.tops:
        return
    size = pattern.cover

    def drawn(pen: Pen) -> None:
        bound(pen, size, 0, 0)
        patched(pen, size, 0, 0, "ground")
        rounded_off(pen, size)

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
    least = min(min(patch.across, patch.down) for patch in size.shown)
    role = role or ("fine" if least < pen.pt(SMALL * 2) else "outline")
    for patch in size.shown:
        patch.moved(x, y).put(pen, patch.fill, role)


def framed(pen: Pen, size: Size, x: float, y: float) -> None:
    """The edge of the top."""
    pen.patch(moved(size.edge, x, y), None, "edge")


def bound(pen: Pen, size: Size, x: float, y: float) -> None:
    """The binding: a narrow frame outside the finished edge."""
    binding = size.quilt.binding
    if binding is None:
        return
    wide = BINDING * (2.54 if size.system.unit == "cm" else 1)
    fill = size.cloths.fabric(binding.fabric)
    pen.patch(moved(grown(size.edge, lambda *_: wide), x, y), fill, "outline")


def rounded_off(pen: Pen, size: Size) -> None:
    """Round corners, where the quilt has them: what is cut off is painted white, and the binding
    goes round. Only of a top with straight sides."""
    binding = size.quilt.binding
    if binding is None or not binding.radius or len(size.edge) != len(SQUARE):
        return
    wide = BINDING * (2.54 if size.system.unit == "cm" else 1)
    fill = size.cloths.fabric(binding.fabric)
    across, down = size.top
    for right, low in SQUARE:
        outer, inner = (
            corner(right * across, low * down, float(binding.radius), right, low, by)
            for by in (wide + pen.pt(1.5), 0.0)
        )
        rim = corner(right * across, low * down, float(binding.radius), right, low, wide)
        tip = (right * across + (2 * right - 1) * 2 * wide, low * down + (2 * low - 1) * 2 * wide)
        pen.patch((*outer, (outer[-1][0], tip[1]), tip, (tip[0], outer[0][1])), Fill(WHITE), None)
        pen.patch((*rim, *reversed(inner)), fill, "outline")


def measured(pen: Pen, size: Size, x: float, y: float) -> None:
    """Arrows for width and length, finished."""
    if size.quilt.finished is None:
        return
    across, down = size.top
    wide, long = (words.length(side, size.system) for side in size.quilt.finished)
    low = y + down
    pen.dimension((x + across, low), (x, low), f"width {wide}", pen.pt(9), 8)
    pen.dimension((x, low), (x, y), f"length {long}", pen.pt(8), 8)


def _side_by_side(pen: Pen, pattern: Pattern) -> None:
    x = 0.0
    tallest = max(size.top[1] for size in pattern.tops)
    for size in pattern.tops:
        across, down = size.top
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
    small: set[object] = set()
    for patch in size.shown:
        like = (patch.letter, round(patch.across, 6), round(patch.down, 6), bool(patch.points))
        if patch.letter in seen or like in small:
            continue
        if labels.inside(pen, patch, patch.letter):
            seen.add(patch.letter)
        else:
            small.add(like)
    tags: dict[str, labels.Tag] = {}
    for patch in sorted(size.shown, key=lambda one: -one.x - one.across):
        if patch.letter not in seen:
            tags.setdefault(patch.letter, labels.Tag(*patch.middle, patch.letter))
    labels.beside(pen, list(tags.values()), size.top[0] + pen.pt(14))


def described(size: Size) -> str:
    """The top in words: size, how it is put together, how many patches."""
    quilt = size.quilt
    if quilt.finished is None or quilt.top is None:
        return size.name
    made = quilt.units[quilt.top].made
    how = ""
    if isinstance(made, LayoutMade):
        rows = [line for line in made.lines if line.role != "sash"]
        first = words.run(rows[0].parts)
        how = f", {words.counted(len(rows), made.by[:-1])}, the first of {first}"
        how += f", {words.counted(len(made.borders), 'border')}" if made.borders else ""
    measure = words.sides(quilt.finished, quilt.system)
    number = len(size.plans.patches)
    return f"{words.title(size.name)}: {measure} finished, {number} patches{how}"
