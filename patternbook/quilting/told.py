"""What the author is told of a plan: where it leaves more open than the batting allows."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from shapely import Point

from patternbook import inch
from patternbook.notice import Mark, Notice
from patternbook.quilt.records import Quilt
from patternbook.quilting.records import Area, Filled, QuiltingPlan

# A gap is known to within a thousandth of an inch; what it is over the limit by no more, is not.
KNOWN: Final = 2e-3
FINE: Final = 10**6  # floats are read as fractions of no larger denominator


def told(plan: QuiltingPlan, quilt: Quilt) -> Iterator[Notice]:
    """An error where the packet states the limit, a warning where it is assumed."""
    limit, rules = plan.wishes.limit, plan.top.rules
    if plan.gap.high <= limit + KNOWN * rules.inch or plan.gap.high == float("inf"):
        return
    area, fill = _around(plan)
    source = "the batting's limit" if plan.wishes.limit_stated else "assumed, none is stated"
    open_, most = _up(plan.gap.high, quilt), inch.length(_fraction(limit), quilt.system)
    yield Notice(
        "quilting-gap",
        "error" if plan.wishes.limit_stated else "warning",
        "quilting",
        f"the quilting leaves a place of {open_} open in {_named(area, fill, quilt)}; "
        f"{most} is the most ({source}).",
        tuple(_marks(fill, quilt)),
        None,
        (quilt.size,),
        open_,
        most,
        _mend(plan, area, fill, quilt),
    )


def _around(plan: QuiltingPlan) -> tuple[Area | None, Filled | None]:
    """The area that the widest place lies in, and how it is filled."""
    spot = Point(plan.gap.at)
    area = min(plan.divided.areas, key=lambda one: one.shape.distance(spot), default=None)
    key = area.key if area else ""
    return area, next((fill for fill in plan.fills if fill.area.key == key), None)


def _named(area: Area | None, fill: Filled | None, quilt: Quilt) -> str:
    if area is None:
        return "the top"
    name = f"{area.key} ('{area.name}')" if area.name else area.key
    if area.excluded:
        return f"{name}, which is excluded from the quilting"
    if fill is None:
        return f"{name}, where no design finds room"
    if not fill.drawn.paths:
        return f"{name} ({fill.design})"
    apart = inch.length(_fraction(fill.drawn.spacing), quilt.system)
    return f"{name} ({fill.design}, {apart} apart)"


def _mend(plan: QuiltingPlan, area: Area | None, fill: Filled | None, quilt: Quilt) -> str:
    """The spacing that would do: as much closer as the place is too wide."""
    limit = inch.length(_fraction(plan.wishes.limit), quilt.system)
    if area is None or area.excluded:
        return f"Quilt that place too, or take a batting that may lie open farther than {limit}."
    apart = plan.wishes.limit
    if fill is not None and fill.drawn.paths:
        apart = min(apart, fill.drawn.spacing * plan.wishes.limit / plan.gap.high)
    step = _fraction(plan.top.rules.step)
    closer = inch.length(max(step, _fraction(apart) // step * step), quilt.system)
    return (
        f"Write a spacing of {closer} or less for {area.key}, or take a batting that may lie open "
        f"farther, and state its limit."
    )


def _marks(fill: Filled | None, quilt: Quilt) -> Iterator[Mark]:
    """Where a spacing of that area is stated, and the limit."""
    apart = fill.drawn.spacing if fill else 0.0
    for one in quilt.quilting:
        at = one.key_places.get("spacing") or one.place
        if one.spacing is not None and at and abs(float(one.spacing) - apart) <= KNOWN:
            yield Mark(at, "spacing stated here")
            break
    places = quilt.batting.places if quilt.batting else {}
    if "limit" in places:
        yield Mark(places["limit"], "limit stated here")


def _fraction(value: float) -> Fraction:
    return Fraction(value).limit_denominator(FINE)


def _up(value: float, quilt: Quilt) -> str:
    """The next mark of the ruler, upward."""
    return inch.length(inch.ruler_up(_fraction(value), quilt.system), quilt.system)
