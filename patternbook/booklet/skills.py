"""What a reader needs to be able to do, found from what the pattern asks of her."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import Final

from patternbook.booklet import wording
from patternbook.cutting.records import BINDING
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import BorderStep, SegmentStep, Step

Asked = Callable[[Evidence], bool]
# A first level has no piece narrower than this, finished (trade usage: 1½ in; 4 cm).
NARROWEST: Final = {"in": Fraction(3, 2), "cm": Fraction(4)}


def _steps(kind: type[Step]) -> Asked:
    return lambda known: any(isinstance(step, kind) for step in known.sewing.steps)


def _chains(known: Evidence) -> bool:
    return any(
        step.rounds and (len(step.rounds) > 1 or step.make > 1) for step in known.sewing.steps
    )


def _joins(known: Evidence) -> bool:
    strips = (strip for cloth in known.cutting.fabrics.values() for strip in cloth.strips)
    return any(strip.join and strip.letters != (BINDING,) for strip in strips)


# In the order in which they are met.
SKILLS: Final[tuple[tuple[str, Asked], ...]] = (
    ("cutting with a rotary cutter", lambda known: bool(known.cutting.letters)),
    ("joining strips end to end", _joins),
    ("sewing strip sets and cutting them across", _steps(SegmentStep)),
    ("straight seams", lambda known: bool(known.sewing.steps)),
    ("chain piecing", _chains),
    ("matching seams", lambda known: known.sewing.totals.matches > 0),
    ("measuring for borders", _steps(BorderStep)),
    ("sewing on a binding", lambda known: known.cutting.binding is not None),
)


def skills(sizes: Sequence[Evidence]) -> str:
    """All that any of the sizes asks for, in one list."""
    asked = (name for name, needs in SKILLS if any(needs(known) for known in sizes))
    return wording.listed(asked)


def level(stated: str | None, sizes: Sequence[Evidence]) -> str:
    """The author's word, else one from the narrowest piece and the seams that must meet."""
    if stated:
        return stated
    narrow = any(
        min(patch.across, patch.down) < NARROWEST[known.quilt.system.unit]
        for known in sizes
        for patch in known.patches
    )
    if narrow:
        return "some experience"
    return "beginner" if any(known.sewing.totals.matches for known in sizes) else "first quilt"
