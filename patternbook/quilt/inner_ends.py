"""Where the inner seams of a unit of a method of its own end at its edges, and the way each is
pressed there. What ends in a corner of the unit meets nothing that has to be matched."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final, NamedTuple

from patternbook.exact import Exact
from patternbook.methods.made import SewnSeam, Spot
from patternbook.quilt.edges import Block, End, Number
from patternbook.quilt.place import oblong
from patternbook.quilt.press_words import Way
from patternbook.quilt.records import PiecedMade, Placed, Unit

# The two ways along an edge: backward, and onward.
ALONG: Final[dict[str, tuple[Way, Way]]] = {
    "top": ("left", "right"),
    "bottom": ("left", "right"),
    "left": ("up", "down"),
    "right": ("up", "down"),
}
# Seams so deep in a part are counted where they meet, and no word of the author's mends them.
DEPTH: Final = 2


class _At(NamedTuple):
    """One end of a seam: the edge it lies on, how far along, and the seam's other end."""

    edge: str
    along: Exact
    end: Spot
    other: Spot


def block_of(
    unit: Unit, made: PiecedMade, toward: tuple[int | None, ...], number: Callable[[Exact], Number]
) -> Block:
    """The unit as made, with its seams' ends by their places along its edges."""
    edges: dict[str, dict[Number, End]] = {edge: {} for edge in ALONG}
    # A seam that was sewn before, in a larger unit that this one is cut from, lies as it may.
    for part in unit.placed:
        for edge, along in _breaks(unit, part):
            edges[edge][number(along)] = End("open", DEPTH, bool(unit.press))
    told: set[tuple[str, Number]] = set()
    for seam, to in zip(made.seams, toward, strict=True):
        for at in _ends(unit, seam):
            way = _way(at, unit.placed[to] if to is not None else None)
            ends, place = edges[at.edge], number(at.along)
            if (at.edge, place) in told and ends[place].way != way:
                way = "open"  # two seams run to one point, pressed apart
            told.add((at.edge, place))
            ends[place] = End(way, DEPTH, bool(unit.press))
    across, down = number(unit.finished.across), number(unit.finished.down)
    return Block(across, down, edges["top"], edges["right"], edges["bottom"], edges["left"])


def _ends(unit: Unit, seam: SewnSeam) -> Iterator[_At]:
    for end, other in ((seam.start, seam.end), (seam.end, seam.start)):
        for edge, along in _on_edge(unit, end):
            yield _At(edge, along, end, other)


def _breaks(unit: Unit, part: Placed) -> Iterator[tuple[str, Exact]]:
    """Where a part begins or ends along an edge of the unit."""
    if part.laid_on:
        return
    outline = part.outline or oblong(part.x, part.y, part.across, part.down)
    for corner in outline.corners:
        yield from _on_edge(unit, corner)


def _on_edge(unit: Unit, spot: Spot) -> Iterator[tuple[str, Exact]]:
    """The edge that a point lies on, strictly between its ends, and how far along."""
    across, down = unit.finished
    if 0 < spot.x < across and spot.y in (0, down):
        yield "top" if spot.y == 0 else "bottom", spot.x
    elif 0 < spot.y < down and spot.x in (0, across):
        yield "left" if spot.x == 0 else "right", spot.y


def _way(at: _At, toward: Placed | None) -> Way:
    """Along the edge to the side of the seam that the part lies on which it is pressed toward."""
    if toward is None:
        return "open"
    level = at.edge in ("top", "bottom")
    onward = Spot(at.end.x + (1 if level else 0), at.end.y + (0 if level else 1))
    return ALONG[at.edge][_side(at, onward) == _side(at, _middle(toward))]


def _side(at: _At, spot: Spot) -> int:
    """On which side of the seam a point lies."""
    across, down = at.other.x - at.end.x, at.other.y - at.end.y
    return (across * (spot.y - at.end.y) - down * (spot.x - at.end.x)).sign()


def _middle(part: Placed) -> Spot:
    if part.outline is None:
        return Spot(part.x + part.across / 2, part.y + part.down / 2)
    corners = part.outline.corners
    number = len(corners)
    across = sum((corner.x for corner in corners), Exact(0)) / number
    return Spot(across, sum((corner.y for corner in corners), Exact(0)) / number)
