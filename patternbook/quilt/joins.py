"""The seams between patches as they lie, and the places where seams have to meet: from
geometry alone. Where all patches are upright rectangles their boxes tell; else their edges do.

Patches that lie on others have no seams and meet nothing.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from math import lcm
from typing import Final, Literal, NamedTuple

from patternbook.exact import Exact
from patternbook.methods.made import Outline
from patternbook.quilt import outlines
from patternbook.quilt.outlines import Plane
from patternbook.quilt.place import Patch

MATCH: Final = 4  # patches, or more, with a corner there


class Seam(NamedTuple):
    """One straight seam as long as it runs on, at one height (`across`) or one distance from the
    left (`down`); the patches on both sides are indexes into the patches it was found from."""

    lies: Literal["across", "down"]
    at: Exact
    start: Exact
    end: Exact
    before: tuple[int, ...]
    after: tuple[int, ...]


class Box(NamedTuple):
    """A patch's sides as whole numbers."""

    left: int
    top: int
    right: int
    bottom: int


class Edge(NamedTuple):
    """One side of a patch: from where to where along its line."""

    start: int
    end: int
    patch: int


class Touch(NamedTuple):
    """The stretch that two patches share."""

    start: int
    end: int
    before: int
    after: int


def seams(patches: Sequence[Patch]) -> tuple[Seam, ...]:
    """All seams straight across or down, those across first, from the top left on."""
    if plain(patches):
        boxes, length = whole_numbers(patches)
        level, upright = list(_level(boxes)), list(_upright(boxes))
    else:
        plane, shapes = _plane(patches)
        level, upright = _straight(_sorted_edges(plane, shapes))
        length = plane.length
    return (*_seams("across", level, length), *_seams("down", upright, length))


def touching(patches: Sequence[Patch]) -> tuple[tuple[int, int], ...]:
    """The pairs of patches that share more than a point of an edge, lower index first."""
    if plain(patches):
        boxes, _ = whole_numbers(patches)
        sides = [line[1:] for lines in (_level(boxes), _upright(boxes)) for line in lines]
    else:
        sides = list(_sorted_edges(*_plane(patches)).values())
    pairs = {
        (min(touch.before, touch.after), max(touch.before, touch.after))
        for before, after in sides
        for touch in _shared(before, after)
    }
    return tuple(sorted(pairs))


class Stretch(NamedTuple):
    """What two patches share of a seam, from end to end, about where it lies; `centre` of the
    circle that it is part of, where it is curved. Patches are indexes, lower first."""

    start: tuple[float, float]
    end: tuple[float, float]
    patches: tuple[int, int]
    centre: tuple[float, float] | None = None


def stretches(patches: Sequence[Patch]) -> Iterator[Stretch]:
    """Every seam between two patches, whatever its slope, those of one line together."""
    if plain(patches):
        boxes, length = whole_numbers(patches)
        for upright, lines in ((False, _level(boxes)), (True, _upright(boxes))):
            for at, before, after in lines:
                for touch in _shared(before, after):
                    yield _stretch(touch, float(length(at)), length, upright=upright)
        return
    plane, shapes = _plane(patches)
    for line, (before, after) in _sorted_edges(plane, shapes).items():
        centre = plane.near(line.centre) if line.centre else None
        for touch in _shared(before, after):
            ends = plane.on(line, touch.start), plane.on(line, touch.end)
            yield Stretch(*ends, _pair(touch), centre)


def _stretch(touch: Touch, at: float, length: Callable[[int], Exact], *, upright: bool) -> Stretch:
    start, end = float(length(touch.start)), float(length(touch.end))
    ends = ((at, start), (at, end)) if upright else ((start, at), (end, at))
    return Stretch(*ends, _pair(touch))


def _pair(touch: Touch) -> tuple[int, int]:
    return min(touch.before, touch.after), max(touch.before, touch.after)


def crossings(patches: Sequence[Patch]) -> tuple[tuple[Exact, Exact], ...]:
    """The places where on both sides of a seam another seam ends, and so has to be matched.

    Four patches or more have a corner there. Where one patch's side runs past, two have.
    """
    corners, length = _met(patches)
    met = sorted((y, x) for (x, y), number in corners.items() if number >= MATCH)
    return tuple((length(x), length(y)) for y, x in met)


def matches(patches: Sequence[Patch]) -> int:
    """How many places must match; nought is worth printing."""
    corners, _ = _met(patches)
    return sum(number >= MATCH for number in corners.values())


def plain(patches: Sequence[Patch]) -> bool:
    """Whether all are upright rectangles, side by side."""
    return all(patch.outline is None and not patch.laid_on for patch in patches)


def whole_numbers(patches: Sequence[Patch]) -> tuple[list[Box], Callable[[int], Exact]]:
    """All sides as whole numbers of one small length, and the way back.

    Where a root is left in a length, the numbers are ranks: order is all that is needed.
    """
    lengths = [value for patch in patches for value in patch[1:5]]
    if any(value.roots for value in lengths):
        return _ranks(patches)
    scale = lcm(*{value.denominator for value in lengths})
    numbers = iter([value.numerator * (scale // value.denominator) for value in lengths])
    boxes = [
        Box(x, y, x + across, y + down)
        for x, y, across, down in zip(numbers, numbers, numbers, numbers, strict=True)
    ]
    return boxes, lambda number: Exact(Fraction(number, scale))


def _ranks(patches: Sequence[Patch]) -> tuple[list[Box], Callable[[int], Exact]]:
    sides = [(patch.x, patch.y, patch.x + patch.across, patch.y + patch.down) for patch in patches]
    values = sorted({value for four in sides for value in four})
    rank = {value: number for number, value in enumerate(values)}
    return [Box(*(rank[value] for value in four)) for four in sides], values.__getitem__


def _met(
    patches: Sequence[Patch],
) -> tuple[Counter[tuple[int, int]], Callable[[int], Exact]]:
    """How many patches have a corner at each place."""
    if plain(patches):
        boxes, length = whole_numbers(patches)
        return _corners(boxes), length
    plane, shapes = _plane(patches)
    return Counter(spot for _, shape in shapes for spot in set(plane.points(shape))), plane.length


def _corners(boxes: Iterable[Box]) -> Counter[tuple[int, int]]:
    corners: Counter[tuple[int, int]] = Counter()
    for left, top, right, bottom in boxes:
        corners.update(((left, top), (right, top), (left, bottom), (right, bottom)))
    return corners


Shapes = list[tuple[int, Outline]]


def _plane(patches: Sequence[Patch]) -> tuple[Plane, Shapes]:
    """The patches that are sewn edge to edge, by number, and the plane that they lie in."""
    shapes = [(n, outlines.lines(one)) for n, one in enumerate(patches) if not one.laid_on]
    return Plane(shape for _, shape in shapes), shapes


Sides = tuple[list[Edge], list[Edge]]


def _sorted_edges(plane: Plane, shapes: Shapes) -> dict[outlines.Line, Sides]:
    """The edges on each line in order: those walked backward, then those walked forward."""
    found: dict[outlines.Line, Sides] = {}
    for number, shape in shapes:
        for line, start, end, forward, patch in plane.edges(shape, number):
            found.setdefault(line, ([], []))[forward].append(Edge(start, end, patch))
    return {line: (sorted(back), sorted(forth)) for line, (back, forth) in found.items()}


def _straight(edges: dict[outlines.Line, Sides]) -> tuple[list[Line], list[Line]]:
    """The lines across, then those down. Walked round clockwise, a patch above a line walks it
    backward, and a patch left of one forward."""
    level = [(number, *both) for number, both in _lying(edges, "across")]
    upright = [(number, forth, back) for number, (back, forth) in _lying(edges, "down")]
    return level, upright


def _lying(
    edges: dict[outlines.Line, Sides], lies: Literal["across", "down"]
) -> list[tuple[int, Sides]]:
    numbered = [(line.at, both) for line, both in edges.items() if line.lies == lies and all(both)]
    return sorted((at, both) for at, both in numbered if isinstance(at, int))


Line = tuple[int, list[Edge], list[Edge]]


def _level(boxes: Sequence[Box]) -> Iterator[Line]:
    """Each height with the patches that end there and those that begin there."""
    bottoms = [(box.bottom, Edge(box.left, box.right, i)) for i, box in enumerate(boxes)]
    tops = [(box.top, Edge(box.left, box.right, i)) for i, box in enumerate(boxes)]
    return _lines(bottoms, tops)


def _upright(boxes: Sequence[Box]) -> Iterator[Line]:
    """Each distance from the left, likewise."""
    rights = [(box.right, Edge(box.top, box.bottom, i)) for i, box in enumerate(boxes)]
    lefts = [(box.left, Edge(box.top, box.bottom, i)) for i, box in enumerate(boxes)]
    return _lines(rights, lefts)


def _lines(ends: list[tuple[int, Edge]], starts: list[tuple[int, Edge]]) -> Iterator[Line]:
    before: dict[int, list[Edge]] = {}
    after: dict[int, list[Edge]] = {}
    for edges, at in ((ends, before), (starts, after)):
        for place, edge in edges:
            at.setdefault(place, []).append(edge)
    for place in sorted(before.keys() & after.keys()):
        yield place, sorted(before[place]), sorted(after[place])


def _shared(before: Sequence[Edge], after: Sequence[Edge]) -> Iterator[Touch]:
    """The stretches that edges on both sides of one line share, in order."""
    i = j = 0
    while i < len(before) and j < len(after):
        one, other = before[i], after[j]
        start, end = max(one.start, other.start), min(one.end, other.end)
        if start < end:
            yield Touch(start, end, one.patch, other.patch)
        if one.end <= other.end:
            i += 1
        if other.end <= one.end:
            j += 1


def _runs(lines: Iterable[Line]) -> Iterator[tuple[int, list[Touch]]]:
    """Shared stretches that follow one another without a gap."""
    for at, before, after in lines:
        run: list[Touch] = []
        for touch in _shared(before, after):
            if run and run[-1].end != touch.start:
                yield at, run
                run = []
            run.append(touch)
        if run:
            yield at, run


def _seams(
    lies: Literal["across", "down"], lines: Iterable[Line], length: Callable[[int], Exact]
) -> Iterator[Seam]:
    for at, run in _runs(lines):
        before = tuple(dict.fromkeys(touch.before for touch in run))
        after = tuple(dict.fromkeys(touch.after for touch in run))
        yield Seam(lies, length(at), length(run[0].start), length(run[-1].end), before, after)
