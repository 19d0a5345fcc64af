"""Fusible web: as many boxes as shapes are sewn, each large enough, all on the web, none over
another; and the web that is bought holds them, with no step more."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from patternbook.cutting.records import WebBox, WebPlan
from patternbook.exact import Exact
from patternbook.notice import Notice, Place
from patternbook.proof.boxes import whole
from patternbook.proof.evidence import Evidence, home
from patternbook.proof.recounted import recounted, shown, typed
from patternbook.proof.tiling import overlapping
from patternbook.quilt.records import PiecedMade, Quilt, Unit


def web(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a web's plan does not hold."""
    for plan in evidence.cutting.webs.values():
        yield from _counted(evidence, plan)
        yield from _lying(evidence.quilt, plan)
        yield from _bought(evidence.quilt, plan)


def _counted(evidence: Evidence, plan: WebPlan) -> Iterator[Notice]:
    """Letter by letter: the shapes that lie on the top, or in a fragment on the units to make."""
    quilt = evidence.quilt
    units = [unit for unit in quilt.units.values() if _web_of(unit) == plan.fabric]
    if evidence.patches:
        names = {unit.name for unit in units}
        sewn = Counter(p.letter for p in evidence.patches if p.laid_on and home(p) in names)
    else:
        sewn = Counter()
        for unit in units:
            for part in unit.placed:
                sewn[part.part] += unit.make if part.laid_on else 0
    traced = Counter(box.letter for box in plan.boxes)
    for letter in sorted({*traced, *+sewn}):
        if traced[letter] != sewn[letter]:
            message = f"{letter}: {traced[letter]} are traced on {plan.fabric}, {sewn[letter]} are "
            message += "sewn."
            yield recounted(quilt, "web-count", "R3", message, _place(quilt, plan))


def _web_of(unit: Unit) -> str | None:
    fused = unit.made.fused if isinstance(unit.made, PiecedMade) else None
    return fused.web if fused else None


def _lying(quilt: Quilt, plan: WebPlan) -> Iterator[Notice]:
    for box in plan.boxes:
        right, low = box.x + box.across, box.y + box.down
        if box.x < 0 or box.y < 0 or right > plan.width or low > plan.length:
            message = (
                f"{box.letter} reaches to {shown(right, quilt)} across and {shown(low, quilt)} "
                f"along {plan.fabric}, of which {shown(plan.width, quilt)} × "
                f"{shown(plan.length, quilt)} are planned."
            )
            yield recounted(quilt, "web-fit", "R4", message, _place(quilt, plan))
            break
    yield from _large_enough(quilt, plan)
    boxes = whole([[Exact(side) for side in box[1:5]] for box in plan.boxes]).boxes
    over = overlapping(boxes)
    if over is not None:
        one, other = (plan.boxes[number] for number in over)
        message = f"{one.letter} and {other.letter} lie over one another on {plan.fabric}."
        yield recounted(quilt, "web-fit", "R4", message, _place(quilt, plan))


def _large_enough(quilt: Quilt, plan: WebPlan) -> Iterator[Notice]:
    told: set[str] = set()
    for box in plan.boxes:
        if box.letter not in told and not _holds(quilt, plan, box):
            told.add(box.letter)
            message = (
                f"{box.letter} has {shown(box.across, quilt)} × {shown(box.down, quilt)} of "
                f"{plan.fabric}, too little for it and {shown(plan.margin, quilt)} all round."
            )
            yield recounted(quilt, "web-fit", "R4", message, _place(quilt, plan))


def _holds(quilt: Quilt, plan: WebPlan, box: WebBox) -> bool:
    piece = quilt.pieces.get(box.letter)
    if piece is None:
        return False
    across, down = (side + plan.margin * 2 for side in piece.finished)
    wide, high = (box.down, box.across) if box.turned else (box.across, box.down)
    return wide >= across and high >= down


def _bought(quilt: Quilt, plan: WebPlan) -> Iterator[Notice]:
    settings, buy = quilt.settings, plan.buy
    step = settings.yard_step if quilt.system.unit == "in" else settings.metre_step
    low = max((box.y + box.down for box in plan.boxes), default=plan.length)
    have = (buy.amount or 0) * quilt.system.bolt
    sums = (
        f"{plan.fabric}: its shapes take {shown(low, quilt)}; {typed(buy.amount or 0, quilt)} "
        f"{buy.unit} is {shown(have, quilt)}"
    )
    if have < low or buy.needed != low:
        message = f"{sums}, and the plan says {shown(buy.needed, quilt)}."
        yield recounted(quilt, "cloth-short", "R4", message, _place(quilt, plan))
    elif not buy.stated and have - low >= step * quilt.system.bolt:
        message = f"{sums}: a step less would do."
        yield recounted(quilt, "cloth-over", "R4", message, _place(quilt, plan))


def _place(quilt: Quilt, plan: WebPlan) -> Place | None:
    fabric = quilt.fabrics.get(plan.fabric)
    return fabric.place if fabric else None
