"""The pictures of the quilting pages, all from one size and the plan of its quilting."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import chain
from typing import Final

from patternbook.diagrams.pattern import Size
from patternbook.diagrams.quilts.close import close_ups
from patternbook.diagrams.quilts.division import divisions
from patternbook.diagrams.quilts.overview import overviews
from patternbook.diagrams.quilts.steps import steps
from patternbook.diagrams.quilts.widest import widest
from patternbook.quilting.records import QuiltingPlan
from patternbook.strokes.stroke import Drawing

PICTURES: Final[tuple[Callable[[Size, QuiltingPlan], Iterator[Drawing]], ...]] = (
    overviews,
    divisions,
    steps,
    close_ups,
    widest,
)


def quilts(size: Size, plan: QuiltingPlan) -> Iterator[Drawing]:
    """All pictures of one size: the overview, what to mark, the steps, each letter, the gap."""
    return chain.from_iterable(picture(size, plan) for picture in PICTURES)
