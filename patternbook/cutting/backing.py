"""The backing: its size, the panels it is seamed from, and the cheaper direction of the seams."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from patternbook.cutting.cloth import cloth_named
from patternbook.cutting.records import BackingFor, BackingPlan, Panels, Seams
from patternbook.cutting.told import (
    Told,
    long,
    number,
    resized,
    sized,
    spare_severity,
    times,
    typed_size,
)
from patternbook.inch import INCHES_A_CENTIMETRE, System, ruler_up, step_up
from patternbook.notice import Edit, Notice, Place
from patternbook.quilt.records import Backing, CutSize, Quilt

# Over on each side: at home 3 in (trade facts 7.2), on a frame 4 in (7.1); 7.5 and 10 cm.
HOME: Final = {"in": Fraction(3), "cm": Fraction(15, 2)}
FRAME: Final = {"in": Fraction(4), "cm": Fraction(10)}


def backing_plan(quilt: Quilt) -> BackingPlan | None:
    """The backing as it is made; None where there is none, or neither it nor the quilt has a
    size. In a fragment without a quilt the stated size is what must be covered."""
    backing = quilt.backing
    if backing is None or (quilt.finished is None and backing.stated_size is None):
        return None
    width = cloth_named(quilt, backing.fabric).width if backing.fabric else quilt.width
    least = sides_over(quilt, backing.over)
    size = at_least(least, backing.stated_size)
    if _too_narrow(quilt, width):
        return None
    best, other = _chosen(quilt, backing, size, width)
    fewest, _ = _chosen(quilt, replace(backing, stated_panels=None), size, width)
    unit = quilt.system.unit
    return BackingPlan(
        backing.fabric,
        backing.over,
        size,
        width,
        quilt.settings.backing_seam,
        best,
        other,
        _made_for(quilt, HOME[unit], width),
        _made_for(quilt, FRAME[unit], width),
        quilt.system.bolt_unit,
        size != least and quilt.finished is not None,
        fewest if fewest.panels < best.panels else None,
    )


def sides_over(quilt: Quilt, over: Fraction) -> CutSize:
    """The quilt's size with so much more on each side, on the ruler's marks."""
    if quilt.finished is None:
        return CutSize(Fraction(0), Fraction(0))
    across, down = (ruler_up(side + 2 * over, quilt.system) for side in quilt.finished)
    return CutSize(across, down)


def at_least(least: CutSize, stated: CutSize | None) -> CutSize:
    """What is made: the needed size, or a larger one that she states."""
    if stated is None or stated.down is None or least.down is None:
        return least
    return CutSize(max(least.across, stated.across), max(least.down, stated.down))


def metres(length: Fraction, quilt: Quilt) -> Fraction:
    """A length of cloth in metres, rounded up to the step that metres are sold by."""
    centimetres = length if quilt.system.unit == "cm" else length / INCHES_A_CENTIMETRE
    return step_up(centimetres / 100, quilt.settings.metre_step)


def panels(quilt: Quilt, size: CutSize, width: Fraction, seams: Seams, least: int = 1) -> Panels:
    """The backing from lengths of cloth `width` wide, at least so many of them."""
    across, down = size.across, size.down or Fraction(0)
    covered, each = (across, down) if seams == "lengthwise" else (down, across)
    seam = 2 * quilt.settings.backing_seam
    number_of = least
    if covered > width:
        number_of = max(least, int(-(-(covered - seam) // (width - seam))))
    length = number_of * each
    step = quilt.settings.backing_step
    if number_of == 1 and quilt.system.unit == "in":  # one length, bought as any other cloth
        step = min(step, quilt.settings.yard_step)
    amount = step_up(length / quilt.system.bolt, step)
    made = number_of * width - (number_of - 1) * seam
    least_width = (covered + (number_of - 1) * seam) / number_of
    return Panels(seams, number_of, each, made, length, amount, metres(length, quilt), least_width)


def _chosen(
    quilt: Quilt, backing: Backing, size: CutSize, width: Fraction
) -> tuple[Panels, Panels]:
    """As she says, else without a seam where one width covers it, else the cheaper; crosswise
    where both cost the same (trade facts 7.4)."""
    ways = [panels(quilt, size, width, seams) for seams in ("crosswise", "lengthwise")]
    ways.sort(key=lambda way: (way.panels > 1, way.amount, way.panels, way.seams))
    if backing.seams:
        ways.sort(key=lambda way: way.seams != backing.seams)
    elif backing.stated_panels:
        ways.sort(key=lambda way: way.panels > (backing.stated_panels or 0))
    best, other = ways
    if backing.stated_panels and backing.stated_panels > best.panels:
        best = panels(quilt, size, width, best.seams, backing.stated_panels)
    return best, other


def _made_for(quilt: Quilt, over: Fraction, width: Fraction) -> BackingFor:
    size = sides_over(quilt, over)
    best, _ = _chosen(quilt, Backing(over=over), size, width)
    return BackingFor(over, size, best)


def _too_narrow(quilt: Quilt, width: Fraction) -> bool:
    """Whether the seams would take all that a further panel brings."""
    return width <= 2 * quilt.settings.backing_seam


def backing_notices(quilt: Quilt, plan: BackingPlan | None) -> Iterator[Notice]:
    """The stated size and panels against what the quilt needs."""
    if quilt.backing is None:
        return
    if plan is None:
        yield from _narrow(quilt, quilt.backing)
        return
    stated = quilt.backing.stated_size
    if stated:
        about = Told("backing-short", "R15", quilt.backing.places.get("size"))
        yield from size_notices(quilt, about, "backing", stated, plan.over)
    yield from _panels(quilt, quilt.backing, plan)


def _narrow(quilt: Quilt, backing: Backing) -> Iterator[Notice]:
    if quilt.finished is None:
        return
    cloth = cloth_named(quilt, backing.fabric) if backing.fabric else None
    width = cloth.width if cloth else quilt.width
    message = (
        f"backing: the cloth is {long(width, quilt.system)} wide, and a seam takes "
        f"{long(2 * quilt.settings.backing_seam, quilt.system)}: no number of panels covers it."
    )
    at = cloth.key_places.get("width") if cloth else None
    about = Told("backing-narrow", "R15", at, backing.places.get("fabric"), "Take wider cloth.")
    yield about.notice(quilt, "error", message)


def size_notices(
    quilt: Quilt, about: Told, what: str, stated: CutSize, over: Fraction
) -> Iterator[Notice]:
    """A stated backing or batting size: at least the quilt with `over` on each side."""
    least, system = sides_over(quilt, over), quilt.system
    if stated.down is None or least.down is None or quilt.finished is None or stated == least:
        return
    figures = (typed_size(stated, system), typed_size(least, system))
    reckoned = f"{what}: {_sum(quilt, over)} needs {sized(least, system)}"
    if stated.across < least.across or stated.down < least.down:
        short = [
            f"{way} by {long(need - have, system)}"
            for way, need, have in (
                ("in width", least.across, stated.across),
                ("in length", least.down, stated.down),
            )
            if have < need
        ]
        message = f"{reckoned}; {sized(stated, system)} is short {' and '.join(short)}."
        hint = f"State {sized(least, system)}, or a smaller `over`."
        about = Told(about.code, about.rule, about.stated_at, about.place, hint)
        told = about.notice(quilt, "error", message, *figures)
        yield replace(told, edits=tuple(_larger(quilt, about.stated_at, stated, over)))
        return
    area, needed = stated.across * stated.down, least.across * least.down
    about = Told(f"spare-{what}", about.rule, about.stated_at, about.place)
    message = f"{reckoned}; {sized(stated, system)} is stated and kept."
    yield about.notice(quilt, spare_severity(area, needed), message, *figures)


def _larger(quilt: Quilt, at: Place | None, stated: CutSize, over: Fraction) -> Iterator[Edit]:
    """The size that is needed round the quilt as it finishes, or round the raw edges of its top;
    typed the way the stated one is."""
    for more in (Fraction(0), quilt.seam):
        for edit in resized(at, stated, sides_over(quilt, over + more), quilt.system):
            yield replace(edit, sure=not more)


def _sum(quilt: Quilt, over: Fraction) -> str:
    system: System = quilt.system
    if quilt.finished is None:
        return ""
    sides = CutSize(*(ruler_up(side, system) for side in quilt.finished))
    return f"a quilt {sized(sides, system)} with {long(over, system)} more on each side"


def _panels(quilt: Quilt, backing: Backing, plan: BackingPlan) -> Iterator[Notice]:
    stated = backing.stated_panels
    if stated is None:
        return
    best = plan.fewest or panels(quilt, plan.size, plan.cloth_width, plan.best.seams)
    system = quilt.system
    covered = plan.size.across if best.seams == "lengthwise" else plan.size.down or Fraction(0)
    seam = 2 * plan.seam
    made = stated * plan.cloth_width - (stated - 1) * seam
    sum_of = f"{stated} × {number(plan.cloth_width, system)}"
    if stated > 1:
        sum_of += f" − {stated - 1} × {number(seam, system)}"
    sum_of += f" = {long(made, system)}"
    figures = (str(stated), str(best.panels))
    at = backing.places.get("panels")
    if stated < best.panels:
        message = (
            f"backing: {sum_of}, short by {long(covered - made, system)} of "
            f"{long(covered, system)}; {times(best.panels, 'panel')} are needed."
        )
        yield Told("panels-short", "R15", at).notice(quilt, "error", message, *figures, mend=True)
    elif stated > best.panels:
        message = f"backing: {times(best.panels, 'panel')} would do; {sum_of} are made as stated."
        yield Told("spare-panels", "R15", at).notice(
            quilt, spare_severity(stated, best.panels), message, *figures, mend=True
        )
