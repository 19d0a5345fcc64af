"""What there is to tell of the binding: its width, length, strips or square, and its corners."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from patternbook.cutting import sums
from patternbook.cutting.binding import (
    bias_made,
    by_thumb,
    fits_round,
    least_square,
    rounded_off,
    widest_square,
)
from patternbook.cutting.records import BindingPlan, Join
from patternbook.cutting.told import Told, anywhere, long, number, spare_severity, times, typed
from patternbook.notice import Notice
from patternbook.quilt.records import Binding, Quilt


def binding_notices(quilt: Quilt, plan: BindingPlan) -> Iterator[Notice]:
    """Stated strips and length against the sum, and the rule of thumb where it fails."""
    binding = quilt.binding
    if binding is None:
        return
    yield from _width(quilt, binding, plan)
    yield from _length(quilt, binding, plan)
    yield from _corners(quilt, binding)
    yield from _closed(quilt, binding, plan)
    if binding.bias:
        yield from _square(quilt, binding, plan)
        return
    yield from _for_bias_only(quilt, binding)
    yield from _strips(quilt, binding, plan)
    if plan.rule < plan.least:
        system = quilt.system
        join = Join(plan.join, plan.loss, plan.made)
        message = (
            f"binding: {_sum(quilt, plan)} ÷ {number(plan.strip_length, system)} gives "
            f"{times(plan.rule, 'strip')} by the rule of thumb, but the joins take some: "
            f"{sums.made_of(plan.rule, plan.strip_length, join, system)}. "
            f"{_so_many(plan)}"
        )
        at = binding.places.get("strips")
        yield Told("binding-rule", "R14", at, anywhere(quilt, binding.places)).notice(
            quilt, "advice", message, needed=str(plan.least)
        )


def _corners(quilt: Quilt, binding: Binding) -> Iterator[Notice]:
    """Round corners: small enough for the quilt, and bound with bias, which alone lies flat."""
    radius, system, finished = binding.radius, quilt.system, quilt.finished
    if radius is None or finished is None:
        return
    at = binding.places.get("radius", binding.places.get("corners"))
    if not fits_round(quilt, radius):
        shorter = min(finished)
        message = (
            f"binding: two corners of {long(radius, system)} take 2 × {number(radius, system)} = "
            f"{long(2 * radius, system)} of a side, and the shorter one is "
            f"{long(shorter.down(system.step), system)}."
        )
        yield Told("corner-radius", "R14", at).notice(quilt, "error", message)
    if not binding.bias:
        message = (
            "binding: the corners are round, and strips cut across the cloth do not stretch round "
            "a curve. Bias does."
        )
        about = Told("rounded-straight", "R14", at, binding.places.get("bias"), "Say `bias: yes`.")
        yield about.notice(quilt, "warning", message)


def _closed(quilt: Quilt, binding: Binding, plan: BindingPlan) -> Iterator[Notice]:
    """What is over must at least let the two ends be joined, where joins are counted."""
    over, system = quilt.settings.binding_over, quilt.system
    if quilt.settings.joins != "counted" or plan.length >= plan.perimeter + plan.overlap:
        return
    message = (
        f"binding: {long(over, system)} over does not close it: its two ends overlap by "
        f"{long(plan.overlap, system)} where they are joined."
    )
    hint = f"State `binding-over: {typed(plan.overlap, system)}` or more in the settings."
    yield Told("binding-open", "R14", None, anywhere(quilt, binding.places), hint).notice(
        quilt, "warning", message, typed(over, system), typed(plan.overlap, system)
    )


def _for_bias_only(quilt: Quilt, binding: Binding) -> Iterator[Notice]:
    """A square, or what bias is cut from, where the binding is not cut on the bias."""
    for key in ("square", "bias-from"):
        if key in binding.places:
            message = f"binding: `{key}` is of bias, and this binding is cut across the cloth."
            hint = f"Say `bias: yes`, or leave `{key}` out."
            yield Told("binding-not-bias", "R14", binding.places[key], None, hint).notice(
                quilt, "warning", message
            )


def _square(quilt: Quilt, binding: Binding, plan: BindingPlan) -> Iterator[Notice]:
    """The stated square against what it gives; strips are not counted on the bias."""
    stated, system = binding.stated_square, quilt.system
    if binding.stated_strips is not None:
        message = "binding: on the bias it comes from a square, not from strips across the cloth."
        hint = "State `square`, the side of the square, or leave `strips` out."
        yield Told("bias-strips", "R14", binding.places.get("strips"), None, hint).notice(
            quilt, "error", message
        )
    squares, least = least_square(quilt, binding, plan.strip_length, plan.length)
    about = Told("bias-square", "R14", binding.places.get("square"), binding.places.get("bias"))
    if not squares:
        message = (
            f"binding: no square up to {long(least, system)} gives bias "
            f"{long(binding.cut, system)} wide."
        )
        yield about.notice(quilt, "error", message)
    elif stated is not None:
        yield from _stated_square(quilt, binding, plan, about, (squares, least))


def _stated_square(
    quilt: Quilt, binding: Binding, plan: BindingPlan, about: Told, best: tuple[int, Fraction]
) -> Iterator[Notice]:
    """As many squares of the stated side as it takes of the best, or fewer."""
    system, stated = quilt.system, binding.stated_square or Fraction(0)
    squares, least = best
    figures = typed(stated, system), typed(least, system)
    widest = widest_square(quilt, plan.strip_length)
    gives = bias_made(quilt, binding, stated, squares)
    said = f"binding: {_sum(quilt, plan)} is needed; {times(squares, 'square')} of"
    if stated > widest:
        message = (
            f"{said} {long(stated, system)} cannot be cut: cloth and ruler reach "
            f"{long(widest, system)}."
        )
        yield about.notice(quilt, "error", message, *figures, mend=True)
    elif gives < plan.length:
        message = (
            f"{said} {long(stated, system)} comes to {long(gives, system)} of bias; "
            f"{long(least, system)} would do."
        )
        yield about.notice(quilt, "error", message, *figures, mend=True)
    elif stated > least:
        message = (
            f"{said} {long(stated, system)} comes to {long(gives, system)} of bias; "
            f"{long(least, system)} would do."
        )
        yield replace(about, code="spare-square").notice(
            quilt, spare_severity(stated**2, least**2), message, *figures
        )


def _so_many(plan: BindingPlan) -> str:
    """What follows where the rule of thumb is a strip short."""
    if plan.strips < plan.least:
        return f"As stated, {times(plan.strips, 'strip')} are cut: sew the ends with care."
    return f"{times(plan.least, 'strip')} are needed."


def _width(quilt: Quilt, binding: Binding, plan: BindingPlan) -> Iterator[Notice]:
    """A strip is sewn on, goes round the edge and comes down on the seam at the back: 4 seams
    where it is folded in half first, 3 where its edge is turned under."""
    system, seams = quilt.system, 3 if binding.fold == "single" else 4
    least = seams * quilt.seam
    about = Told("binding-width", "R14", binding.places.get("cut"))
    figures = (typed(binding.cut, system),)
    if binding.cut < least:
        message = (
            f"binding: a strip cut {long(binding.cut, system)} does not reach round the edge: "
            f"{binding.fold} fold takes {seams} × {number(quilt.seam, system)} = "
            f"{long(least, system)}."
        )
        yield about.notice(quilt, "error", message, *figures, typed(least, system))
    elif binding.cut >= plan.strip_length:
        message = (
            f"binding: a strip cut {long(binding.cut, system)} is as wide as the cloth, "
            f"{long(plan.strip_length, system)}: nothing is left to join."
        )
        yield about.notice(quilt, "error", message, *figures)


def _sum(quilt: Quilt, plan: BindingPlan) -> str:
    """`2 × 60 + 2 × 72 + 10 = 274″`."""
    finished, system = quilt.finished, quilt.system
    over = number(quilt.settings.binding_over, system)
    needed = plan.perimeter + quilt.settings.binding_over
    if finished is None:
        return f"a length of {long(plan.length, system)}"
    if not (finished.across.rational and finished.down.rational):
        return f"{number(plan.perimeter, system)} + {over} = {long(needed, system)}"
    across, down = (number(side.fraction, system) for side in finished)
    less, radius = "", quilt.binding.radius if quilt.binding else None
    if radius and rounded_off(quilt):
        less = f" − (8 − 2π) × {number(radius, system)}"
    return f"2 × {across} + 2 × {down}{less} + {over} = {long(needed, system)}"


def _length(quilt: Quilt, binding: Binding, plan: BindingPlan) -> Iterator[Notice]:
    stated, system = binding.stated_length, quilt.system
    needed = plan.perimeter + quilt.settings.binding_over
    if stated is None or stated == needed or quilt.finished is None:
        return
    about = Told("binding-length", "R14", binding.places.get("length"))
    figures = (typed(stated, system), typed(needed, system))
    if stated < needed:
        message = (
            f"binding: {_sum(quilt, plan)}; {long(stated, system)} is stated, short by "
            f"{long(needed - stated, system)}."
        )
        yield about.notice(quilt, "error", message, *figures, mend=True)
    else:
        message = f"binding: {_sum(quilt, plan)}; {long(stated, system)} is stated and made."
        yield about.notice(quilt, spare_severity(stated, needed), message, *figures)


def _strips(quilt: Quilt, binding: Binding, plan: BindingPlan) -> Iterator[Notice]:
    stated, system = binding.stated_strips, quilt.system
    thumb = by_thumb(quilt, plan.perimeter, plan.length, plan.strip_length, plan.loss)
    if stated is None or stated in {plan.least, thumb}:
        return
    join = Join(plan.join, plan.loss, plan.made)
    gives = sums.made_of(stated, plan.strip_length, join, system)
    figures = (str(stated), str(plan.least))
    at = binding.places.get("strips")
    if stated < plan.least:
        message = (
            f"binding: {_sum(quilt, plan)} is needed; {gives}, short by "
            f"{long(plan.length - sums.made(stated, plan.strip_length, join), system)}."
        )
        hint = f"Cut {plan.least} strips."
        short = Told("binding-short", "R14", at, None, hint).notice(
            quilt, "error", message, *figures, mend=True
        )
        yield _or_by_thumb(short, plan.least if thumb is None else min(thumb, plan.least))
    else:
        message = f"binding: {_sum(quilt, plan)}; {gives}, {stated - plan.least} more than needed."
        yield Told("spare-binding", "R14", at).notice(
            quilt, spare_severity(stated, plan.least), message, *figures
        )


def _or_by_thumb(short: Notice, thumb: int) -> Notice:
    """The rule's own number is what is needed; the one with the joins counted mends it."""
    if not short.edits or str(thumb) == short.needed:
        return short
    edit = replace(short.edits[0], new=str(thumb), sure=False)
    hint = f"{short.hint} {thumb} do by the rule of thumb."
    return replace(short, needed=str(thumb), edits=(*short.edits, edit), hint=hint)
