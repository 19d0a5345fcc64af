"""Edges that are sewn together are equally long, from the places of the parts alone."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from patternbook.exact import Exact
from patternbook.methods.made import Outline, SewnSeam, Spot
from patternbook.notice import Notice
from patternbook.proof.boxes import Box, whole
from patternbook.proof.evidence import Evidence
from patternbook.proof.laid import laid, shaped
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.quilt.outlines import Edge, Plane
from patternbook.quilt.records import LayoutMade, Line, PiecedMade, Placed, Quilt, Unit

HINT = "Parts that lie side by side must be equally high: cut the odd one to the other's size."


def seams(evidence: Evidence) -> Iterator[Notice]:
    """Errors where two edges of one seam differ: part on part, and row on row."""
    for unit in evidence.quilt.units.values():
        if isinstance(unit.made, LayoutMade):
            yield from _of_layout(evidence.quilt, unit, unit.made)
        elif isinstance(unit.made, PiecedMade):
            yield from _inside(evidence.quilt, unit, unit.made)
        else:
            yield from _of_row(evidence.quilt, unit, unit.placed, upright=False)


def _of_layout(quilt: Quilt, unit: Unit, made: LayoutMade) -> Iterator[Notice]:
    upright = made.by == "columns"
    for line in made.lines:
        if any(map(shaped, line.parts)):
            yield from _edge_on_edge(quilt, unit, line.parts)
        else:
            yield from _of_row(quilt, unit, line.parts, upright=upright)
    if not any(shaped(part) for line in made.lines for part in line.parts):
        yield from _row_on_row(quilt, unit, made.lines, upright=upright)


def _of_row(
    quilt: Quilt, unit: Unit, parts: Sequence[Placed], *, upright: bool
) -> Iterator[Notice]:
    """Neighbours share one edge from end to end."""
    boxes = _along([part[2:6] for part in parts], upright=upright)
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


def _edge_on_edge(quilt: Quilt, unit: Unit, parts: Sequence[Placed]) -> Iterator[Notice]:
    """Neighbours of any shape have one edge in common, from corner to corner. How one row lies
    on the next is left to the proof that they fill the unit."""
    sides = [_sides(laid(quilt, part)) for part in parts]
    for (one, these), (other, those) in pairwise(zip(parts, sides, strict=True)):
        if not these & those:
            message = (
                f"in '{unit.name}', {one.part} and {other.part} are sewn together, and no edge of "
                f"{one.part} lies on an edge of {other.part} from corner to corner."
            )
            places = (part_place(quilt, other.part), unit.place)
            yield recounted(quilt, "seam-edges", "R1", message, *places, hint=HINT)
            return


def _sides(outline: Outline) -> set[frozenset[Spot]]:
    corners = outline.corners
    return {frozenset((corners[n - 1], corners[n])) for n in range(len(corners))}


def _inside(quilt: Quilt, unit: Unit, made: PiecedMade) -> Iterator[Notice]:
    """The parts that an inner seam joins lie against each other along it."""
    for seam in made.seams:
        parts = [unit.placed[number] for number in seam.between if number < len(unit.placed)]
        if len(parts) < 2 or not _along_seam(seam, *(laid(quilt, part) for part in parts)):
            ends = " to ".join(
                f"{shown(spot.x, quilt)} across, {shown(spot.y, quilt)} down"
                for spot in (seam.start, seam.end)
            )
            joined = " and ".join(part.part for part in parts)
            message = (
                f"in '{unit.name}', {joined} are sewn together from {ends}; they do not lie "
                "against each other there."
            )
            yield recounted(quilt, "seam-inside", "R1", message, unit.place)


def _along_seam(seam: SewnSeam, one: Outline, other: Outline) -> bool:
    """Whether a stretch of the seam is an edge of both, walked either way; or an arc is."""
    line = Outline((seam.start, seam.end))
    plane = Plane((one, other, line))
    start, end = plane.points(line)
    sewn = plane.edge(start, end, 0)
    these, those = list(plane.edges(one, 0)), list(plane.edges(other, 1))
    return any(
        this.line == that.line
        and this.forward != that.forward
        and (_overlap(this, that, sewn) if this.line == sewn.line else this.line.ends)
        for this in these
        for that in those
    )


def _overlap(*edges: Edge) -> bool:
    return max(edge.start for edge in edges) < min(edge.end for edge in edges)


def _row_on_row(
    quilt: Quilt, unit: Unit, lines: Sequence[Line], *, upright: bool
) -> Iterator[Notice]:
    """Rows that follow one another begin and end together."""
    full = [line for line in lines if line.parts]
    ends = [end[2:6] for line in full for end in (line.parts[0], line.parts[-1])]
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
