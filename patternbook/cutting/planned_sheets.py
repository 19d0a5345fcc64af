"""Pre-cut strips, squares, quarters and panels in shared and thrifty cutting: as few as can be."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from patternbook.cutting.cloth import form_of
from patternbook.cutting.fabric import FabricCut
from patternbook.cutting.laid_out import ToPlan, owned, priced, strip_of
from patternbook.cutting.planner.records import SheetsAnswer, SheetsTask
from patternbook.cutting.planner.sheets import solve_sheets
from patternbook.cutting.records import Least, Row, Sheet, Strip
from patternbook.cutting.wishes import Wishes, kinds


def from_sheets(it: ToPlan) -> FabricCut:
    """Fewer pre-cuts; the plain plan where whole strips of squares or quarters are sewn too."""
    cloth, rolls = it.plain.laid.cloth, form_of(it.wanted.fabric).strips
    across, down = cloth.run, cloth.roll if rolls else cloth.deep
    if down is None or (it.wished.fixed and not rolls):
        return it.plain
    if cloth.turned:
        across, down = down, across
    whole, asked = it.wished.whole, tuple(kinds(it.plain.laid, it.wished, lengthwise=False))
    answer = solve_sheets(SheetsTask(whole(across), whole(down), asked))
    made = _rolls(it, answer) if rolls else _squares(it, answer)
    if made is None:
        return it.plain
    fixed = sum(strip.times for _, strip in it.wished.fixed)
    return _bounded(it, made, answer, fixed)


def _bounded(it: ToPlan, made: FabricCut, answer: SheetsAnswer, more: int) -> FabricCut:
    """The plan with its bound, or the plain one where that takes no more pre-cuts."""
    number, bound = answer.number + more, answer.bound + more
    if (it.plain.plan.buy.number or 0) <= number:
        made, number = it.plain, it.plain.plan.buy.number or 0
    proven = bound >= number
    plan = replace(
        made.plan,
        style=it.style,
        number_bound=bound,
        proven=proven,
        limit_hit=answer.limit_hit and not proven,
        least=_least(it.wished, answer),
    )
    return replace(made, plan=plan)


def _rolls(it: ToPlan, answer: SheetsAnswer) -> FabricCut | None:
    """Strips of the roll: each is one piece of cloth, and holds one strip. None where one would
    hold more."""
    if any(len(sheet.strips) != 1 or sheet.turned for sheet in answer.sheets):
        return None
    cloth = it.plain.laid.cloth
    strips = [
        replace(
            strip_of(it.wished, sheet.strips[0], cloth.run, None),
            times=sheet.times,
            width=cloth.roll or Fraction(0),
        )
        for sheet in answer.sheets
    ]
    return it.assembled(it.spread(owned(strips)))


def _squares(it: ToPlan, answer: SheetsAnswer) -> FabricCut:
    """Squares, quarters and panels, each with its own strips."""
    strips: list[Strip] = []
    sheets: list[Sheet] = []
    unit = it.wished.unit
    across, down = answer.task.across * unit, answer.task.down * unit
    for sheet in answer.sheets:
        rows = []
        for laid in sheet.strips:
            rows.append(Row(len(strips), laid.times))
            strip = strip_of(it.wished, laid, down if sheet.turned else across, None)
            strips.append(replace(strip, times=laid.times * sheet.times))
        sheets.append(Sheet(across, down, sheet.times, tuple(rows), sheet.turned))
    owners = {place: letters for place, (letters, _) in enumerate(owned(strips))}
    laid_out = replace(
        it.plain.laid, strips=tuple(strips), owners=owners, sheets=tuple(sheets), binding=None
    )
    return it.assembled(laid_out)


def _least(wished: Wishes, answer: SheetsAnswer) -> Least:
    return Least(
        unit=wished.unit,
        width=answer.task.across,
        kinds=tuple(priced(kind) for kind in answer.task.kinds),
        prices=(answer.prices.kinds,),
        blocks=((0, 0),),
        bound=answer.prices.bound,
        tried=answer.bound > answer.prices.bound,
        down=answer.task.down,
    )
