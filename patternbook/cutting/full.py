"""One fabric in full: the style asked for, proven, and what the others would buy."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from patternbook.cutting.buying import Basket, rounded
from patternbook.cutting.either_way import Way, best_way
from patternbook.cutting.fabric import FabricCut, Wanted, cut_fabric
from patternbook.cutting.instead import substitutes
from patternbook.cutting.lengthwise_told import lengthwise_notices
from patternbook.cutting.narrower import narrower
from patternbook.cutting.one_way import one_way
from patternbook.cutting.planned import planned
from patternbook.cutting.records import OtherStyle, Style
from patternbook.cutting.styles_told import style_notices
from patternbook.quilt.records import Quilt

STYLES: Final[tuple[Style, ...]] = ("plain", "shared", "thrifty")


def in_full(quilt: Quilt, wanted: Wanted, plain: FabricCut) -> FabricCut:
    """The fabric in the style that the settings ask for, beside what the others take."""
    ways = {style: best_way(quilt, wanted, plain, style) for style in STYLES}
    best = ways.pop(quilt.settings.cutting)
    wanted, chosen = best.wanted, best.cut
    others = tuple(_other(quilt, style, way) for style, way in ways.items())
    plan = replace(
        chosen.plan,
        others=others,
        instead=substitutes(quilt, wanted, chosen.plan),
        narrower=narrower(quilt, wanted, chosen.plan),
        one_way=one_way(quilt, wanted, chosen.plan),
    )

    def cut(other: Wanted) -> FabricCut:
        return planned(quilt, other, cut_fabric(quilt, other), quilt.settings.cutting)

    told = (
        *chosen.of_purchase,
        *style_notices(quilt, plan),
        *lengthwise_notices(quilt, wanted, chosen, cut),
    )
    return replace(chosen, plan=plan, of_purchase=told)


def _other(quilt: Quilt, style: Style, way: Way) -> OtherStyle:
    plan = way.cut.plan
    fabric, backing = way.wanted.fabric, way.wanted.backing
    basket = Basket(fabric, plan.buy.lines, plan.strips, plan.sheets, way.cut.letters, backing)
    amount = rounded(quilt, basket, plan.length) if plan.buy.amount is not None else None
    proven = plan.proven and plan.style == style  # where it stays plain nothing was shown
    return OtherStyle(style, plan.length, plan.bound, amount, plan.buy.number, proven)
