"""The batting: its least size, and the smallest packaged size that holds it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from patternbook.cutting.backing import at_least, sides_over, size_notices
from patternbook.cutting.records import BattingPlan
from patternbook.cutting.told import Told, anywhere, sized
from patternbook.inch import INCHES_A_CENTIMETRE
from patternbook.notice import Notice
from patternbook.quilt.records import CutSize, Quilt

# Packaged sizes in inches, craft to king (trade facts 8.1), the smallest first.
PACKAGED: Final = ((36, 45), (45, 60), (72, 90), (81, 96), (90, 108), (120, 120))


def batting_plan(quilt: Quilt) -> BattingPlan | None:
    """The batting as it is bought; None where the quilt has none or no size."""
    batting = quilt.batting
    if batting is None or quilt.finished is None:
        return None
    least = sides_over(quilt, batting.over)
    size = at_least(least, _turned_to(batting.stated_size, least))
    return BattingPlan(batting.over, size, packaged(quilt, size), size != least)


def _turned_to(stated: CutSize | None, least: CutSize) -> CutSize | None:
    """Batting has no direction: it is turned where it fits only so."""
    if stated is None or stated.down is None or least.down is None:
        return stated
    if stated.across < least.across or stated.down < least.down:
        turned = CutSize(stated.down, stated.across)
        if turned.across >= least.across and stated.across >= least.down:
            return turned
    return stated


def packaged(quilt: Quilt, size: CutSize) -> CutSize | None:
    """The smallest packaged size that holds this one, either way round, as it is sold."""
    scale = 1 if quilt.system.unit == "in" else 1 / INCHES_A_CENTIMETRE
    needed = sorted((size.across, size.down or Fraction(0)))
    for pack in PACKAGED:
        sides = [side * scale for side in pack]
        if all(need <= have for need, have in zip(needed, sides, strict=True)):
            return CutSize(Fraction(sides[0]), Fraction(sides[1]))
    return None


def batting_notices(quilt: Quilt, plan: BattingPlan) -> Iterator[Notice]:
    """The stated size against what the quilt needs, and a size that no package holds."""
    if quilt.batting is None:
        return
    least = sides_over(quilt, plan.over)
    stated = _turned_to(quilt.batting.stated_size, least)
    pack = packaged(quilt, least)
    if stated and stated != _turned_to(pack, least):
        about = Told("batting-short", "R15", quilt.batting.places.get("size"))
        yield from size_notices(quilt, about, "batting", stated, plan.over)
    if plan.pack is None:
        message = (
            f"batting: no packaged size holds {sized(plan.size, quilt.system)}. Buy it by the "
            "width, or join two pieces edge to edge."
        )
        at = anywhere(quilt, quilt.batting.places)
        yield Told("batting-joined", "R15", None, at).notice(quilt, "advice", message)
