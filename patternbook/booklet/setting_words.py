"""Blocks set on point and hexagons over papers, in words: what is done there beside joining."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.step_facts import CHECK, Context, Fact
from patternbook.exact import Exact
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import LayoutMade, Sides
from patternbook.quilt.slanting import triangle
from patternbook.sewing.records import LinesStep, LineStep, Step

CORNER_TO_CORNER: Final = "from the top left corner to the bottom right"
BLOCKS_ALONE: Final = Fact(
    "Without its triangles, each should measure, with seam allowances",
    "Without its triangles, it should measure {} with seam allowances.",
    lambda step, known: wording.sides(step.measure, known.quilt.system),
)


def _finished(step: Step, known: Evidence) -> str:
    seams = known.quilt.seam * 2
    size = Sides(step.measure.across - seams, step.measure.down - seams)
    return wording.sides(size, known.quilt.system)


IN_PAPERS: Final = Fact(
    "With the papers in, should measure from edge to edge",
    "With the papers in, it should measure {} from edge to edge.",
    _finished,
)


def check(step: LineStep | LinesStep) -> Fact:
    """What it should measure: an edge that runs to a point is not measured."""
    if step.papers:
        return IN_PAPERS
    if isinstance(step, LineStep) and step.triangles:
        return BLOCKS_ALONE
    return CHECK


def triangles(step: LineStep, where: Context) -> tuple[str, ...]:
    """How the triangles at the ends of a row on the slant are sewn on."""
    if not step.triangles:
        return ()
    made = where.known.quilt.units[step.unit].made
    parts = made.lines[step.lines[0]].parts if isinstance(made, LayoutMade) else ()
    letter = next(part.part for part in parts if triangle(part))
    if 0 not in step.lines:
        return (f"Sew {letter} on as in row 1, its long edge to the outside of the quilt.",)
    lie = (
        f"Turn the long edge of each {letter} to the outside of the quilt. Lay its square corner "
        "on the corner of the block; its point stands out at the other end and is cut off once "
        "the seam is pressed."
    )
    return (lie,)


def corners(step: LinesStep, where: Context) -> Iterator[str]:
    """The corner triangles last, and the edge made straight."""
    if step.corners is None:
        return
    seam = wording.length(where.known.quilt.seam, where.known.quilt.system)
    yield (
        f"Fold the long edge of each {step.corners} in half to find its middle. Sew one to each "
        "corner, middle on middle, and press toward it."
    )
    yield f"Straighten the edges where they need it: leave {seam} beyond the points of the blocks."


def over_papers(step: LineStep, where: Context) -> Iterator[str]:
    """One row of hexagons; how they are basted is told at the first."""
    if 0 not in step.lines:
        yield "Whip-stitch them edge to edge, as row 1."
        return
    placed = where.known.quilt.units[step.unit].placed
    letters = wording.listed(dict.fromkeys(part.part for part in placed))
    yield (
        f"Baste every {letters} over its paper: fold the allowance over the edges, one after the "
        "other, and hold it with long stitches."
    )
    yield (
        "Lay two right sides together, edge on edge. Whip-stitch along the edge with small "
        "stitches that take the folds of the cloth alone, not the papers. Knot at both ends."
    )


def rows_over_papers(step: LinesStep, where: Context) -> Iterator[str]:
    """All rows of hexagons joined, and the papers taken out."""
    quilt = where.known.quilt
    made = quilt.units[step.unit].made
    high = made.lines[0].down if isinstance(made, LayoutMade) else Exact(0)
    point = wording.length(high / 4, quilt.system)
    yield (
        "Sew row to row in the same way, one edge after the other: the points of each row lie in "
        "the notches of the next. Bend the papers where they are in the way."
    )
    yield "Press on the wrong side. Then take out the basting and the papers."
    yield (
        f"At the top and the bottom points stand out by {point}. Face or bind them as they are, "
        "or trim them off straight before you bind; the quilt is then shorter by so much at "
        "either end."
    )
