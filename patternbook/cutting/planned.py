"""Shared and thrifty cutting: what may lie anywhere is laid by the planner, and proven."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Literal

from patternbook.cutting.buying import Basket, rounded
from patternbook.cutting.cloth import form_of
from patternbook.cutting.fabric import FabricCut, Wanted
from patternbook.cutting.laid_out import ToPlan, block_of, owned, priced, strip_of
from patternbook.cutting.planned_sheets import from_sheets
from patternbook.cutting.planner.records import Answer
from patternbook.cutting.planner.solve import solve
from patternbook.cutting.records import Least, Strip, Style
from patternbook.cutting.wishes import Wishes, task, wishes
from patternbook.quilt.records import Quilt

Planned = Literal["shared", "thrifty"]


def planned(quilt: Quilt, wanted: Wanted, plain: FabricCut, style: Style) -> FabricCut:
    """The same fabric in this style, never with more cloth than in plain cutting."""
    if style == "plain":
        return plain
    wished = wishes(quilt, plain.laid)
    if not wished.free or any(group.unlaid for group in plain.laid.groups):
        # Nothing of it can be laid otherwise.
        return replace(plain, plan=replace(plain.plan, style=style))
    to_plan = ToPlan(quilt, wanted, plain, wished, style)
    if form_of(wanted.fabric).sold != "by length":
        return from_sheets(to_plan)
    return _from_the_bolt(to_plan, style)


def _from_the_bolt(it: ToPlan, style: Planned) -> FabricCut:
    answer = solve(task(it.quilt, it.plain.laid, it.wished, style))
    if answer.block is None and answer.task.lengthwise:
        return it.plain  # along the cloth they are too long to be cut, or too many
    made = it.assembled(it.spread(owned(_strips(it, answer))))
    bound = it.wished.fixed_length + answer.bound * it.wished.unit
    proven = _buys_as_much(it, made, bound)
    plan = replace(
        made.plan,
        style=style,
        bound=bound,
        proven=proven,
        # The planner knows of no shrinkage: what it thought settled may not be.
        limit_hit=answer.limit_hit or not proven,
        least=_least(it.wished, answer),
    )
    return replace(made, plan=plan)


def _strips(it: ToPlan, answer: Answer) -> list[Strip]:
    block, run = answer.block, it.plain.laid.cloth.run
    strips = [strip_of(it.wished, strip, run, block) for strip in answer.strips]
    if block is not None and block.columns:
        strips.insert(0, block_of(it.wished, block, run))
    return strips


def _buys_as_much(it: ToPlan, made: FabricCut, bound: Fraction) -> bool:
    """Whether a plan as short as the bound would save nothing in the shop."""
    plan = made.plan
    basket = Basket(it.wanted.fabric, plan.buy.lines, plan.strips, plan.sheets, made.letters)
    return rounded(it.quilt, basket, plan.length) == rounded(it.quilt, basket, bound)


def _least(wished: Wishes, answer: Answer) -> Least:
    return Least(
        unit=wished.unit,
        width=answer.task.width,
        kinds=tuple(priced(kind) for kind in answer.task.kinds),
        prices=tuple(one.kinds for one in answer.prices),
        blocks=tuple(one.block for one in answer.prices),
        bound=answer.by_prices,
        tried=answer.bound > answer.by_prices,
        highest=answer.task.highest,
    )
