"""Lengths of what is bought, and of backing, batting and binding."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.cutting.records import FabricPlan, WebPlan
from patternbook.proof.evidence import Evidence
from patternbook.proof.prose.fact_lengths import Length, length


def of_finishing(known: Evidence) -> Iterator[Length]:
    """Backing, batting and binding, then every cloth as it is bought."""
    plan, quilt = known.cutting, known.quilt
    if backing := plan.backing:
        yield length("backing", "cut", *backing.size)
        yield length("backing", "other", backing.over, backing.cloth_width, backing.seam)
        if insert := backing.best.insert:
            yield length("backing", "cut", insert.width, *(one.along for one in insert.patches))
            yield length("backing", "other", insert.length, insert.made, insert.split)
        for way in (backing.best, backing.other, backing.home.best, backing.frame.best):
            yield length("backing", "length", way.each)
            yield length("backing", "other", way.made, way.length, way.least_width)
        yield length("backing", "bought", backing.best.amount)
        yield length("backing", "metres", backing.best.metres)
        yield length("backing", "cut", *backing.home.size)
        yield length("backing", "cut", *backing.frame.size)
    if batting := plan.batting:
        yield length("batting", "cut", *batting.size)
        yield length("batting", "other", batting.over, *(batting.pack or ()))
        if roll := batting.roll:
            yield length("batting", "length", roll.each)
            yield length("batting", "other", roll.length, batting.roll_width)
            yield length("batting", "bought", roll.amount)
            yield length("batting", "metres", roll.metres)
    if quilt.batting and quilt.batting.limit:
        yield length("batting", "other", quilt.batting.limit)
    if binding := plan.binding:
        yield length("binding", "cut", binding.cut)
        yield length("binding", "other", binding.cut / 2)  # folded in half
        yield length("binding", "length", binding.length)
        yield length("binding", "other", binding.perimeter, binding.made, binding.strip_length)
        yield length("binding", "other", binding.loss, binding.strips * binding.cut, binding.square)
        yield length("binding", "other", binding.radius, binding.overlap, binding.left)
        if binding.radius:
            yield length("binding", "other", 2 * binding.radius)
    if label := plan.label:
        yield length("label", "cut", *label.cut)
        yield length("label", "other", *label.finished)
    yield from _bought(known)


def _bought(known: Evidence) -> Iterator[Length]:
    plans: tuple[FabricPlan | WebPlan, ...] = (
        *known.cutting.fabrics.values(),
        *known.cutting.webs.values(),
    )
    for cloth in plans:
        name = cloth.fabric
        buy = cloth.buy
        if buy.amount is not None:
            yield length(name, "bought", buy.amount)
        yield length(name, "metres", buy.metres)
        yield length(name, "bought", buy.each_print)
        yield length(name, "other", buy.needed, buy.spare, cloth.length, cloth.width)
        for line in buy.lines:
            yield length(name, "other", line.width, line.length)
    for fabric in known.quilt.fabrics.values():
        yield length(fabric.name, "bought", fabric.stated_yards)
        yield length(fabric.name, "metres", fabric.stated_metres)
