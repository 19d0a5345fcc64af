"""The batting: its least size, the smallest packaged size that holds it, or lengths off a roll."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from patternbook.cutting.backing import at_least, metres, sides_for, sides_over
from patternbook.cutting.backing_told import size_notices
from patternbook.cutting.finishing import Panels, Seams
from patternbook.cutting.records import BattingPlan
from patternbook.cutting.told import Told, anywhere, long, number, sized, spare_severity, typed
from patternbook.inch import INCHES_A_CENTIMETRE, step_up
from patternbook.notice import Notice
from patternbook.quilt.records import Batting, CutSize, Quilt

# Packaged sizes in inches, craft to king (trade facts 8.1), the smallest first.
PACKAGED: Final = ((36, 45), (45, 60), (72, 90), (81, 96), (90, 108), (120, 120))


def batting_plan(quilt: Quilt) -> BattingPlan | None:
    """The batting as it is bought; None where the quilt has none or no size."""
    batting = quilt.batting
    if batting is None or quilt.finished is None:
        return None
    least = sides_over(quilt, batting.over)
    size = at_least(least, _turned_to(batting.stated_size, least))
    if batting.width:
        roll = off_the_roll(quilt, size, batting.width)
        return BattingPlan(
            batting.over, size, None, size != least, roll=roll, roll_width=batting.width
        )
    packs = 1
    pack = packaged(quilt, size)
    if pack is None:
        packs, pack = 2, two_packages(quilt, size)
    return BattingPlan(batting.over, size, pack, size != least, packs if pack else 1)


def off_the_roll(quilt: Quilt, size: CutSize, width: Fraction) -> Panels:
    """Lengths off a roll so wide, laid edge to edge with nothing lost between them: in one piece
    if it can be, else with the least batting, then the fewest joins."""
    ways = [_lengths(quilt, size, width, seams) for seams in ("crosswise", "lengthwise")]
    return min(ways, key=lambda way: (way.panels > 1, way.length, way.panels, way.seams))


def _lengths(quilt: Quilt, size: CutSize, width: Fraction, seams: Seams) -> Panels:
    covered, each = sides_for(size, seams)
    number = int(-(-covered // width))
    step = quilt.settings.yard_step if quilt.system.unit == "in" else quilt.settings.metre_step
    stated = quilt.batting.stated_length if quilt.batting else None
    length = max(number * each, stated or Fraction(0))
    amount = step_up(length / quilt.system.bolt, step)
    made = number * width
    return Panels(
        seams, number, each, made, length, amount, metres(length, quilt), covered / number
    )


def two_packages(quilt: Quilt, size: CutSize) -> CutSize | None:
    """The smallest packaged size of which two, edge to edge, hold this one."""
    across, down = size.across, size.down or Fraction(0)
    for pack in _packages(quilt):
        for wide, high in (pack, pack[::-1]):
            if (2 * wide >= across and high >= down) or (wide >= across and 2 * high >= down):
                return CutSize(*pack)
    return None


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
    needed = sorted((size.across, size.down or Fraction(0)))
    for pack in _packages(quilt):
        if all(need <= have for need, have in zip(needed, pack, strict=True)):
            return CutSize(*pack)
    return None


def _packages(quilt: Quilt) -> Iterator[tuple[Fraction, Fraction]]:
    """The packaged sizes in the pattern's own unit."""
    scale = 1 if quilt.system.unit == "in" else 1 / INCHES_A_CENTIMETRE
    for across, down in PACKAGED:
        yield Fraction(across * scale), Fraction(down * scale)


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
    if plan.roll is not None:
        yield from _roll(quilt, quilt.batting, plan.roll)
        return
    if "length" in quilt.batting.places:
        message = "batting: `length` is of batting off a roll, and no `width` of one is stated."
        stated_at = quilt.batting.places["length"]
        yield Told("batting-no-roll", "R15", stated_at, None, "State its `width`.").notice(
            quilt, "warning", message
        )
    if plan.pack is None or plan.packs > 1:
        two = f", or join two of {sized(plan.pack, quilt.system)} edge to edge" if plan.pack else ""
        message = (
            f"batting: no packaged size holds {sized(plan.size, quilt.system)}. Buy it off a roll "
            f"(`width`){two}."
        )
        at = anywhere(quilt, quilt.batting.places)
        yield Told("batting-joined", "R15", None, at).notice(quilt, "advice", message)


def _roll(quilt: Quilt, batting: Batting, roll: Panels) -> Iterator[Notice]:
    """A stated length against the sum, and a roll too narrow for one piece."""
    system, needed = quilt.system, roll.panels * roll.each
    sums = f"{roll.panels} × {number(roll.each, system)} = {long(needed, system)}"
    stated = batting.stated_length
    if stated is not None and stated != needed:
        figures = typed(stated, system), typed(needed, system)
        at = batting.places.get("length")
        said = f"batting: {sums} off a roll {long(batting.width or Fraction(0), system)} wide"
        if stated < needed:
            message = f"{said}; {long(stated, system)} is short by {long(needed - stated, system)}."
            yield Told("batting-short", "R15", at).notice(
                quilt, "error", message, *figures, mend=True
            )
        else:
            message = f"{said}; {long(stated, system)} is stated and kept."
            yield Told("spare-batting", "R15", at).notice(
                quilt, spare_severity(stated, needed), message, *figures
            )
    if roll.panels > 1:
        roll_width = long(batting.width or Fraction(0), system)
        message = (
            f"batting: a roll {roll_width} wide does not hold it in one piece: {sums}, joined edge "
            "to edge."
        )
        yield Told("batting-joined", "R15", None, batting.places.get("width")).notice(
            quilt, "advice", message
        )
