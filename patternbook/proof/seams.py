"""Edges that are sewn together are equally long, from the places of the parts alone."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from patternbook.exact import Exact
from patternbook.notice import Notice
from patternbook.proof.boxes import Box, whole
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.quilt.records import LayoutMade, Line, Placed, Quilt, Unit

HINT = "Parts that lie side by side must be equally high: cut the odd one to the other's size."


def seams(evidence: Evidence) -> Iterator[Notice]:
    """Errors where two edges of one seam differ: part on part, and row on row."""
    for unit in evidence.quilt.units.values():
        if isinstance(unit.made, LayoutMade):
            yield from _of_layout(evidence.quilt, unit, unit.made)
        else:
            yield from _of_row(evidence.quilt, unit, unit.placed, upright=False)


def _of_layout(quilt: Quilt, unit: Unit, made: LayoutMade) -> Iterator[Notice]:
    upright = made.by == "columns"
    for line in made.lines:
        yield from _of_row(quilt, unit, line.parts, upright=upright)
    yield from _row_on_row(quilt, unit, made.lines, upright=upright)


def _of_row(
    quilt: Quilt, unit: Unit, parts: Sequence[Placed], *, upright: bool
) -> Iterator[Notice]:
    """Neighbours share one edge from end to end."""
    boxes = _along([part[2:] for part in parts], upright=upright)
    for (one, this), (other, that) in pairwise(zip(parts, boxes, strict=True)):
        if (this.right, this.top, this.bottom) != (that.left, that.top, that.bottom):
            word = "width" if upright else "height"
            message = (
                f"in '{unit.name}', {one.part} and {other.part} are sewn together, but their "
                f"edges differ: {one.part} has {shown(_edge(one, upright), quilt)} in {word}, "
                f"{other.part} {shown(_edge(other, upright), quilt)}."
            )
            places = (part_place(quilt, other.part), unit.place)
            yield recounted(quilt, "seam-edges", "R1", message, *places, hint=HINT)
            return


def _row_on_row(
    quilt: Quilt, unit: Unit, lines: Sequence[Line], *, upright: bool
) -> Iterator[Notice]:
    """Rows that follow one another begin and end together."""
    full = [line for line in lines if line.parts]
    ends = [end[2:] for line in full for end in (line.parts[0], line.parts[-1])]
    boxes = _along(ends, upright=upright)
    rows = [
        Box(first.left, first.top, last.right, first.bottom)
        for first, last in zip(boxes[::2], boxes[1::2], strict=True)
    ]
    for number, (this, that) in enumerate(pairwise(rows), 1):
        if (this.bottom, this.left, this.right) != (that.top, that.left, that.right):
            word = "column" if upright else "row"
            here, next_ = (shown(_long(line, upright), quilt) for line in full[number - 1 :][:2])
            message = (
                f"in '{unit.name}', {word} {number} is {here} long and the {word} sewn to it "
                f"{next_}, sash rows counted."
            )
            yield recounted(quilt, "seam-rows", "R1", message, unit.place, hint=HINT)
            return


def _edge(part: Placed, upright: bool) -> Exact:
    return part.across if upright else part.down


def _long(line: Line, upright: bool) -> Exact:
    return sum(((part.down if upright else part.across) for part in line.parts), Exact(0))


def _along(oblongs: Sequence[tuple[Exact, ...]], *, upright: bool) -> tuple[Box, ...]:
    """The oblongs as boxes, columns laid on their side so that they read as rows."""
    turned = [(y, x, high, wide) for x, y, wide, high in oblongs] if upright else oblongs
    return whole(turned).boxes
