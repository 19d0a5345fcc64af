"""What there is to tell of the backing: its size, its lengths of cloth, and how they are seamed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction

from patternbook.cutting.backing import in_one, panels, sides_for, sides_over
from patternbook.cutting.cloth import cloth_named
from patternbook.cutting.let_in import made_of, spares, strip, wishes
from patternbook.cutting.records import BackingPlan, FabricPlan
from patternbook.cutting.told import (
    Told,
    anywhere,
    long,
    number,
    resized,
    sized,
    spare_severity,
    times,
    typed,
    typed_size,
)
from patternbook.inch import System, plain, ruler_up
from patternbook.notice import Edit, Notice, Place
from patternbook.quilt.finishing import OVER_BY
from patternbook.quilt.records import Backing, CutSize, Quilt


def backing_notices(
    quilt: Quilt, plan: BackingPlan | None, fabrics: Mapping[str, FabricPlan]
) -> Iterator[Notice]:
    """The stated size, panels and choices against what the quilt needs."""
    if quilt.backing is None:
        return
    if plan is None:
        yield from _narrow(quilt, quilt.backing)
        return
    stated = quilt.backing.stated_size
    if stated:
        about = Told("backing-short", "R15", quilt.backing.places.get("size"))
        yield from size_notices(quilt, about, "backing", stated, plan.over)
    yield from _over(quilt, quilt.backing, plan)
    yield from _panels(quilt, quilt.backing, plan)
    yield from _wide(quilt, quilt.backing, plan)
    yield from _dearer(quilt, quilt.backing, plan)
    yield from _let_in(quilt, quilt.backing, plan, fabrics)


def _let_in(
    quilt: Quilt, backing: Backing, plan: BackingPlan, fabrics: Mapping[str, FabricPlan]
) -> Iterator[Notice]:
    """A strip of spare cloth that is asked for: none needed, none to be had, or too narrow."""
    if not backing.pieced:
        return
    at, system = backing.places.get("insert", backing.places.get("pieced")), quilt.system
    asked = list(wishes(quilt, plan))
    if plan.best.insert is not None:
        yield from _insert(quilt, backing, plan)
        return
    if not asked:
        lengths = times(plan.best.panels, "length")
        message = f"backing: no strip would save cloth; it is made of {lengths} without one."
        hint = "Leave `pieced` out."
        yield Told("strip-idle", "R15", at, None, hint).notice(quilt, "advice", message)
        return
    found, seam = spares(quilt, fabrics, plan.fabric), 2 * plan.seam
    nearest = max(asked, key=lambda wish: made_of(strip(wish, found, seam), seam) / wish.length)
    made = made_of(strip(nearest, found, seam), seam)
    message = (
        f"backing: a strip of spare cloth {long(nearest.width, system)} wide must be "
        f"{long(nearest.length, system)} long beside {times(nearest.panels, 'length')} of cloth; "
        f"what is to spare comes to {long(made, system)}. The backing is made without it."
    )
    hint = "Leave `pieced` out in this size, or ask for more of a fabric (`yards`)."
    yield Told("strip-short", "R15", at, None, hint).notice(quilt, "error", message)


def _insert(quilt: Quilt, backing: Backing, plan: BackingPlan) -> Iterator[Notice]:
    """The stated width of the strip against what the lengths of cloth leave open."""
    best, system, stated = plan.best, quilt.system, backing.stated_insert
    if stated is None or best.insert is None:
        return
    covered, _ = sides_for(plan.size, best.seams)
    seam = 2 * plan.seam
    need = ruler_up(covered - best.panels * plan.cloth_width + best.joins * seam, system)
    if stated < best.insert.width:
        message = (
            f"backing: {number(covered, system)} − {best.panels} × "
            f"{number(plan.cloth_width, system)} + {best.joins} × {number(seam, system)} = "
            f"{long(need, system)}, and the strip must show; cut {long(stated, system)} wide as "
            f"stated it is short by {long(best.insert.width - stated, system)}."
        )
        figures = typed(stated, system), typed(best.insert.width, system)
        yield Told("strip-narrow", "R15", backing.places.get("insert")).notice(
            quilt, "error", message, *figures, mend=True
        )


def _over(quilt: Quilt, backing: Backing, plan: BackingPlan) -> Iterator[Notice]:
    """What stands out, against what the way of quilting takes."""
    if backing.by is None or quilt.finished is None:
        return
    usual, system = OVER_BY[backing.by][quilt.system.unit], quilt.system
    if plan.over >= usual:
        return
    where = "on a frame" if backing.by == "frame" else "at home"
    message = (
        f"backing: quilted {where} it usually stands {long(usual, system)} over on each side, "
        f"{long(plan.over, system)} is stated and made."
    )
    at, by = backing.places.get("over"), backing.places.get("quilted-by")
    figures = typed(plan.over, system), typed(usual, system)
    yield Told("backing-over", "R15", at, by).notice(
        quilt, "warning" if backing.by == "frame" else "advice", message, *figures, mend=True
    )


def _wide(quilt: Quilt, backing: Backing, plan: BackingPlan) -> Iterator[Notice]:
    """Cloth that is sold wide for a back without a seam, and is not wide enough for this one."""
    if not plan.wide or in_one(plan.size, plan.cloth_width) or backing.stated_panels:
        return
    system, least = quilt.system, min(plan.size.across, plan.size.down or plan.size.across)
    message = (
        f"backing: {sized(plan.size, system)} does not go on to cloth "
        f"{long(plan.cloth_width, system)} wide, either way round: short by "
        f"{long(least - plan.cloth_width, system)}. It is joined from "
        f"{times(plan.best.panels, 'length')}."
    )
    cloth = cloth_named(quilt, backing.fabric)
    at = cloth.key_places.get("width")
    hint = f"Take cloth at least {long(least, system)} wide, or state `panels: {plan.best.panels}`."
    yield Told("wide-too-narrow", "R15", at, anywhere(quilt, backing.places), hint).notice(
        quilt, "warning", message, typed(plan.cloth_width, system), typed(least, system)
    )


def _dearer(quilt: Quilt, backing: Backing, plan: BackingPlan) -> Iterator[Notice]:
    """Seams in the stated direction, where the other one takes less cloth."""
    best, other = plan.best, plan.other
    if not backing.seams or backing.stated_panels or best.insert or best.amount <= other.amount:
        return
    unit, metric = plan.unit, plan.unit == "m"
    message = (
        f"backing: {_lengths(quilt, plan, best.seams)} with {best.seams} seams, "
        f"{plain(best.amount, metric)} {unit}; {_lengths(quilt, plan, other.seams)} with "
        f"{other.seams} ones, {plain(other.amount, metric)} {unit}. It is made as stated."
    )
    yield Told("backing-dearer", "R15", backing.places.get("seams")).notice(
        quilt, "advice", message, best.seams, other.seams
    )


def _lengths(quilt: Quilt, plan: BackingPlan, seams: str) -> str:
    """`2 × 78 = 156″`."""
    way = plan.best if plan.best.seams == seams else plan.other
    each, whole = number(way.each, quilt.system), long(way.length, quilt.system)
    return f"{way.panels} × {each} = {whole}"


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
    if stated is None or plan.best.insert is not None:
        return
    best = plan.fewest or panels(quilt, plan.size, plan.cloth_width, plan.best.seams)
    system = quilt.system
    covered, _ = sides_for(plan.size, best.seams)
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
