"""The binding: how long it must be, and the strips or the bias square that give it."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.cutting import bias
from patternbook.cutting.groups import join_loss
from patternbook.cutting.packing import strips_end_to_end
from patternbook.cutting.records import BINDING, BindingPlan, Cut, Join, Strip
from patternbook.cutting.tools import TABLES
from patternbook.exact import Exact
from patternbook.inch import ruler_up
from patternbook.quilt.records import Binding, Quilt

# More than π by less than three in ten million: an edge with round corners is never told short.
ROUND: Final = Fraction(355, 113)


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
        binding.fabric,
        binding.cut,
        perimeter,
        length,
        strips,
        least,
        run,
        kind,
        loss,
        made,
        rule,
        radius=binding.radius,
        overlap=overlap(quilt, binding),
    )


def overlap(quilt: Quilt, binding: Binding) -> Fraction:
    """How far the end lies over the beginning before the two are joined: what that join takes."""
    return binding.cut if binding.join == "diagonal" else 2 * quilt.seam


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
        around = (quilt.finished.across + quilt.finished.down) * 2
        return ruler_up(around - rounded_off(quilt), quilt.system)
    stated = quilt.binding.stated_length if quilt.binding else None
    return max(stated - quilt.settings.binding_over, Fraction(0)) if stated else None


def rounded_off(quilt: Quilt) -> Fraction:
    """How much shorter four round corners make the way round: of each, two radii less a quarter
    of its circle."""
    radius = quilt.binding.radius if quilt.binding else None
    return (8 - 2 * ROUND) * radius if radius and fits_round(quilt, radius) else Fraction(0)


def fits_round(quilt: Quilt, radius: Fraction) -> bool:
    """Whether the sides are long enough for round corners."""
    return quilt.finished is None or all(side >= 2 * radius for side in quilt.finished)


def _bias(
    quilt: Quilt, binding: Binding, run: Fraction, perimeter: Fraction, length: Fraction
) -> BindingPlan:
    """The squares of cloth, as stated if they do."""
    kind, loss = join_loss(quilt, binding.join, binding.cut)
    squares, side = least_square(quilt, binding, run, length)
    stated = binding.stated_square
    if stated and stated <= widest_square(quilt, run):
        given = squares_of(quilt, binding, run, length, stated)
        if given and given <= squares:
            squares, side = given, stated
    squares = squares or 1  # none gives any, which is told
    strips = 2 * bias.per_half(side, binding.cut) * squares
    joined = binding.bias_from == "strips"
    if joined and loss:
        loss = ruler_up(Exact(0, 2 * quilt.seam), quilt.system) if kind == "diagonal" else loss
    made = bias_made(quilt, binding, side, squares)
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
        bias_strips=strips if joined else 0,
        radius=binding.radius,
        overlap=overlap(quilt, binding),
    )


def least_square(
    quilt: Quilt, binding: Binding, run: Fraction, length: Fraction
) -> tuple[int, Fraction]:
    """How many squares, and their side in whole units: one where one does, the smallest; else
    those that take the least cloth, as many side by side as go on to it."""
    ways = []
    for side in range(1, int(widest_square(quilt, run)) + 1):
        number = squares_of(quilt, binding, run, length, Fraction(side))
        if number == 1:
            return 1, Fraction(side)
        if number:
            ways.append((-(-number // int(run // side)) * side, number, side))
    if not ways:
        return 0, widest_square(quilt, run)
    _, number, side = min(ways)
    return number, Fraction(side)


def widest_square(quilt: Quilt, run: Fraction) -> Fraction:
    """No wider than the cloth, nor than the long ruler reaches across."""
    return min(run, TABLES[quilt.system.unit].long_ruler.down)


def squares_of(
    quilt: Quilt, binding: Binding, run: Fraction, length: Fraction, side: Fraction
) -> int:
    """How many squares of this side give the length, rows of them full; 0 where none gives any,
    or the joins take it all."""
    one, two = (bias_made(quilt, binding, side, number) for number in (1, 2))
    if one >= length:
        return 1
    if two <= one:
        return 0
    number = 1 + int(-(-(length - one) // (two - one)))
    while (short := length - bias_made(quilt, binding, side, number)) > 0:  # lost in rounding
        number += int(-(-short // (two - one)))
    beside = int(run // side)
    return -(-number // beside) * beside if beside and number > beside else number


def bias_made(quilt: Quilt, binding: Binding, side: Fraction, squares: int) -> Fraction:
    """What so many squares give, on the ruler's marks; by the trade's rule where joins are not
    counted."""
    width, seam, step = binding.cut, quilt.seam, quilt.system.step
    counted = quilt.settings.joins == "counted"
    if binding.bias_from == "square":
        if not counted:
            return squares * side * side / width
        each = bias.continuous(side, width, seam).down(step)
        return max(Fraction(0), squares * each - (squares - 1) * join_loss_of(quilt, binding))
    strips = 2 * bias.per_half(side, width) * squares
    if binding.join == "straight":
        whole = bias.squared_strips(side, width) * squares
        return (whole - max(0, strips - 1) * (2 * seam if counted else 0)).down(step)
    whole = bias.in_strips(side, width) * squares
    joins = Exact(0, 2 * seam) * max(0, strips - 1) if counted else Exact(0)
    return (whole - joins).down(step)


def join_loss_of(quilt: Quilt, binding: Binding) -> Fraction:
    """What a join of two lengths takes."""
    return join_loss(quilt, binding.join, binding.cut)[1]


def binding_strip(plan: BindingPlan) -> Strip:
    """The binding as it comes off the cloth."""
    if plan.square:
        beside = max(1, min(plan.squares, int(plan.strip_length // plan.square)))
        cut = Cut(BINDING, plan.square, plan.square, beside)
        return Strip(plan.square, plan.strip_length, -(-plan.squares // beside), (cut,))
    cut = Cut(BINDING, min(plan.length, plan.made), plan.cut, 1)
    join = Join(plan.join, plan.loss, plan.made)
    if plan.strips == 1:
        return Strip(plan.cut, plan.strip_length, 1, (cut,))
    return Strip(plan.cut, plan.strip_length, plan.strips, (cut,), join=join)
