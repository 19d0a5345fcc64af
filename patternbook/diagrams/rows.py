"""The rows (or columns) of a top laid apart: numbered, named, with their sashes and pressing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final, TypeVar

from patternbook.diagrams import labels, words
from patternbook.diagrams.explode import Apart, apart
from patternbook.diagrams.laid import Lying, Shown, draw, turn_mark
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.pressing import arrow
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.unit import FEW
from patternbook.quilt.pressing import LinePressing, PressingPlan
from patternbook.quilt.records import LayoutMade, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.signs import count
from patternbook.strokes.stroke import Drawing

MOST: Final = (3.5, 4.6)
LARGEST: Final = 0.14
GAP: Final = 9.0  # points between parts: about a quarter of a unit at this scale

_T = TypeVar("_T")


def rows(pattern: Pattern) -> Iterator[Drawing]:
    """The top, once where the sizes differ in repeats alone, else once a size; then such units
    of many parts as have several rows."""
    tops = [(size, size.quilt.units[size.quilt.top]) for size in pattern.tops if size.quilt.top]
    alike = len({_kind(unit) for _, unit in tops}) == 1
    for size, unit in tops[:1] if alike else tops:
        note = f" (drawn for {size.name})" if alike and len(tops) > 1 else ""
        called = name("rows", "top") if alike else name("rows", "top", size.name)
        title = "The top" if alike else f"The {size.name} top"
        yield _rows(size, unit, called, f"{title}, laid apart{note}")
    for size, unit in pattern.units():
        if isinstance(unit.made, LayoutMade) and len(unit.placed) > FEW and len(unit.made.lines) > 1:
            title = f"{words.title(unit.name)}, laid apart{pattern.drawn_for(size, unit)}"
            yield _rows(size, unit, name("rows", unit.name), title)


def repeats(things: Sequence[_T]) -> tuple[_T, ...]:
    """The shortest beginning that the whole goes on repeating; all of it where none does."""
    for period in range(1, len(things) // 2 + 1):
        if all(thing == things[at % period] for at, thing in enumerate(things)):
            return tuple(things[:period])
    return tuple(things)


def _kind(unit: Unit) -> object:
    """What a layout is like, whatever its number of repeats."""
    made = unit.made
    if not isinstance(made, LayoutMade):
        return unit.placed
    lines = [
        (line.role, repeats([(part.part, part.turn) for part in line.parts]))
        for line in made.lines
    ]
    return (made.by, repeats(lines), len(made.borders))


def _rows(size: Size, unit: Unit, called: str, title: str) -> Drawing:
    def drawn(pen: Pen) -> None:
        gap = pen.pt(GAP)
        plan = size.plans.sewing.pressing[unit.name]
        laid = apart(unit, gap, pen.pt(GAP + 3))
        Laid(size, unit, laid, plan).drawn(pen)

    scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
    return cropped(fitted(drawn, MOST, scale), called, title, _described(size, unit))


class Laid:
    """A layout laid apart on the sheet."""

    def __init__(self, size: Size, unit: Unit, laid: Apart, plan: PressingPlan) -> None:
        self.size = size
        self.unit = unit
        self.laid = laid
        self.plan = plan
        self.across = laid.by == "rows"
        made = unit.made
        self.roles = [line.role for line in made.lines] if isinstance(made, LayoutMade) else []
        self.turned = any(part.turn.quarters for part in unit.placed if part.part in size.quilt.units)

    def drawn(self, pen: Pen) -> None:
        """Parts, names, numbers and arrows; borders round them."""
        named: set[str] = set()
        tags: list[labels.Tag] = []
        for line in self.laid.lines:
            for part in line:
                found = draw(pen, self.size, part)
                if self.turned and len(found) > 1:
                    turn_mark(pen, part)
                if not self._named(pen, part, found) and part.part not in named:
                    named.add(part.part)
                    tags.append(labels.Tag(*part.middle, part.part))
        for part in self.laid.borders:
            for patch in draw(pen, self.size, part):
                if not labels.inside(pen, patch, patch.letter) and patch.letter not in named:
                    named.add(patch.letter)
                    tags.append(labels.Tag(*part.middle, patch.letter))
        right, low = self._ends()
        arrows = self._lines(pen, right)
        self._between(pen)
        if not self.across or len(self.laid.lines) == 1:
            labels.under(pen, tags, low)
        else:
            labels.beside(pen, tags, right + pen.pt(30 if arrows else 12))

    def _ends(self) -> tuple[float, float]:
        right = max(part.x + part.across for part in self.laid.all)
        low = max(part.y + part.down for part in self.laid.all)
        return right, low

    def _named(self, pen: Pen, part: Lying, found: Sequence[Shown]) -> bool:
        if len(found) == 1:
            return labels.inside(pen, found[0], part.part)
        return labels.named(pen, part, part.part)

    def _lines(self, pen: Pen, right: float) -> bool:
        """Number and pressing of every line; whether arrows stand at the right."""
        number, aside = 0, False
        left = min(part.x for part in self.laid.all)
        top = min(part.y for part in self.laid.all)
        for line, role, pressed in zip(self.laid.lines, self.roles, self.plan.lines, strict=True):
            x, y = line[0].middle
            if role != "sash" and len(self.laid.lines) > 1:
                number += 1
                at = (left - pen.pt(10), y) if self.across else (x, top - pen.pt(10))
                count(pen, *at, number, size=8)
            aside = self._press(pen, line, pressed, right) or aside
        return aside

    def _press(
        self, pen: Pen, line: Sequence[Lying], pressed: LinePressing, right: float
    ) -> bool:
        """One arrow beside a line that is pressed one way, else one over every seam."""
        way = pressed.uniform
        if way is not None and len(pressed.seams) > 1:
            x, y = line[0].middle
            at = (right + pen.pt(14), y) if self.across else (x, self._ends()[1] + pen.pt(12))
            arrow(pen, *at, way, upright=self.across, long=18)
            return self.across
        for one, other, seam in zip(line, line[1:], pressed.seams, strict=False):
            if self.across:
                level = max(one.y, other.y) + min(one.down, other.down) * self._share(one)
                arrow(pen, (one.x + one.across + other.x) / 2, level, seam, upright=True, long=GAP + 2)
            else:
                far = max(one.x, other.x) + min(one.across, other.across) * 0.5
                arrow(pen, far, (one.y + one.down + other.y) / 2, seam, upright=False, long=GAP + 2)
        return False

    def _share(self, part: Lying) -> float:
        """Where along a seam its arrow stands: out of the way of long columns' names."""
        return 0.5 if part.down < 2 * part.across else 0.12

    def _between(self, pen: Pen) -> None:
        """Arrows over the seams between the lines, at their first part."""
        for line, below, way in zip(
            self.laid.lines, self.laid.lines[1:], self.plan.between, strict=False
        ):
            one, other = line[-1], below[-1]
            if self.across:
                y = (line[0].y + line[0].down + below[0].y) / 2
                x = one.x + one.across / 2
                arrow(pen, x, y, way, upright=False, long=GAP + 4)
            else:
                x = (line[0].x + line[0].across + below[0].x) / 2
                arrow(pen, x, other.y + other.down / 2, way, upright=True, long=GAP + 4)


def _described(size: Size, unit: Unit) -> str:
    made = unit.made
    if not isinstance(made, LayoutMade):
        return words.title(unit.name)
    told, number = [], 0
    for line, pressed in zip(made.lines, size.plans.sewing.pressing[unit.name].lines, strict=True):
        number += line.role != "sash"
        what = "sash row" if line.role == "sash" else f"{line.role} {number}"
        way = f", pressed {pressed.uniform}" if pressed.uniform and len(pressed.seams) > 1 else ""
        told.append(f"{what}: {words.run(part.part for part in line.parts)}{way}")
    borders = "".join(
        f" Border {border.number}: {border.side} at the sides, {border.end} at top and bottom."
        for border in made.borders
    )
    start = "top" if made.by == "rows" else "left"
    return (
        f"{words.title(unit.name)} of the {size.name} size, its {made.by} laid apart, from the {start}. "
        f"{'; '.join(told)}.{borders}"
    )
