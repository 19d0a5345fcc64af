"""The overview of the quilting of each size."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.diagrams.pattern import Pattern
from patternbook.strokes.stroke import Drawing


def quilted(pattern: Pattern) -> Iterator[Drawing]:
    """The overviews, size by size; what draws them is loaded with the first."""
    for size in pattern.tops:
        if size.quilting is not None:
            from patternbook.diagrams.quilts.overview import overviews

            yield from overviews(size, size.quilting)
