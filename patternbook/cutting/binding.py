"""The binding: how long it must be, and the strips or the bias square that give it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from math import isqrt

from patternbook.cutting import sums
from patternbook.cutting.groups import join_loss
from patternbook.cutting.packing import strips_end_to_end
from patternbook.cutting.records import BINDING, BindingPlan, Cut, Join, Strip
from patternbook.cutting.told import Told, anywhere, long, number, spare_severity, times, typed
from patternbook.inch import ruler_up
from patternbook.notice import Notice
from patternbook.quilt.records import Binding, Quilt


def binding_plan(quilt: Quilt, run: Fraction) -> BindingPlan | None:
    """The binding from strips of length `run`; None where the quilt has no binding or no size."""
    binding = quilt.binding
    perimeter = goes_round(quilt)
    if binding is None or perimeter is None:
        return None
    length = max(perimeter + quilt.settings.binding_over, binding.stated_length or Fraction(0))
    if binding.bias:
        return _bias(quilt, binding, run, perimeter, length)
    kind, loss = join_loss(quilt, binding.join, binding.cut)
    least = strips_end_to_end(length, run, loss)
    if least is None:  # wider than its strips are long, which is told: joined straight
        kind, loss = join_loss(quilt, "straight", binding.cut)
        least = strips_end_to_end(length, run, loss) or 1
    strips, thumb = max(least, binding.stated_strips or 0), None
    if binding.stated_strips is not None:
        thumb = by_thumb(quilt, perimeter, length, run, loss)
    if thumb is not None and binding.stated_strips == thumb:
        strips = thumb
    made = strips * run - (strips - 1) * loss
    rule = int(-(-length // run))
    return BindingPlan(
        binding.fabric, binding.cut, perimeter, length, strips, least, run, kind, loss, made, rule
    )


def by_thumb(
    quilt: Quilt, perimeter: Fraction, length: Fraction, run: Fraction, loss: Fraction
) -> int | None:
    """The strips of the trade's rule (the way round and 10 inches, by the width of the cloth),
    or as many more as leave half of the 10 inches once the joins are sewn: what a printed pattern
    may state. None where the author's own rule counts the joins.

    Source of the rule: trade facts 6.5; of the half: common practice, no source.
    """
    if "joins" in quilt.settings.own or loss >= run:
        return None
    strips = max(1, int(-(-length // run)))
    while strips * run - (strips - 1) * loss < perimeter + quilt.settings.binding_over / 2:
        strips += 1
    return strips


def goes_round(quilt: Quilt) -> Fraction | None:
    """The way round the quilt; in a fragment without one, what the stated length leaves for it."""
    if quilt.finished is not None:
        return ruler_up((quilt.finished.across + quilt.finished.down) * 2, quilt.system)
    stated = quilt.binding.stated_length if quilt.binding else None
    return max(stated - quilt.settings.binding_over, Fraction(0)) if stated else None


def _bias(
    quilt: Quilt, binding: Binding, run: Fraction, perimeter: Fraction, length: Fraction
) -> BindingPlan:
    """Squares whose area is the strip's (trade facts 6.12), as few as the cloth is wide enough
    for, their side rounded up to a whole unit."""
    area = length * binding.cut
    squares = max(1, int(-(-area // run**2)))
    if _root_up(area / squares) > run:  # the side is rounded up to a whole unit
        squares += 1
    side = _root_up(area / squares)
    kind, loss = join_loss(quilt, binding.join, binding.cut)
    made = squares * side * side / binding.cut
    return BindingPlan(
        binding.fabric,
        binding.cut,
        perimeter,
        length,
        0,
        0,
        run,
        kind,
        loss,
        made,
        0,
        squares,
        side,
    )


def _root_up(area: Fraction) -> Fraction:
    root = isqrt(int(area))
    return Fraction(root if root * root >= area else root + 1)


def binding_strip(plan: BindingPlan) -> Strip:
    """The binding as it comes off the cloth."""
    if plan.square:
        cut = Cut(BINDING, plan.square, plan.square, 1)
        return Strip(plan.square, plan.strip_length, plan.squares, (cut,))
    cut = Cut(BINDING, min(plan.length, plan.made), plan.cut, 1)
    join = Join(plan.join, plan.loss, plan.made)
    if plan.strips == 1:
        return Strip(plan.cut, plan.strip_length, 1, (cut,))
    return Strip(plan.cut, plan.strip_length, plan.strips, (cut,), join=join)


def binding_notices(quilt: Quilt, plan: BindingPlan) -> Iterator[Notice]:
    """Stated strips and length against the sum, and the rule of thumb where it fails."""
    binding = quilt.binding
    if binding is None:
        return
    yield from _width(quilt, binding, plan)
    yield from _length(quilt, binding, plan)
    if binding.bias:
        return
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
    return f"2 × {across} + 2 × {down} + {over} = {long(needed, system)}"


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
