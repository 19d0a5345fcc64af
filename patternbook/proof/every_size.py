"""Values rise with the size: a quilt that another would cover takes no more of anything."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import permutations

from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown
from patternbook.quilt.records import Quilt

HINT = "Look for a figure that stands under the wrong size, or that belongs to another."


def every_size(sizes: Sequence[Evidence]) -> Iterator[Notice]:
    """Warnings where a larger size has fewer patches of a fabric, or less cloth, than a smaller."""
    amounts = [(size.quilt, (_patches(size), _cloth(size))) for size in sizes]
    for (small, less), (large, more) in permutations(amounts, 2):
        if _covers(large, small):
            for what, fewer, many in zip(("patches", "cloth"), less, more, strict=True):
                for fabric in fewer:
                    if fabric in many and many[fabric] < fewer[fabric]:
                        pair = (fewer[fabric], many[fabric])
                        yield _falls(small, large, what, fabric, pair)


def _covers(large: Quilt, small: Quilt) -> bool:
    """Whether one quilt would lie wholly under the other, and is not as large."""
    if large.finished is None or small.finished is None or large.finished == small.finished:
        return False
    pairs = zip(large.finished, small.finished, strict=True)
    return all(one >= other for one, other in pairs)


def _patches(size: Evidence) -> Mapping[str, Fraction]:
    found: dict[str, Fraction] = {}
    for letter, number in size.lies.items():
        fabric = size.quilt.pieces[letter].fabric
        if fabric is not None:
            found[fabric] = found.get(fabric, Fraction(0)) + number
    return found


def _cloth(size: Evidence) -> Mapping[str, Fraction]:
    """The area of all strips (the backing apart, whose panels may lie the cheaper way)."""
    return {
        name: sum((s.width * s.length * s.times for s in plan.strips), Fraction(0))
        for name, plan in size.cutting.fabrics.items()
        if plan.strips
    }


def _falls(
    small: Quilt, large: Quilt, what: str, fabric: str, amounts: tuple[Fraction, Fraction]
) -> Notice:
    less, more = (shown(amount, large) for amount in amounts)
    square = "square inches" if large.system.unit == "in" else "square centimetres"
    of = "patches" if what == "patches" else f"{square} of strips"
    message = (
        f"{large.size} is larger than {small.size} and has less of '{fabric}': {more} {of} "
        f"against {less}."
    )
    place = large.fabrics[fabric].place if fabric in large.fabrics else None
    return recounted(large, "size-falls", "R9", message, place, hint=HINT, severity="warning")
