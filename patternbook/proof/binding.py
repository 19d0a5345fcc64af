"""The binding reaches round the quilt, what every join takes counted, and no strip is too many."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from patternbook.cutting.records import BINDING, BindingPlan
from patternbook.notice import Notice, Place
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown
from patternbook.quilt.records import Binding, Quilt

BELOW: Final = Fraction(333, 106)
ABOVE: Final = Fraction(355, 113)


def binding(evidence: Evidence) -> Iterator[Notice]:
    """Errors where the binding's length or strips do not come out."""
    quilt, plan = evidence.quilt, evidence.cutting.binding
    if quilt.binding is None or not (quilt.finished or quilt.binding.stated_length):
        return
    if plan is None:
        yield recounted(quilt, "binding-sum", "R14", "no binding is cut.", _place(quilt.binding))
        return
    asked, most = _round(quilt, quilt.binding)
    if not asked <= plan.length <= most:
        message = (
            f"the binding must be {shown(asked, quilt)} long, not {shown(plan.length, quilt)}."
        )
        yield recounted(quilt, "binding-sum", "R14", message, _place(quilt.binding))
    if plan.square is not None:
        yield from _bias(quilt, quilt.binding, plan, plan.length)
    else:
        yield from _strips(evidence, quilt.binding, plan, plan.length)


def _strips(
    evidence: Evidence, binding: Binding, plan: BindingPlan, asked: Fraction
) -> Iterator[Notice]:
    """Strips added one by one until they reach; each after the first is joined to the last."""
    quilt = evidence.quilt
    loss = binding.cut if binding.join == "diagonal" else 2 * quilt.seam
    loss = loss if quilt.settings.joins == "counted" else Fraction(0)
    least, long = 1, plan.strip_length
    while long < asked and loss < plan.strip_length:
        least, long = least + 1, long + plan.strip_length - loss
    wanted = max(least, binding.stated_strips or 0)
    if binding.stated_strips and _do(binding.stated_strips, asked, plan, loss, quilt):
        wanted = binding.stated_strips
    fabric = evidence.cutting.fabrics.get(binding.fabric)
    strips = fabric.strips if fabric else ()
    cut = sum(s.times for s in strips if BINDING in s.letters and s.width == binding.cut)
    if (plan.least, plan.strips, cut) != (least, wanted, wanted):
        message = (
            f"binding: {shown(asked, quilt)} takes {least} strips of "
            f"{shown(plan.strip_length, quilt)}, {shown(loss, quilt)} lost at each join; the plan "
            f"has {plan.strips}, and {cut} are cut from {binding.fabric}."
        )
        yield recounted(quilt, "binding-sum", "R14", message, _place(binding))


def _do(strips: int, asked: Fraction, plan: BindingPlan, loss: Fraction, quilt: Quilt) -> bool:
    """Whether so many are enough by the trade's rule: before joining all of what is asked, and
    joined still half of what goes beyond the way round. Not where the author counts the joins."""
    joined = strips * plan.strip_length - (strips - 1) * loss
    beyond = quilt.settings.binding_over / 2
    enough = strips * plan.strip_length >= asked and joined >= asked - beyond
    return "joins" not in quilt.settings.own and enough


def _round(quilt: Quilt, binding: Binding) -> tuple[Fraction, Fraction]:
    """The length that is asked for: at least, and at most where corners are round, whose curve is
    bounded from both sides by fractions (π lies between 333 ÷ 106 and 355 ÷ 113)."""
    least = most = binding.stated_length or Fraction(0)
    if quilt.finished is not None:
        sides = 2 * (quilt.finished.across + quilt.finished.down)
        radius, step, over = binding.radius, quilt.system.step, quilt.settings.binding_over
        if radius is None or any(side < 2 * radius for side in quilt.finished):
            radius = Fraction(0)
        low, high = (sides - (8 - 2 * pi) * radius for pi in (BELOW, ABOVE))
        least, most = max(least, low.up(step) + over), max(most, high.up(step) + over)
    return least, most


def _bias(quilt: Quilt, binding: Binding, plan: BindingPlan, asked: Fraction) -> Iterator[Notice]:
    side = plan.square or Fraction(0)
    enough = _reaches(quilt, binding, side, plan)
    if plan.made < asked or side > plan.strip_length or not enough:
        message = (
            f"binding: {plan.squares} squares of {shown(side, quilt)} are said to give "
            f"{shown(plan.made, quilt)} of bias, {shown(asked, quilt)} are needed."
        )
        yield recounted(quilt, "binding-sum", "R14", message)


def _reaches(quilt: Quilt, binding: Binding, side: Fraction, plan: BindingPlan) -> bool:
    """Whether the squares give what is said: no more than their cloth, less what the seams take.
    Roots are avoided by comparing squares of lengths."""
    counted, seam, wide = quilt.settings.joins == "counted", quilt.seam, binding.cut
    if binding.bias_from == "strips":
        return _in_strips(quilt, binding, side, plan)
    if not counted:
        return plan.made * wide <= plan.squares * side**2
    inner, rounds = side - 2 * seam, 0
    while inner > 0 and 2 * ((rounds + 1) * wide) ** 2 <= inner**2:
        rounds += 1
    joins = wide if binding.join == "diagonal" else 2 * seam
    each = (plan.made + (plan.squares - 1) * joins) / plan.squares
    return each**2 <= 2 * (rounds * inner) ** 2


def _in_strips(quilt: Quilt, binding: Binding, side: Fraction, plan: BindingPlan) -> bool:
    """Strips on both sides of the diagonal, each 2 widths shorter than the one before."""
    wide, half = binding.cut, 0
    while 2 * side**2 >= (wide * (2 * half + 3)) ** 2:
        half += 1
    number = 2 * half * plan.squares
    joins = (max(0, number - 1) if quilt.settings.joins == "counted" else 0) * 2 * quilt.seam
    slanted = binding.join == "diagonal"
    shorter = sum(2 * at + 1 if slanted else 2 * at + 2 for at in range(half))
    less = 2 * plan.squares * shorter * wide + (0 if slanted else joins)
    diagonals = number * side - (joins if slanted else 0)
    return plan.bias_strips == number and (plan.made + less) ** 2 <= 2 * diagonals**2


def _place(binding: Binding) -> Place | None:
    return next(iter(binding.places.values()), None)
