"""Hatching as lines of our own, cut off at the patch, so that every renderer draws the same."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from patternbook.strokes.stroke import Hatch, Point


def hatching(points: Sequence[Point], hatch: Hatch, pt: float) -> Iterator[tuple[Point, Point]]:
    """The lines of a hatch inside one polygon; `pt` is a point on paper in drawing units.

    All lines are counted from the drawing's origin, so they run on over neighbouring patches.
    """
    for angle in hatch.angles:
        yield from _ruled(points, math.radians(angle), hatch.gap * pt)


def _ruled(points: Sequence[Point], angle: float, gap: float) -> Iterator[tuple[Point, Point]]:
    along = (math.cos(angle), -math.sin(angle))
    across = (-along[1], along[0])
    turned = [(x * along[0] + y * along[1], x * across[0] + y * across[1]) for x, y in points]
    heights = [height for _, height in turned]
    for number in range(math.ceil(min(heights) / gap - 0.5), math.ceil(max(heights) / gap - 0.5)):
        height = (number + 0.5) * gap
        crossed = sorted(_crossings(turned, height))
        for start, end in zip(crossed[::2], crossed[1::2], strict=False):
            yield (
                (start * along[0] + height * across[0], start * along[1] + height * across[1]),
                (end * along[0] + height * across[0], end * along[1] + height * across[1]),
            )


def _crossings(turned: Sequence[Point], height: float) -> Iterator[float]:
    """Where the outline crosses a level line; a corner on the line counts for one edge only."""
    for (x1, y1), (x2, y2) in zip(turned, (*turned[1:], turned[0]), strict=True):
        if (y1 <= height) != (y2 <= height):
            yield x1 + (x2 - x1) * (height - y1) / (y2 - y1)
