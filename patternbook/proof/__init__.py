"""Independent recounts of the finished records: what is cut against what is sewn, edge against
edge, words against numbers. Nothing here uses a planner's own sum."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.tiling import tiling

Check = Callable[[Evidence], Iterator[Notice]]
CHECKS: Final[tuple[Check, ...]] = (tiling,)
EVERY_SIZE: Final[tuple[Callable[[Sequence[Evidence]], Iterator[Notice]], ...]] = ()
