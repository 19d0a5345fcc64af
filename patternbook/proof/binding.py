"""The binding reaches round the quilt, what every join takes counted, and no strip is too many."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.cutting.records import BINDING, BindingPlan
from patternbook.notice import Notice, Place
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown
from patternbook.quilt.records import Binding, Quilt


def binding(evidence: Evidence) -> Iterator[Notice]:
    """Errors where the binding's length or strips do not come out."""
    quilt, plan = evidence.quilt, evidence.cutting.binding
    if quilt.binding is None or not (quilt.finished or quilt.binding.stated_length):
        return
    if plan is None:
        yield recounted(quilt, "binding-sum", "R14", "no binding is cut.", _place(quilt.binding))
        return
    around = Fraction(0)
    if quilt.finished is not None:
        edge = 2 * (quilt.finished.across + quilt.finished.down)
        around = edge.up(quilt.system.step) + quilt.settings.binding_over
    asked = max(around, quilt.binding.stated_length or Fraction(0))
    if plan.length != asked:
        message = (
            f"the binding must be {shown(asked, quilt)} long, not {shown(plan.length, quilt)}."
        )
        yield recounted(quilt, "binding-sum", "R14", message, _place(quilt.binding))
    if plan.square is not None:
        yield from _bias(quilt, plan, asked)
    else:
        yield from _strips(evidence, quilt.binding, plan, asked)


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


def _bias(quilt: Quilt, plan: BindingPlan, asked: Fraction) -> Iterator[Notice]:
    made = plan.squares * (plan.square or Fraction(0)) ** 2 / plan.cut
    if made < asked:
        message = (
            f"binding: {plan.squares} squares of {shown(plan.square or 0, quilt)} give "
            f"{shown(made, quilt)} of bias, {shown(asked, quilt)} are needed."
        )
        yield recounted(quilt, "binding-sum", "R14", message)


def _place(binding: Binding) -> Place | None:
    return next(iter(binding.places.values()), None)
