"""That no plan of its style takes less cloth: proven once more from the prices alone, at which no
strip may be worth more than it is wide."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from patternbook.cutting.records import BINDING, FabricPlan, Least, Strip
from patternbook.inch import step_up
from patternbook.notice import Notice
from patternbook.proof.cloth import before_washing
from patternbook.proof.evidence import Evidence
from patternbook.proof.fits import BOLTS
from patternbook.proof.proven import proven
from patternbook.proof.recounted import recounted, shown
from patternbook.proof.worth import Manner
from patternbook.quilt.records import Quilt


def least(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a bound is not proven, or where bound, plan and purchase disagree."""
    for plan in evidence.cutting.fabrics.values():
        yield from _agrees(evidence.quilt, plan)
        yield from _otherwise(evidence.quilt, plan)
        for way in (plan, *plan.other_ways):
            if way.least is not None and way.style != "plain":
                yield from _covers(evidence.quilt, way, way.least)
                yield from _re_proven(evidence.quilt, way, way.least, way.style)


def _agrees(quilt: Quilt, plan: FabricPlan) -> Iterator[Notice]:
    """A bound above the plan, or a plan called least that buys more than the bound would."""
    if plan.bound > plan.length or (plan.number_bound or 0) > (plan.buy.number or 0):
        yield _wrong(quilt, plan, "bound-told", "no plan is shorter than its own bound")
        return
    if plan.style == "plain":
        return
    same = plan.number_bound in (None, plan.buy.number)
    if plan.form in BOLTS:
        same = _bought(quilt, plan.length) == _bought(quilt, plan.bound)
    if plan.proven != same:
        said = "is called the least, and the bound buys less" if plan.proven else (
            "is not called the least, though the bound buys no less"
        )  # fmt: skip
        yield _wrong(quilt, plan, "bound-told", f"{shown(plan.length, quilt)} of cloth {said}")
    if not (plan.proven or plan.limit_hit):
        yield _wrong(quilt, plan, "bound-told", "neither the least, nor said to be unsettled")
    least = min((plan.length, *(way.bound for way in plan.other_ways)))
    if plan.least is None and (plan.bound != least or plan.number_bound is not None):
        yield _wrong(quilt, plan, "bound-told", "a bound is told, and no prices prove it")


def _otherwise(quilt: Quilt, plan: FabricPlan) -> Iterator[Notice]:
    """Long pieces across the cloth or along it: the bound holds for both, and they lie along it
    only where that takes less."""
    for way in plan.other_ways:
        if plan.bound > way.bound:
            why = f"lying otherwise its pieces may take as little as {shown(way.bound, quilt)}"
            yield _wrong(quilt, plan, "bound-high", why)
        if _bought(quilt, way.length) < _bought(quilt, plan.length):
            why = f"lying otherwise its pieces take {shown(way.length, quilt)}, and less is bought"
            yield _wrong(quilt, plan, "bound-told", why)
        if _along(way) < _along(plan) and way.length <= plan.length:
            why = f"pieces lie along the cloth, and across it take {shown(way.length, quilt)}"
            yield _wrong(quilt, plan, "bound-told", why)


def _along(plan: FabricPlan) -> set[str]:
    """The letters that lie along the cloth."""
    strips = (strip for strip in plan.strips if strip.along == "length")
    return {letter for strip in strips for letter in strip.letters}


def rests_on_trying(quilt: Quilt, plan: FabricPlan) -> bool:
    """Whether what is claimed of a plan in this style is more than the prices alone show: that
    nothing less need be bought, or, of an unsettled one, its bound."""
    return any(_rests(quilt, plan, way) for way in (plan, *plan.other_ways))


def _rests(quilt: Quilt, plan: FabricPlan, way: FabricPlan) -> bool:
    """Whether the prices alone do not show that cutting it in that way buys no less."""
    if way.least is None or not way.least.tried:
        return False
    if not plan.proven:
        return True
    fixed, least = _planned_as_plain(quilt, way), way.least
    if least.down is not None:
        return least.bound + _times(fixed) < (plan.buy.number or 0)
    by_prices = least.bound * least.unit + sum((one.cloth for one in fixed), Fraction(0))
    return _bought(quilt, by_prices) < _bought(quilt, plan.length)


def _bought(quilt: Quilt, length: Fraction) -> Fraction:
    settings = quilt.settings
    step = settings.yard_step if quilt.system.unit == "in" else settings.metre_step
    return step_up(before_washing(quilt, length + settings.spare) / quilt.system.bolt, step)


def _wrong(quilt: Quilt, plan: FabricPlan, code: str, why: str) -> Notice:
    fabric = quilt.fabrics.get(plan.fabric)
    message = (
        f"{plan.fabric}: {why} (length {shown(plan.length, quilt)}, bound "
        f"{shown(plan.bound, quilt)})."
    )
    return recounted(quilt, code, "R4", message, fabric.place if fabric else None)


def _fixed(quilt: Quilt, plan: FabricPlan) -> set[str]:
    """Letters that are cut as in plain cutting whatever the style: those that are joined, and all
    that share their strips; and the binding."""
    fixed = {BINDING}
    for strip in plan.strips:
        fixed.update(strip.letters if strip.join else ())
    hosts = {letter: piece.host or letter for letter, piece in quilt.pieces.items()}
    with_them = {hosts.get(letter, letter) for letter in fixed}
    return fixed | {letter for letter, host in hosts.items() if host in with_them}


def _free(quilt: Quilt, plan: FabricPlan) -> list[Strip]:
    """The strips that another plan of this style could cut otherwise."""
    fixed = _fixed(quilt, plan)
    return [
        strip
        for strip in plan.strips
        if strip.cuts and not strip.cuts[0].whole and not fixed & set(strip.letters)
    ]


def _planned_as_plain(quilt: Quilt, plan: FabricPlan) -> list[Strip]:
    free = {id(strip) for strip in _free(quilt, plan)}
    return [strip for strip in plan.strips if id(strip) not in free]


def _covers(quilt: Quilt, plan: FabricPlan, proof: Least) -> Iterator[Notice]:
    """The pieces that are priced are those that lie on the strips, so many of each size; and what
    may be turned is priced as such."""
    laid: Counter[tuple[Fraction, ...]] = Counter()
    for strip in _free(quilt, plan):
        for one in (one for cut in strip.cuts for one in cut.stacked):
            if strip.along == "width":
                laid[_size(one.along, one.across)] += one.number * strip.times
    priced: Counter[tuple[Fraction, ...]] = Counter()
    for _, along, across, number, *_ in proof.kinds:
        priced[_size(along * proof.unit, across * proof.unit)] += number
    if laid != priced:
        differ = sorted((laid - priced) + (priced - laid))
        at = " and ".join(" × ".join(shown(side, quilt) for side in size) for size in differ)
        yield _wrong(quilt, plan, "bound-prices", f"other pieces {at} are priced than are cut")
    fabric = quilt.fabrics.get(plan.fabric)
    cloth = {plan.width} if proof.down is None else _sheet(plan)
    if proof.unit * proof.width not in cloth or (proof.down or 0) * proof.unit not in {0, *cloth}:
        yield _wrong(quilt, plan, "bound-prices", "prices for cloth of another width")
    loose = not (fabric and fabric.one_way)
    for name, _, _, _, turns, own_width in proof.kinds:
        if loose and not turns and not own_width:
            yield _wrong(quilt, plan, "bound-prices", f"kind {name} could be turned")


def _sheet(plan: FabricPlan) -> set[Fraction]:
    """The sides of the pre-cut pieces that the plan is cut from."""
    sheets = {side for sheet in plan.sheets for side in (sheet.across, sheet.down)}
    return sheets or {side for strip in plan.strips for side in (strip.length, strip.width)}


def _size(*sides: Fraction) -> tuple[Fraction, ...]:
    return tuple(sorted(sides))


def _re_proven(quilt: Quilt, plan: FabricPlan, proof: Least, manner: Manner) -> Iterator[Notice]:
    """The prices prove what they are said to, and the printed bound is no more than that and the
    strips that are cut as in plain cutting."""
    again = proven(proof, manner)
    if again.fault:
        yield _wrong(quilt, plan, "bound-prices", again.fault)
        return
    if proof.bound > again.bound:
        why = f"the prices are said to prove {proof.bound}, and prove {again.bound}"
        yield _wrong(quilt, plan, "bound-high", f"{why}, in units of {shown(proof.unit, quilt)}")
    fixed = _planned_as_plain(quilt, plan)
    if proof.down is None:
        above = plan.bound - sum((one.cloth for one in fixed), Fraction(0))
        above -= proof.bound * proof.unit
    else:
        above = Fraction((plan.number_bound or 0) - _times(fixed) - proof.bound)
    if above > 0 and not proof.tried:
        why = f"the bound is {shown(above, quilt)} above what is proven, and not said to be tried"
        yield _wrong(quilt, plan, "bound-high", why)


def _times(strips: Sequence[Strip]) -> int:
    return sum(strip.times for strip in strips)
