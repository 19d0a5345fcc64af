"""What is cut from spare cloth, the strip let into the backing and the label, is really over."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.cutting.records import BackingPlan, Insert, Patches
from patternbook.notice import Notice, Place
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown
from patternbook.quilt.records import CutSize, Quilt


def strip_let_in(
    evidence: Evidence, plan: BackingPlan, strip: Insert, place: Place | None
) -> Iterator[Notice]:
    """The strip let in: as long as the lengths beside it, of patches that the spare cloth gives."""
    quilt, seam = evidence.quilt, 2 * evidence.quilt.settings.backing_seam
    lengths = [one.along for one in strip.patches for _ in range(one.number)]
    made = sum(lengths, Fraction(0)) - seam * (len(lengths) - 1)
    cut = [one.across == strip.width and _from_spare(evidence, one) for one in strip.patches]
    told = made == strip.made >= plan.best.each
    if not told or strip.length != plan.best.each or not all(cut):
        message = (
            f"backing: patches {' + '.join(shown(one, quilt) for one in lengths)} sewn end to end "
            f"come to {shown(made, quilt)} of {shown(plan.best.each, quilt)}, or are more than the "
            "spare cloth gives."
        )
        yield recounted(quilt, "backing-sum", "R15", message, place)


def _from_spare(evidence: Evidence, patches: Patches) -> bool:
    """Whether the cloth that is over gives them all, side by side across it or along it."""
    deep, wide = over_of(evidence, patches.fabric)
    for room, length in ((wide, deep), (deep, wide)):
        if patches.number * patches.across <= room and patches.along <= length:
            return True
    return False


def over_of(evidence: Evidence, fabric: str) -> tuple[Fraction, Fraction]:
    """The length of a cloth that nothing is cut from, by its own sum, and its width."""
    plan, quilt = evidence.cutting.fabrics.get(fabric), evidence.quilt
    if plan is None or plan.buy.amount is None:
        return Fraction(0), Fraction(0)
    used = sum((line.strips * line.width for line in plan.buy.lines), Fraction(0))
    return plan.buy.amount * quilt.system.bolt - used - plan.buy.straightening, plan.width


def label(evidence: Evidence) -> Iterator[Notice]:
    """An error where the label goes on to no cloth that is over of what it is cut from."""
    quilt, plan, backing = evidence.quilt, evidence.cutting.label, evidence.cutting.backing
    if plan is None:
        return
    hems = [side + 2 * quilt.seam for side in plan.finished if side is not None]
    room = CutSize(Fraction(0), Fraction(0))
    if plan.of_backing and backing is not None:
        best, size = backing.best, backing.size
        covered = size.across if best.seams == "lengthwise" else size.down or Fraction(0)
        room = CutSize(best.made - covered, best.each)
    elif plan.source is not None:
        room = CutSize(*over_of(evidence, plan.source))
    else:
        room = plan.cut
    short = any(have < need for have, need in zip(plan.cut, hems, strict=True) if have is not None)
    if short or not _goes_on(room, plan.cut):
        message = (
            f"label: {_size(plan.finished, quilt)} with its hems is cut {_size(plan.cut, quilt)}; "
            f"what is over of {plan.source or 'the backing'} is {_size(room, quilt)}."
        )
        yield recounted(quilt, "label-sum", "R15", message)


def _goes_on(room: CutSize, cut: CutSize) -> bool:
    """Either way round."""
    have, need = (sorted((side.across, side.down or Fraction(0))) for side in (room, cut))
    return have[0] >= need[0] and have[1] >= need[1]


def _size(size: CutSize, quilt: Quilt) -> str:
    return f"{shown(size.across, quilt)} × {shown(size.down or 0, quilt)}"
