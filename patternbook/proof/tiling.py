"""The patches of the top cover it exactly: none over another, none missing, none outside.

Areas alone would not do: an overlap and a gap of one size cancel. So the areas are added up
*and* a line is swept down the top that meets every two patches side by side. If all lie
inside, none overlaps and the areas add up, no gap is left.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Iterator, Sequence
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.inch import plain
from patternbook.notice import Mark, Notice
from patternbook.proof.boxes import Box
from patternbook.proof.evidence import Evidence, home
from patternbook.quilt.place import Patch
from patternbook.quilt.records import Quilt


def tiling(evidence: Evidence) -> Iterator[Notice]:
    """Errors where the top's patches do not cover its finished size exactly."""
    quilt, patches = evidence.quilt, evidence.patches
    if quilt.finished is None or not patches:
        return
    *boxes, top = evidence.whole.boxes
    beyond = next((number for number, box in enumerate(boxes) if not _inside(box, top)), None)
    if beyond is not None:
        patch = patches[beyond]
        yield _fault(quilt, "outside", f"{_named(patch)} reaches beyond the top's edge", patch)
    over = overlapping(boxes)
    if over is not None:
        first, second = (patches[number] for number in over)
        yield _fault(quilt, "overlap", f"{_named(first)} lies over {_named(second)}", first)
    covered, whole = area(evidence), quilt.finished.across * quilt.finished.down
    if covered != whole:
        sums = f"the patches cover {plain(covered)}, the top is {plain(whole)} in area"
        yield _fault(quilt, "uncovered", f"{sums}, {plain(whole - covered)} apart", None)


def area(evidence: Evidence) -> Exact:
    """The patches' areas added up."""
    (*boxes, _), scale = evidence.whole
    if scale is None:
        return sum((patch.across * patch.down for patch in evidence.patches), Exact(0))
    squares = sum((right - left) * (bottom - top) for left, top, right, bottom in boxes)
    return Exact(Fraction(squares, scale * scale))


def overlapping(boxes: Sequence[Box]) -> tuple[int, int] | None:
    """Two boxes (by number) of which one lies over the other; None if no two do."""
    solid = (number for number, box in enumerate(boxes) if box.bottom > box.top)
    from_top = sorted(solid, key=lambda number: boxes[number].top)
    by_bottom = sorted(from_top, key=lambda number: boxes[number].bottom)
    open_: list[tuple[int, int, int]] = []
    done = 0
    for number in from_top:
        left, top, right, _ = boxes[number]
        while boxes[by_bottom[done]].bottom <= top:
            ended = by_bottom[done]
            del open_[bisect_left(open_, (boxes[ended].left, boxes[ended].right, ended))]
            done += 1
        at = bisect_left(open_, (left,))
        for other_left, other_right, other in open_[max(0, at - 1) : at + 1]:
            if other_left < right and left < other_right:
                return other, number
        insort(open_, (left, right, number))
    return None


def _inside(box: Box, top: Box) -> bool:
    return (
        box.left >= top.left
        and box.top >= top.top
        and box.right <= top.right
        and box.bottom <= top.bottom
    )


def _named(patch: Patch) -> str:
    where = " in ".join(reversed(patch.within))
    return f"{patch.letter} of {where} at {plain(patch.x)} across, {plain(patch.y)} down"


def _fault(quilt: Quilt, what: str, message: str, patch: Patch | None) -> Notice:
    unit = quilt.units.get(home(patch) if patch else quilt.top or "")
    marks = (Mark(unit.place, "placed here"),) if unit and unit.place else ()
    hint = "Every place of the top must be filled once: check the cells and sizes of that unit."
    return Notice(
        f"tiling-{what}", "error", "proof", message + ".", marks, "R8", (quilt.size,), hint=hint
    )
