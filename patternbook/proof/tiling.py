"""The patches of the top cover it exactly: none over another, none missing, none outside.

Areas alone would not do: an overlap and a gap of one size cancel. Where all patches are upright
rectangles the areas are added up *and* a line is swept down the top that meets every two patches
side by side: if all lie inside, none overlaps and the areas add up, no gap is left. Where one
has another shape, all their edges must cancel but the top's own (`chains.py`).
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Iterator, Sequence
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.inch import plain
from patternbook.methods.made import Outline
from patternbook.notice import Mark, Notice
from patternbook.proof.boxes import Box
from patternbook.proof.chains import Fitted, fitted
from patternbook.proof.evidence import Evidence, home
from patternbook.proof.laid import frame
from patternbook.proof.places import Cover
from patternbook.proof.shapes import area as area_between
from patternbook.quilt.outlines import lines
from patternbook.quilt.place import Patch
from patternbook.quilt.records import Quilt, Sides


def tiling(evidence: Evidence) -> Iterator[Notice]:
    """Errors where the top's patches do not cover its finished size exactly."""
    quilt, top = evidence.quilt, evidence.quilt.finished
    if top is None or not evidence.patches:
        return
    edge = frame(quilt.units.get(quilt.top or ""), top)
    if all(patch.outline is None for patch in evidence.flat):
        yield from _rectangles(evidence, top)
    else:
        yield from _shapes(quilt, evidence.flat, top, edge)
    on_others = [patch for patch in evidence.patches if patch.laid_on]
    yield from _outside(quilt, on_others, top)


# ---- rectangles only


def _rectangles(evidence: Evidence, finished: Sides) -> Iterator[Notice]:
    quilt, patches = evidence.quilt, evidence.flat
    *boxes, top = evidence.whole.boxes
    beyond = next((number for number, box in enumerate(boxes) if not _inside(box, top)), None)
    if beyond is not None:
        yield _beyond(quilt, patches[beyond])
    over = overlapping(boxes)
    if over is not None:
        yield _overlap(quilt, *(patches[number] for number in over))
    covered, whole = area(evidence), finished.across * finished.down
    if covered != whole:
        yield _uncovered(quilt, covered, whole)


def area(evidence: Evidence) -> Exact:
    """The areas of patches that are rectangles, added up."""
    (*boxes, _), scale = evidence.whole
    if scale is None:
        return sum((patch.across * patch.down for patch in evidence.flat), Exact(0))
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


# ---- any shapes


def _shapes(quilt: Quilt, patches: Sequence[Patch], top: Sides, edge: Outline) -> Iterator[Notice]:
    outlines = [lines(patch) for patch in patches]
    found = fitted(outlines, edge)
    if found.filled:
        return
    for number in found.faulty[:1]:
        message = f"the edges of {_named(patches[number])} cross, or run the wrong way round"
        yield _fault(quilt, "shape", message, patches[number])
    told = [*_outside(quilt, patches, top), *_over(quilt, patches, outlines, found)]
    yield from told
    covered = sum((area_between(outline) for outline in outlines), Exact(0))
    whole = area_between(edge)
    if covered != whole and not any(one.curved for one in found.loose):
        yield _uncovered(quilt, covered, whole)
    elif found.loose and not told:
        x, y = found.loose[0].middle
        message = f"a patch ends at {x:.2f} across, {y:.2f} down, and none is fitted to it there"
        yield _fault(quilt, "uncovered", message, None)


def _outside(quilt: Quilt, patches: Sequence[Patch], top: Sides) -> Iterator[Notice]:
    """The first patch that reaches beyond the top's edge."""
    for patch in patches:
        right, low = patch.x + patch.across, patch.y + patch.down
        if patch.x < 0 or patch.y < 0 or right > top.across or low > top.down:
            yield _beyond(quilt, patch)
            return


def _over(
    quilt: Quilt, patches: Sequence[Patch], outlines: Sequence[Outline], found: Fitted
) -> Iterator[Notice]:
    """The first two patches that lie over one another beside an edge that is left over."""
    cover = Cover(outlines)
    for stretch in found.loose:
        for place in stretch.beside:
            first, *others = cover.at(place) or [0]
            if others:
                yield _overlap(quilt, patches[first], patches[others[0]])
                return


# ---- what is told


def _beyond(quilt: Quilt, patch: Patch) -> Notice:
    return _fault(quilt, "outside", f"{_named(patch)} reaches beyond the top's edge", patch)


def _overlap(quilt: Quilt, first: Patch, second: Patch) -> Notice:
    return _fault(quilt, "overlap", f"{_named(first)} lies over {_named(second)}", first)


def _uncovered(quilt: Quilt, covered: Exact, whole: Exact) -> Notice:
    sums = f"the patches cover {plain(covered)}, the top is {plain(whole)} in area"
    return _fault(quilt, "uncovered", f"{sums}, {plain(whole - covered)} apart", None)


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
