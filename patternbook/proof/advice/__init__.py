"""What is worth knowing beyond faults, each with its amount; told once a pattern."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.advice.drift import drift
from patternbook.proof.advice.least_width import least_width
from patternbook.proof.advice.matches import matches
from patternbook.proof.advice.near_cuts import near_cuts
from patternbook.proof.advice.quilting_limit import quilting_limit
from patternbook.proof.advice.saves_strip import saves_strip
from patternbook.proof.evidence import Evidence

ADVICE: Final[tuple[Callable[[Sequence[Evidence]], Iterator[Notice]], ...]] = (
    drift,
    matches,
    near_cuts,
    saves_strip,
    least_width,
    quilting_limit,
)


def advice(sizes: Sequence[Evidence]) -> Iterator[Notice]:
    """All advice on the sizes whose lengths hold."""
    sound = tuple(one for one in sizes if one.sound)
    for advise in ADVICE:
        yield from advise(sound)
