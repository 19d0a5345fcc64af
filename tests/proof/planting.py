"""Sound evidence of the two demos, and small ways to plant one fault in it."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import Any

from patternbook.cutting.records import Cut, CuttingPlan, FabricPlan, Strip
from patternbook.edition.pipeline import examine
from patternbook.exact import Exact
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Placed, Unit
from tests.support import ROOT

Plant = Callable[[Evidence], Evidence]


@cache
def demo(name: str) -> Mapping[str, Evidence]:
    """All sizes of a demo."""
    path = ROOT / "patterns" / name / "pattern.yaml"
    return examine(path, "pattern.yaml").sizes


def tea() -> Evidence:
    """A size with strip sets, sashing, cornerstones, a border and binding of one fabric."""
    return demo("tea-at-four")["throw"]


def books() -> Evidence:
    """A size with columns, a strip roll, turned units and joined strips."""
    return demo("late-returns")["throw"]


def in_quilt(evidence: Evidence, **changes: Any) -> Evidence:
    """The evidence with other things in its quilt."""
    return replace(evidence, quilt=replace(evidence.quilt, **changes))


def in_piece(evidence: Evidence, letter: str, **changes: Any) -> Evidence:
    """The evidence with another piece."""
    pieces = dict(evidence.quilt.pieces)
    pieces[letter] = replace(pieces[letter], **changes)
    return in_quilt(evidence, pieces=pieces)


def in_unit(evidence: Evidence, name: str, change: Callable[[Unit], Unit]) -> Evidence:
    """The evidence with another unit."""
    units = dict(evidence.quilt.units)
    units[name] = change(units[name])
    return in_quilt(evidence, units=units)


def in_made(evidence: Evidence, name: str, **changes: Any) -> Evidence:
    """The evidence with a unit made otherwise."""
    return in_unit(evidence, name, lambda unit: replace(unit, made=replace(unit.made, **changes)))


def in_cutting(evidence: Evidence, **changes: Any) -> Evidence:
    """The evidence with another cutting plan."""
    return replace(evidence, cutting=replace(evidence.cutting, **changes))


def in_fabric(
    evidence: Evidence, name: str, change: Callable[[FabricPlan], FabricPlan]
) -> Evidence:
    """The evidence with one fabric cut otherwise."""
    fabrics = dict(evidence.cutting.fabrics)
    fabrics[name] = change(fabrics[name])
    return in_cutting(evidence, fabrics=fabrics)


def in_strip(evidence: Evidence, letter: str, change: Callable[[Strip], Strip]) -> Evidence:
    """The evidence with the first strip of a letter cut otherwise."""
    name = fabric_of(evidence.cutting, letter)
    plan = evidence.cutting.fabrics[name]
    at = next(n for n, strip in enumerate(plan.strips) if letter in strip.letters)
    strips = (*plan.strips[:at], change(plan.strips[at]), *plan.strips[at + 1 :])
    return in_fabric(evidence, name, lambda plan: replace(plan, strips=strips))


def fabric_of(cutting: CuttingPlan, letter: str) -> str:
    """The fabric whose strips hold a letter."""
    return next(
        name
        for name, plan in cutting.fabrics.items()
        if any(letter in strip.letters for strip in plan.strips)
    )


def in_cut(evidence: Evidence, letter: str, change: Callable[[Cut], Cut]) -> Evidence:
    """The evidence with the first cut of a letter made otherwise."""

    def of_strip(strip: Strip) -> Strip:
        cuts = [change(cut) if cut.letter == letter else cut for cut in strip.cuts]
        return replace(strip, cuts=tuple(cuts))

    return in_strip(evidence, letter, of_strip)


def in_step(evidence: Evidence, unit: str, changes: Mapping[str, Any]) -> Evidence:
    """The evidence with the last step of a unit changed."""
    sewing = evidence.sewing
    last = next(step for step in sewing.steps if step.unit == unit and step.last)
    steps = tuple(replace(s, **changes) if s is last else s for s in sewing.steps)
    return replace(evidence, sewing=replace(sewing, steps=steps))


def moved(part: Placed, across: int | Fraction = 0, down: int | Fraction = 0) -> Placed:
    """A part that lies elsewhere."""
    return part._replace(x=part.x + across, y=part.y + down)


def wider(exact: Exact) -> Exact:
    """A length with the ruler's smallest step more."""
    return exact + Fraction(1, 8)
