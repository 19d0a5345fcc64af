"""The backing: its size, the panels it is seamed from, and the cheaper direction of the seams."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Literal

from patternbook.cutting.cloth import cloth_named, form_of
from patternbook.cutting.records import BackingFor, BackingPlan, Panels, Seams
from patternbook.cutting.washing import before_washing
from patternbook.inch import INCHES_A_CENTIMETRE, ruler_up, step_up
from patternbook.quilt.finishing import OVER_BY
from patternbook.quilt.records import Backing, CutSize, Quilt


def backing_plan(quilt: Quilt) -> BackingPlan | None:
    """The backing as it is made; None where there is none, or neither it nor the quilt has a
    size. In a fragment without a quilt the stated size is what must be covered."""
    backing = quilt.backing
    if backing is None or (quilt.finished is None and backing.stated_size is None):
        return None
    cloth = cloth_named(quilt, backing.fabric) if backing.fabric else None
    width = cloth.width if cloth else quilt.width
    wide = cloth is not None and bool(form_of(cloth).widths)
    least = sides_over(quilt, backing.over)
    size = at_least(least, backing.stated_size)
    if _too_narrow(quilt, width):
        return None
    asked = replace(backing, seams=None) if wide and in_one(size, width) else backing
    best, other = _chosen(quilt, asked, size, width)
    fewest, _ = _chosen(quilt, replace(asked, stated_panels=None), size, width)
    free = replace(asked, stated_size=None, stated_panels=None)
    return BackingPlan(
        backing.fabric,
        backing.over,
        size,
        width,
        quilt.settings.backing_seam,
        best,
        other,
        _made_for(quilt, free, "home", width),
        _made_for(quilt, free, "frame", width),
        quilt.system.bolt_unit,
        size != least and quilt.finished is not None,
        fewest if fewest.panels < best.panels else None,
        wide=wide,
        by=backing.by,
    )


def in_one(size: CutSize, width: Fraction) -> bool:
    """Whether one length of the cloth covers it, either way round."""
    return min(size.across, size.down or size.across) <= width


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


def sides_for(size: CutSize, seams: Seams) -> tuple[Fraction, Fraction]:
    """What widths of cloth must cover, and how long each is, with the seams that way."""
    across, down = size.across, size.down or Fraction(0)
    return (across, down) if seams == "lengthwise" else (down, across)


def panels(quilt: Quilt, size: CutSize, width: Fraction, seams: Seams, least: int = 1) -> Panels:
    """The backing from lengths of cloth `width` wide, at least so many of them."""
    covered, each = sides_for(size, seams)
    seam = 2 * quilt.settings.backing_seam
    number_of = least
    if covered > width:
        number_of = max(least, int(-(-(covered - seam) // (width - seam))))
    length = number_of * each
    amount = sold_as(quilt, length, number_of)
    made = number_of * width - (number_of - 1) * seam
    least_width = (covered + (number_of - 1) * seam) / number_of
    in_metres = metres(before_washing(length, quilt), quilt)
    return Panels(seams, number_of, each, made, length, amount, in_metres, least_width)


def sold_as(quilt: Quilt, length: Fraction, number_of: int) -> Fraction:
    """What is bought of the backing's cloth, for so many lengths of it."""
    step = quilt.settings.backing_step
    if number_of == 1 and quilt.system.unit == "in":  # one length, bought as any other cloth
        step = min(step, quilt.settings.yard_step)
    return step_up(before_washing(length, quilt) / quilt.system.bolt, step)


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


def _made_for(
    quilt: Quilt, backing: Backing, by: Literal["home", "frame"], width: Fraction
) -> BackingFor:
    over = OVER_BY[by][quilt.system.unit]
    size = sides_over(quilt, over)
    best, _ = _chosen(quilt, replace(backing, over=over), size, width)
    return BackingFor(over, size, best)


def _too_narrow(quilt: Quilt, width: Fraction) -> bool:
    """Whether the seams would take all that a further panel brings."""
    return width <= 2 * quilt.settings.backing_seam
