"""Backing, batting, binding and label as records for programs."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from patternbook.cutting.records import (
    BackingFor,
    BackingPlan,
    BattingPlan,
    BindingPlan,
    Insert,
    LabelPlan,
    Panels,
)
from patternbook.edition.figures_record import (
    BackingForRecord,
    BackingRecord,
    BattingRecord,
    BindingRecord,
    BuyRecord,
    InsertRecord,
    LabelRecord,
    PanelsRecord,
    SizeRecord,
)
from patternbook.inch import System, plain
from patternbook.quilt.records import CutSize, Quilt
from patternbook.quilting.limit import LIMIT

Unit = Literal["yd", "m"]


def backing(plan: BackingPlan | None, system: System) -> BackingRecord | None:
    """The backing, with the other direction of its seams and both ways of quilting."""
    if plan is None:
        return None
    best = plan.best
    return {
        "size": _size(plan.size, system),
        "over": _number(plan.over, system),
        "panels": best.panels,
        "seams": best.seams,
        "each": _number(best.each, system),
        "made": _number(best.made, system),
        "buy": _bought(best, plan.unit),
        "insert": _insert(best.insert, system) if best.insert else None,
        "other": _panels(plan.other, plan.unit, system),
        "home": _made_for(plan.home, plan.unit, system),
        "frame": _made_for(plan.frame, plan.unit, system),
    }


def batting(plan: BattingPlan | None, quilt: Quilt) -> BattingRecord | None:
    """The batting, and how far apart it may be quilted."""
    if plan is None:
        return None
    system, limit = quilt.system, quilt.batting.limit if quilt.batting else None
    return {
        "size": _size(plan.size, system),
        "pack": _size(plan.pack, system) if plan.pack else None,
        "packs": plan.packs if plan.pack else 0,
        "roll": _panels(plan.roll, system.bolt_unit, system) if plan.roll else None,
        "limit": _number(LIMIT[system.unit] if limit is None else limit, system),
        "limit_source": "assumed" if limit is None else "stated",
    }


def binding(plan: BindingPlan | None, system: System) -> BindingRecord | None:
    """The binding, from strips across the cloth or from squares."""
    if plan is None:
        return None
    square = plan.square or Fraction(0)
    return {
        "fabric": plan.fabric,
        "strips": plan.strips,
        "length": _number(plan.length, system),
        "joins": plan.joins,
        "join": plan.join,
        "made": _number(plan.made, system),
        "left": _number(plan.left, system),
        "cloth": _number(plan.strips * plan.cut + plan.squares * square, system),
        "square": _number(square, system) if plan.square else None,
        "squares": plan.squares,
        "bias_strips": plan.bias_strips,
        "radius": _number(plan.radius, system) if plan.radius else None,
    }


def label(plan: LabelPlan | None, system: System) -> LabelRecord | None:
    """The label, and whose spare cloth holds it."""
    if plan is None:
        return None
    return {
        "finished": _size(plan.finished, system),
        "cut": _size(plan.cut, system),
        "fabric": plan.source,
        "lines": list(plan.lines),
    }


def _insert(strip: Insert, system: System) -> InsertRecord:
    return {
        "width": _number(strip.width, system),
        "length": _number(strip.length, system),
        "made": _number(strip.made, system),
        "patches": [
            {
                "fabric": one.fabric,
                "number": one.number,
                "across": _number(one.across, system),
                "along": _number(one.along, system),
            }
            for one in strip.patches
        ],
    }


def _panels(way: Panels, unit: Unit, system: System) -> PanelsRecord:
    return {
        "panels": way.panels,
        "seams": way.seams,
        "length": _number(way.length, system),
        "buy": _bought(way, unit),
    }


def _made_for(way: BackingFor, unit: Unit, system: System) -> BackingForRecord:
    return {
        "over": _number(way.over, system),
        "size": _size(way.size, system),
        "buy": _bought(way.best, unit),
    }


def _bought(way: Panels, unit: Unit) -> BuyRecord:
    return {
        "amount": plain(way.amount, unit == "m"),
        "unit": unit,
        "metres": plain(way.metres, decimals=True),
    }


def _size(cut: CutSize, system: System) -> SizeRecord:
    down = None if cut.down is None else _number(cut.down, system)
    return {"across": _number(cut.across, system), "down": down}


def _number(value: Fraction, system: System) -> str:
    return plain(value, system.unit == "cm")
