"""Cloth only a little wider than the plan needs it (rule R5)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from patternbook.cutting.records import FabricPlan, Strip
from patternbook.forms import by_length
from patternbook.inch import length, printed, ruler_up
from patternbook.notice import Notice
from patternbook.proof.advice.told import advised
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown

# Common practice, no source: how much cloth sold under one width differs, selvedges off.
NARROWER: Final = {"in": Fraction(1), "cm": Fraction(5, 2)}


def least_width(sizes: Sequence[Evidence]) -> Iterator[Notice]:
    """Of all fabrics the narrowest at which the plan still holds; an exact fit is told as one."""
    found = {one.quilt.size: words for one in sizes if (words := _told(one))}
    place = next((one.quilt.key_places.get("width", one.quilt.place) for one in sizes), None)
    yield from advised(
        "least-width",
        "R5",
        found,
        place,
        "The plan holds down to a usable width of:",
        hint="Measure the cloth, without its selvedges, before the first cut.",
    )
    for one in sizes:
        yield from _differs(one)


def _told(one: Evidence) -> str | None:
    system, parts = one.quilt.system, []
    for name, plan in one.cutting.fabrics.items():
        needed = _needed(plan)
        if not by_length(plan.form) or needed is None:
            continue
        least = ruler_up(needed, system)
        if 0 < plan.width - least < NARROWER[system.unit]:
            decimals = system.unit == "cm"
            spare = length(plan.width - least, system)
            sum_ = f"{printed(plan.width, decimals)} − {printed(least, decimals)} = {spare} spare"
            parts.append(f"{name or 'the fabric'} {length(least, system)} ({sum_})")
    return ", ".join(parts) or None


def _needed(plan: FabricPlan) -> Fraction | None:
    """What the strips' own cuts take of the width; the plan's figure for it is not read."""
    return max((_taken(strip) for strip in plan.strips if strip.cuts), default=None)


def _taken(strip: Strip) -> Fraction:
    """The cuts one behind the other; of joined strips the share of each, and what its join eats."""
    behind = (-(-cut.number // cut.lanes) * cut.along for cut in strip.cuts)
    taken = sum(behind, Fraction(0))
    if strip.join is None:
        return taken
    return (taken + (strip.times - 1) * strip.join.loss) / strip.times


def _differs(one: Evidence) -> Iterator[Notice]:
    """Our own fault, where the plan (and so the booklet) names another width."""
    quilt = one.quilt
    for name, plan in one.cutting.fabrics.items():
        needed = _needed(plan)
        if needed != plan.least_width:
            ours, theirs = (
                "none" if width is None else shown(width, quilt)
                for width in (needed, plan.least_width)
            )
            message = (
                f"{name or 'the fabric'}: the strips' own cuts need a width of {ours}, the plan "
                f"says that it holds down to {theirs}."
            )
            fabric = quilt.fabrics.get(name)
            place = fabric.place if fabric else quilt.place
            yield recounted(quilt, "least-width-differs", "R5", message, place)
