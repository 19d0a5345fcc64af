"""Whether each cut can be made with the ruler that is named for it, on the mat, folded as said."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.cutting.records import CutStep, Ruler
from patternbook.notice import Notice
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.proof.replay.lay import Replayed

MOST_FOLDS = 3  # as many layers as a blade goes through: common practice, no source
NOT_CUT = ("diagonal", "join")  # laid corner to corner, or sewn


def tools(cloth: Replayed) -> Iterator[Notice]:
    """Errors where a step's ruler does not cross the cloth, its measure is not the length that is
    to be cut, or the cloth does not lie on the mat."""
    for step in cloth.plan.steps:
        if step.kind not in NOT_CUT:
            yield from _step(cloth, step)


def _step(cloth: Replayed, step: CutStep) -> Iterator[Notice]:
    measured = step.width if step.kind == "strip" else step.length
    folds = 0
    if step.kind in ("strip", "subcut") and measured is not None and step.measure is not None:
        under = folds_under(measured, step.measure)
        if under is None or step.on_fold != (under > 0 and not _long(step)):
            message = (
                f"the ruler is laid to {shown(step.measure, cloth.quilt)} for "
                f"{shown(measured, cloth.quilt)}: folding does not bring it there."
            )
            yield _wrong(cloth, step, message)
            return
        folds = under
    span, deep = _span(cloth, step, folds), _beside(step)
    if step.layers % 2**folds or folds > step.folds or step.folds > MOST_FOLDS:
        message = f"folded {step.folds} times the cloth cannot lie in {step.layers} layers."
        yield _wrong(cloth, step, message)
    if not reaches(step.rulers, span, deep):
        named = " and ".join(_named(cloth, ruler) for ruler in step.rulers) or "no ruler"
        message = (
            f"a cut {shown(deep, cloth.quilt)} from the edge and {shown(span, cloth.quilt)} long "
            f"takes more than {named}."
        )
        yield _wrong(cloth, step, message)
    if step.mat is not None and not _holds(step.mat, span, deep):
        message = (
            f"{shown(span, cloth.quilt)} × {shown(deep, cloth.quilt)} of cloth does not lie on a "
            f"mat of {_named(cloth, step.mat)}."
        )
        yield _wrong(cloth, step, message)


def folds_under(length: Fraction, measure: Fraction) -> int | None:
    """How often the cloth is folded under the ruler, so that the measure gives the length."""
    return next((folds for folds in range(MOST_FOLDS + 1) if measure * 2**folds == length), None)


def _long(step: CutStep) -> bool:
    """A length of the cloth, or a strip too wide to be folded under the ruler: it is measured off
    the bolt, and folded with parallel edges."""
    return step.reason in ("long", "taped")


def _span(cloth: Replayed, step: CutStep, under: int) -> Fraction:
    """How much cloth lies along the ruler: the folded cloth, or the width of the strips."""
    if step.kind in ("straighten", "strip"):
        run = step.length if step.length is not None else cloth.plan.width
        return run / Fraction(2) ** (step.folds - under)
    wide = step.width or Fraction(0)
    longest = max((ruler.down for ruler in step.rulers), default=wide)
    if _long(step):
        return wide / Fraction(2) ** step.folds
    # A strip wider than the ruler is long is folded edge to edge, others only end to end.
    return wide / Fraction(2) ** (step.folds - under) if wide > longest else wide


def _beside(step: CutStep) -> Fraction:
    """How far from the edge the rulers reach, and cloth lies on the mat: a length off the bolt is
    measured with a tape, and so is a piece along it that is wider than its one ruler."""
    measure = step.measure or Fraction(0)
    one = step.rulers[0].across if len(step.rulers) == 1 else None
    taped = _long(step) and (step.kind == "strip" or (one is not None and measure > one))
    return Fraction(0) if taped else measure


def reaches(rulers: tuple[Ruler, ...], span: Fraction, deep: Fraction) -> bool:
    """One ruler covers the piece, either way round; two lie side by side, the longer one along
    the cut."""
    if len(rulers) == 1:
        return _holds(rulers[0], span, deep)
    if not rulers:
        return False
    return span <= max(ruler.down for ruler in rulers) and deep <= sum(
        ruler.across for ruler in rulers
    )


def _holds(tool: Ruler, span: Fraction, deep: Fraction) -> bool:
    short, long = sorted(tool)
    return min(span, deep) <= short and max(span, deep) <= long


def _named(cloth: Replayed, tool: Ruler) -> str:
    return f"{shown(tool.across, cloth.quilt)} × {shown(tool.down, cloth.quilt)}"


def _wrong(cloth: Replayed, step: CutStep, message: str) -> Notice:
    place = part_place(cloth.quilt, step.letters[0]) if step.letters else None
    text = f"{cloth.plan.fabric}, cut {step.order}: {message}"
    return recounted(cloth.quilt, "cut-ruler", "R6", text, place)
