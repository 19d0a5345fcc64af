"""Recounts of a finished quilting plan from its records alone: nothing here uses a planner's sum,
nor the code that it was worked out with."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.quilting.anchored import anchored
from patternbook.proof.quilting.areas import areas
from patternbook.proof.quilting.complete import complete
from patternbook.proof.quilting.even import even
from patternbook.proof.quilting.inside import inside
from patternbook.proof.quilting.joined import joined
from patternbook.proof.quilting.left_open import left_open
from patternbook.proof.quilting.open_places import open_places
from patternbook.proof.quilting.starts import starts
from patternbook.proof.quilting.stitched import Stitched
from patternbook.proof.quilting.thread import thread
from patternbook.proof.quilting.travel import travel
from patternbook.proof.quilting.twice import twice
from patternbook.quilt.records import Quilt
from patternbook.quilting.records import QuiltingPlan

CHECKS: Final[tuple[Callable[[Stitched], Iterator[Notice]], ...]] = (
    joined,
    complete,
    areas,
    inside,
    travel,
    open_places,
    twice,
    anchored,
    starts,
    even,
    thread,
    left_open,
)


def prove_quilting(plan: QuiltingPlan, quilt: Quilt) -> tuple[Notice, ...]:
    """All recounts of the plan of one size."""
    stitched = Stitched(plan, quilt)
    return tuple(notice for check in CHECKS for notice in check(stitched))
