"""Backing and batting reach beyond the top on every side, by their own measures."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Final

from patternbook.cutting.records import BackingPlan, BattingPlan, Panels
from patternbook.notice import Notice, Place
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown
from patternbook.proof.spare_cloth import strip_let_in
from patternbook.quilt.records import CutSize, Quilt

# What the two ways of quilting take on each side, in either measure (trade facts 7.2 and 7.1).
HOME: Final = {"in": Fraction(3), "cm": Fraction(15, 2)}
FRAME: Final = {"in": Fraction(4), "cm": Fraction(10)}


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
    for panels in (plan.best, plan.other, plan.whole):
        if panels is not None:
            yield from _panels(quilt, plan, plan.size, panels, place)
    for way, over in ((plan.home, HOME), (plan.frame, FRAME)):
        yield from _covers(quilt, "backing", way.size, over[quilt.system.unit], place)
        yield from _panels(quilt, plan, way.size, way.best, place)
    if plan.best.insert is not None:
        yield from strip_let_in(evidence, plan, plan.best.insert, place)
    free = not quilt.backing.seams and quilt.backing.stated_panels is None
    seamed = (
        plan.best.panels > 1 and plan.best.insert is None
    )  # one width that covers it is taken, whatever it costs
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
    if plan.roll is not None:
        yield from _roll(quilt, plan, plan.roll, place)
    elif plan.pack is not None and not _together(plan.pack, plan.packs, plan.size):
        message = (
            f"batting {_size(plan.size, quilt)} does not go into {plan.packs} × "
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
    quilt: Quilt, plan: BackingPlan, size: CutSize, panels: Panels, place: Place | None
) -> Iterator[Notice]:
    """The panels seamed side by side, each join losing both its seams, and their length."""
    across, down = size.across, size.down or Fraction(0)
    covered, each = (across, down) if panels.seams == "lengthwise" else (down, across)
    parts = [plan.cloth_width] * panels.panels
    if panels.insert is not None:  # the only length is cut apart for the strip
        parts += [panels.insert.width, *([Fraction(0)] if panels.panels == 1 else [])]
    made = sum(parts, Fraction(0)) - (len(parts) - 1) * 2 * quilt.settings.backing_seam
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


def _roll(quilt: Quilt, plan: BattingPlan, roll: Panels, place: Place | None) -> Iterator[Notice]:
    """Lengths off the roll laid edge to edge, each as long as the batting."""
    across, down = plan.size.across, plan.size.down or Fraction(0)
    covered, each = (across, down) if roll.seams == "lengthwise" else (down, across)
    made = roll.panels * (plan.roll_width or Fraction(0))
    bought = roll.amount * quilt.system.bolt
    if made < covered or roll.each < each or bought < roll.panels * each:
        message = (
            f"batting: {roll.panels} lengths {shown(plan.roll_width or 0, quilt)} wide make "
            f"{shown(made, quilt)} of {shown(covered, quilt)}, each {shown(roll.each, quilt)} of "
            f"{shown(each, quilt)}; {shown(bought, quilt)} are bought."
        )
        yield recounted(quilt, "batting-sum", "R15", message, place)


def _together(pack: CutSize, packs: int, size: CutSize) -> bool:
    """Whether so many packages, laid edge to edge, hold it."""
    long, short = pack.across, pack.down or Fraction(0)
    return any(
        _holds(CutSize(one * packs, other), size) for one, other in ((long, short), (short, long))
    )


def _holds(pack: CutSize, size: CutSize) -> bool:
    sides = (pack.across, pack.down or Fraction(0)), (size.across, size.down or Fraction(0))
    have, need = (sorted(pair) for pair in sides)
    return have[0] >= need[0] and have[1] >= need[1]


def _size(size: CutSize, quilt: Quilt) -> str:
    return f"{shown(size.across, quilt)} × {shown(size.down or 0, quilt)}"


def _place(places: Mapping[str, Place]) -> Place | None:
    return next(iter(places.values()), None)
