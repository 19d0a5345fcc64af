"""Shapes that are another shape when they are turned over: such as lie mirrored are cut apart."""

from __future__ import annotations

from collections.abc import Sequence

from patternbook.exact import Exact
from patternbook.methods.made import Outline, Spot

Step = tuple[Exact, Exact, Exact]


def handed(outline: Outline) -> bool:
    """Whether no turning brings the shape onto its mirror image."""
    walk = _walk(outline.corners)
    image = _walk([Spot(-spot.x, spot.y) for spot in reversed(outline.corners)])
    return all(image[start:] + image[:start] != walk for start in range(len(walk)))


def _walk(corners: Sequence[Spot]) -> list[Step]:
    """Round the shape: how long each edge is (squared), and how the next one turns off it."""
    edges = [
        (b.x - a.x, b.y - a.y) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True)
    ]
    return [
        (x * x + y * y, x * over - y * across, x * across + y * over)
        for (x, y), (across, over) in zip(edges, edges[1:] + edges[:1], strict=True)
    ]
