"""The cloth that is bought holds all strips, the spare and the backing, and no step more."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.cutting.records import FabricPlan, Strip
from patternbook.inch import INCHES_A_CENTIMETRE
from patternbook.notice import Notice, Place
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown, typed
from patternbook.quilt.records import Quilt


def cloth(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a purchase does not hold what is cut from it."""
    quilt, backing = evidence.quilt, evidence.cutting.backing
    for plan in evidence.cutting.fabrics.values():
        if plan.buy.amount is None:
            continue
        strips = sum((_taken(strip) for strip in plan.strips), Fraction(0))
        mine = backing is not None and backing.fabric == plan.fabric
        panels = backing.best.panels * backing.best.each if mine and backing else Fraction(0)
        yield from _lines(quilt, plan, strips + panels)
        yield from _bought(quilt, plan, strips, panels)


def _taken(strip: Strip) -> Fraction:
    """What a strip takes of the bolt's length; none where it lies beside lengths of the cloth."""
    return Fraction(0) if strip.beside else strip.width * strip.times


def _lines(quilt: Quilt, plan: FabricPlan, used: Fraction) -> Iterator[Notice]:
    """The sum that is printed is the sum of the strips."""
    told = sum((line.strips * line.width for line in plan.buy.lines), Fraction(0))
    if told != used:
        message = (
            f"{plan.fabric}: the lines of its sum come to {shown(told, quilt)}, its strips and "
            f"panels take {shown(used, quilt)}."
        )
        yield recounted(quilt, "cloth-sum", "R20", message, _place(quilt, plan))


def _bought(quilt: Quilt, plan: FabricPlan, strips: Fraction, panels: Fraction) -> Iterator[Notice]:
    settings, buy = quilt.settings, plan.buy
    needed = before_washing(quilt, strips + (settings.spare if strips else 0) + panels)
    have = (buy.amount or Fraction(0)) * quilt.system.bolt
    cut = settings.yard_step if quilt.system.unit == "in" else settings.metre_step
    most = (cut if strips else 0) + (settings.backing_step if panels else 0)
    sums = (
        f"{plan.fabric}: strips {shown(strips, quilt)}, spare "
        f"{shown(settings.spare if strips else 0, quilt)}, backing {shown(panels, quilt)} come to "
        f"{shown(needed, quilt)}; {typed(buy.amount or 0, quilt)} {buy.unit} is "
        f"{shown(have, quilt)}"
    )
    if have < needed or buy.needed != needed:
        message = f"{sums}, and the plan says {shown(buy.needed, quilt)}."
        yield recounted(quilt, "cloth-short", "R4", message, _place(quilt, plan))
    elif not buy.stated and have - needed >= most * quilt.system.bolt:
        message = f"{sums}: a step less would do."
        yield recounted(quilt, "cloth-over", "R4", message, _place(quilt, plan))
    yield from _metres(quilt, plan, needed)


def before_washing(quilt: Quilt, length: Fraction) -> Fraction:
    """What must be bought so that this length is left, on a mark of the ruler."""
    left, step = 100 - quilt.settings.shrinkage, quilt.system.step
    return length if left == 100 else -(-length * 100 // (left * step)) * step


def _metres(quilt: Quilt, plan: FabricPlan, needed: Fraction) -> Iterator[Notice]:
    """The same purchase in metres is no shorter (R17: never rounded down)."""
    if plan.buy.metres is None or quilt.system.unit == "cm":
        return
    have = plan.buy.metres * 100 * INCHES_A_CENTIMETRE
    if have < needed:
        message = (
            f"{plan.fabric}: {shown(needed, quilt)} are needed, {float(plan.buy.metres):g} m are "
            f"{float(have):.2f}."
        )
        yield recounted(quilt, "cloth-short", "R4", message, _place(quilt, plan))


def _place(quilt: Quilt, plan: FabricPlan) -> Place | None:
    fabric = quilt.fabrics.get(plan.fabric)
    return fabric.place if fabric else None
