"""Shapes laid side by side fill a frame exactly when all their edges cancel but the frame's own.

Walked round clockwise, an edge that two shapes share is walked once each way. So every edge is
cut wherever another ends on its line, and the ways it is walked are added up; what is left over
must be the frame's edge. Then the shapes, each counted as often as it covers a place, come to
exactly one inside the frame and to nothing outside: no shape lies over another, and there is no
gap. This needs shapes whose edges do not cross (`shapes.py`), and no areas.

What is added up is not the pieces but their ends: a line whose steps up and down cancel at
every point carries nothing.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from math import dist, hypot
from typing import Final, NamedTuple

from patternbook.methods.made import Outline
from patternbook.proof.shapes import simple
from patternbook.quilt.outlines import Edge, Line, Plane

# How far beside a stretch it is looked up what lies there: far less than any patch is wide.
BESIDE: Final = 1e-5
Steps = dict[Line, dict[int, int]]


class Loose(NamedTuple):
    """A stretch of edge that nothing cancels: about where its middle lies, and a place close to
    that on either side. `curved`: it is part of a circle."""

    middle: tuple[float, float]
    beside: tuple[tuple[float, float], tuple[float, float]]
    curved: bool


class Fitted(NamedTuple):
    """What came of laying shapes into a frame: those that are no sound shape (by number), and
    the edges left over."""

    faulty: tuple[int, ...]
    loose: tuple[Loose, ...]

    @property
    def filled(self) -> bool:
        """Whether the frame is proven to be filled, each place once."""
        return not self.faulty and not self.loose


def fitted(outlines: Sequence[Outline], frame: Outline) -> Fitted:
    """Lay the shapes into a frame."""
    plane = Plane((*outlines, frame))
    faulty = tuple(n for n, outline in enumerate(outlines) if not simple(outline, plane))
    steps: Steps = defaultdict(lambda: defaultdict(int))
    for number, outline in enumerate(outlines):
        _walk(plane.edges(outline, number), 1, steps)
    _walk(plane.edges(frame, -1), -1, steps)
    loose = tuple(sorted(_loose(plane, steps), key=lambda one: one.middle[::-1]))
    return Fitted(faulty, loose)


def _walk(edges: Iterable[Edge], times: int, steps: Steps) -> None:
    for line, start, end, forward, _ in edges:
        at = steps[line]
        way = times if forward else -times
        at[start] += way
        at[end] -= way


def _loose(plane: Plane, steps: Steps) -> Iterator[Loose]:
    """The stretches that are walked more often one way than the other."""
    for line, at in steps.items():
        walked, since = 0, 0
        for place in sorted(place for place, step in at.items() if step):
            if walked:
                yield _stretch(plane, line, since, place)
            walked, since = walked + at[place], place


def _stretch(plane: Plane, line: Line, since: int, place: int) -> Loose:
    (x, y), (right, low) = plane.on(line, since), plane.on(line, place)
    at = ((x + right) / 2, (y + low) / 2)
    long = hypot(right - x, low - y)
    out = ((low - y) / long, (x - right) / long)
    if line.centre is not None:
        middle, radius = plane.near(line.centre), float(line.at)
        far = dist(at, middle)
        out = ((at[0] - middle[0]) / far, (at[1] - middle[1]) / far)
        at = (middle[0] + out[0] * radius, middle[1] + out[1] * radius)
    (x, y), (across, down) = at, (out[0] * BESIDE, out[1] * BESIDE)
    return Loose(at, ((x - across, y - down), (x + across, y + down)), line.centre is not None)
