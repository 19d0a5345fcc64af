"""What there is to tell of the ways of cutting: what another would save, and what is unsettled."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.cutting.records import FabricPlan, OtherStyle
from patternbook.cutting.told import Told, long, typed
from patternbook.notice import Notice
from patternbook.quilt.records import Quilt


def style_notices(quilt: Quilt, plan: FabricPlan) -> Iterator[Notice]:
    """Advice on one fabric that is planned in full."""
    fabric = quilt.fabrics.get(plan.fabric)
    place = fabric.place if fabric else quilt.place
    other = saving(plan)
    if other is not None:
        hint = f"Say `cutting: {other.style}` in the settings; the cutting takes more care."
        about = Told("other-cutting", None, place, None, hint)
        yield about.notice(quilt, "advice", _saves(quilt, plan, other), needed=other.style)
    if plan.limit_hit and not plan.proven:
        yield Told("cutting-gap", None, place).notice(quilt, "advice", _gap(quilt, plan))


def saving(plan: FabricPlan) -> OtherStyle | None:
    """The easiest other style in which less is bought."""
    for other in plan.others:
        if other.amount is not None and plan.buy.amount is not None:
            if other.length < plan.length and other.amount < plan.buy.amount:
                return other
        elif other.number is not None and other.number < (plan.buy.number or 0):
            return other
    return None


def _saves(quilt: Quilt, plan: FabricPlan, other: OtherStyle) -> str:
    """`ground: 131½″ in plain cutting, 118½″ in shared; 3¼ yd would do instead of 3¾ yd.`"""
    name, system = plan.fabric or "the cloth", quilt.system
    if other.amount is None or plan.buy.amount is None:
        return (
            f"{name}: {plan.buy.number} are needed in {plan.style} cutting; {other.number} would "
            f"do in {other.style} cutting."
        )
    return (
        f"{name}: {long(plan.length, system)} in {plan.style} cutting, "
        f"{long(other.length, system)} in {other.style}; {typed(other.amount, system)} "
        f"{system.bolt_unit} would do instead of {typed(plan.buy.amount, system)} "
        f"{system.bolt_unit}."
    )


def _gap(quilt: Quilt, plan: FabricPlan) -> str:
    name = plan.fabric or "the cloth"
    if plan.number_bound is not None:
        return (
            f"{name}: the plan takes {plan.buy.number}, and no {plan.style} plan takes fewer than "
            f"{plan.number_bound}; which is the least was not settled."
        )
    return (
        f"{name}: the plan takes {long(plan.length, quilt.system)}, and no {plan.style} plan takes "
        f"less than {long(plan.bound, quilt.system)}; which is the least was not settled."
    )
