"""Independent recounts of the finished records: what is cut against what is sewn, edge against
edge, words against numbers. Nothing here uses a planner's own sum."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.again import again
from patternbook.proof.areas import areas
from patternbook.proof.binding import binding
from patternbook.proof.borders import borders
from patternbook.proof.cloth import cloth
from patternbook.proof.complete import complete, unused_fabrics
from patternbook.proof.double_entry import double_entry
from patternbook.proof.every_size import every_size
from patternbook.proof.evidence import Evidence
from patternbook.proof.fits import fits
from patternbook.proof.grid import grid
from patternbook.proof.layers import backing, batting
from patternbook.proof.least import least
from patternbook.proof.measures import measures
from patternbook.proof.not_stated import not_stated
from patternbook.proof.one_source import one_source
from patternbook.proof.one_square import one_square
from patternbook.proof.one_way import one_way
from patternbook.proof.packs import packs
from patternbook.proof.pieced import pieced
from patternbook.proof.replay import replay
from patternbook.proof.round_point import round_point
from patternbook.proof.ruler import ruler
from patternbook.proof.seams import seams
from patternbook.proof.sewn import sewn
from patternbook.proof.slices import slices
from patternbook.proof.spare_cloth import label
from patternbook.proof.strips import strips
from patternbook.proof.tiling import tiling
from patternbook.proof.web import web

Check = Callable[[Evidence], Iterator[Notice]]
LENGTHS: Final[tuple[Check, ...]] = (seams, measures, borders, grid, pieced, tiling)
CHECKS: Final[tuple[Check, ...]] = (
    complete,
    ruler,
    double_entry,
    slices,
    sewn,
    fits,
    strips,
    cloth,
    packs,
    replay,
    least,
    web,
    one_way,
    binding,
    backing,
    batting,
    label,
    one_source,
    one_square,
    round_point,
    again,
    not_stated,
)
EVERY_SIZE: Final[tuple[Callable[[Sequence[Evidence]], Iterator[Notice]], ...]] = (
    every_size,
    unused_fabrics,
    areas,
)


def prove(evidence: Evidence) -> Iterator[Notice]:
    """All recounts of one size; of its lengths only where these have not been told to differ."""
    for check in (*(LENGTHS if evidence.sound else ()), *CHECKS):
        yield from check(evidence)
