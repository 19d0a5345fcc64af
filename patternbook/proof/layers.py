"""Backing and batting reach beyond the top on every side, by the panels' own measures."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from patternbook.cutting.records import BackingPlan, Panels
from patternbook.notice import Notice, Place
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown
from patternbook.quilt.records import CutSize, Quilt


def backing(evidence: Evidence) -> Iterator[Notice]:
    """Errors where the backing's panels do not cover the quilt and what stands out."""
    quilt, plan = evidence.quilt, evidence.cutting.backing
    if quilt.backing is None or quilt.finished is None:
        return
    place = _place(quilt.backing.places)
    if plan is None:
        yield recounted(quilt, "backing-sum", "R15", "no backing is cut.", place)
        return
    yield from _covers(quilt, "backing", plan.size, quilt.backing.over, place)
    for panels in (plan.best, plan.other):
        yield from _panels(quilt, plan, panels, place)
    free = not quilt.backing.seams and quilt.backing.stated_panels is None
    seamed = plan.best.panels > 1  # one width that covers it is taken, whatever it costs
    if free and seamed and (plan.other.panels == 1 or plan.best.amount > plan.other.amount):
        message = (
            f"backing: {shown(plan.best.amount, quilt)} {plan.unit} with {plan.best.seams} seams, "
            f"{shown(plan.other.amount, quilt)} with {plan.other.seams} ones."
        )
        yield recounted(quilt, "backing-sum", "R15", message, place)


def batting(evidence: Evidence) -> Iterator[Notice]:
    """Errors where the batting, or the package it comes in, does not hold the quilt."""
    quilt, plan = evidence.quilt, evidence.cutting.batting
    if quilt.batting is None or quilt.finished is None:
        return
    place = _place(quilt.batting.places)
    if plan is None:
        yield recounted(quilt, "batting-sum", "R15", "no batting is reckoned.", place)
        return
    yield from _covers(quilt, "batting", plan.size, quilt.batting.over, place)
    if plan.pack is not None and not _holds(plan.pack, plan.size):
        message = (
            f"batting {_size(plan.size, quilt)} does not go into a package "
            f"{_size(plan.pack, quilt)}, either way round."
        )
        yield recounted(quilt, "batting-sum", "R15", message, place)


def _covers(
    quilt: Quilt, what: str, size: CutSize, over: Fraction, place: Place | None
) -> Iterator[Notice]:
    if quilt.finished is None:
        return
    for word, side, have in zip(("wide", "long"), quilt.finished, size, strict=True):
        if have is None or side + 2 * over > have:
            message = (
                f"{what}: the quilt is {shown(side, quilt)} {word}, with {shown(over, quilt)} on "
                f"each side {shown(side + 2 * over, quilt)}; it has {shown(have or 0, quilt)}."
            )
            yield recounted(quilt, f"{what}-sum", "R15", message, place)


def _panels(
    quilt: Quilt, plan: BackingPlan, panels: Panels, place: Place | None
) -> Iterator[Notice]:
    """The panels seamed side by side, each join losing both its seams, and their length."""
    across, down = plan.size.across, plan.size.down or Fraction(0)
    covered, each = (across, down) if panels.seams == "lengthwise" else (down, across)
    seams = (panels.panels - 1) * 2 * quilt.settings.backing_seam
    made = panels.panels * plan.cloth_width - seams
    length = panels.panels * panels.each
    bought = panels.amount * quilt.system.bolt
    if made < covered or panels.each < each or panels.length != length or bought < length:
        message = (
            f"backing: {panels.panels} panels {shown(plan.cloth_width, quilt)} wide make "
            f"{shown(made, quilt)} of {shown(covered, quilt)}, each {shown(panels.each, quilt)} "
            f"long of {shown(each, quilt)}; {shown(length, quilt)} in all, "
            f"{shown(bought, quilt)} bought."
        )
        yield recounted(quilt, "backing-sum", "R15", message, place)


def _holds(pack: CutSize, size: CutSize) -> bool:
    sides = (pack.across, pack.down or Fraction(0)), (size.across, size.down or Fraction(0))
    have, need = (sorted(pair) for pair in sides)
    return have[0] >= need[0] and have[1] >= need[1]


def _size(size: CutSize, quilt: Quilt) -> str:
    return f"{shown(size.across, quilt)} × {shown(size.down or 0, quilt)}"


def _place(places: Mapping[str, Place]) -> Place | None:
    return next(iter(places.values()), None)
