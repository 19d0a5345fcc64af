"""The rows (or columns) of a top laid apart: numbered, named, with their sashes and pressing."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.laid import any_turned
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.slant import Slants, slants
from patternbook.diagrams.table import Table, kinds
from patternbook.diagrams.unit import FEW
from patternbook.quilt.records import LayoutMade, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing

# Inches on paper: half a page wide; where names do not fit in their parts, more and more.
ALLOWED: Final = ((3.5, 4.6), (7.2, 4.0), (7.2, 6.5))
LARGEST: Final = 0.14
ONE: Final = 1  # name that may stand beside a wide picture of turned units


def rows(pattern: Pattern) -> Iterator[Drawing]:
    """The top, once where the sizes differ in repeats alone, else once a size; then such units
    of many parts as have several rows."""
    tops = [(size, size.quilt.units[size.quilt.top]) for size in pattern.tops if size.quilt.top]
    alike = len({_kind(unit) for _, unit in tops}) == 1
    for size, unit in tops[:1] if alike else tops:
        note = f" (drawn for {size.name})" if alike and len(tops) > 1 else ""
        called = name("rows", "top") if alike else name("rows", "top", size.name)
        title = "The top" if alike else f"The {size.name} top"
        yield from _rows(size, unit, called, f"{title}, laid apart{note}")
    for size, unit in pattern.units():
        made = unit.made
        if not isinstance(made, LayoutMade) or len(made.lines) == 1:
            continue
        if len(unit.placed) > FEW or slants(made):
            title = f"{words.title(unit.name)}, laid apart{pattern.drawn_for(size, unit)}"
            yield from _rows(size, unit, name("rows", unit.name), title)


def _kind(unit: Unit) -> object:
    """What a layout is like, whatever its number of repeats."""
    made = unit.made
    if not isinstance(made, LayoutMade):
        return unit.placed
    return made.by, words.repeats([(line[0], words.repeats(line[1])) for line in kinds(made)])


def _rows(size: Size, unit: Unit, called: str, title: str) -> Iterator[Drawing]:
    made = unit.made
    if not isinstance(made, LayoutMade) or len(unit.placed) == 1:
        return
    scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
    laid = Slants if slants(made) else Table
    for most in ALLOWED:
        pen = fitted(lambda pen: laid(size, unit, made, pen).drawn(), most, scale)
        bare = laid(size, unit, made, Pen(1, 1, pen.scale)).drawn()
        if bare <= (ONE if most != ALLOWED[0] and any_turned(size, unit) else 0):
            break
    yield cropped(pen, called, title, _described(size, unit, made))


def _described(size: Size, unit: Unit, made: LayoutMade) -> str:
    """The lines in words, those alike told together."""
    alike: dict[tuple[str, str], list[int]] = {}
    number = 0
    pressing = size.plans.sewing.pressing[unit.name].lines
    for line, pressed in zip(made.lines, pressing, strict=True):
        number += line.role != "sash"
        way = f", pressed {pressed.uniform}" if pressed.uniform and len(pressed.seams) > 1 else ""
        alike.setdefault((line.role, words.run(line.parts) + way), []).append(number)
    told = "; ".join(f"{_which(role, of)}: {text}" for (role, text), of in alike.items())
    start = "top" if made.by == "rows" else "left"
    if slants(made):
        start = "top left, each on the slant from lower left to upper right"
    called = "Top" if unit.name == size.quilt.top else words.title(unit.name)
    return f"{called} of the {size.name} size, its {made.by} laid apart, from the {start}. {told}."


def _which(role: str, numbers: list[int]) -> str:
    """`7 sash rows`, `row 1`, `rows 1, 3 and 5`."""
    if role == "sash":
        return words.counted(len(numbers), "sash row")
    role = "row" if role == "slant" else role
    if len(numbers) == 1:
        return f"{role} {numbers[0]}"
    return f"{role}s {words.listed(map(str, numbers))}"
