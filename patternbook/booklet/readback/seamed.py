"""Lengths that are in no record, formed anew for reading back: how far apart the seams of a
backing lie once it is trimmed, and how much longer than its edge a mitred strip is cut."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.cutting.records import BackingPlan
from patternbook.exact import Exact
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import BorderStep


def longer_than_measured(known: Evidence) -> Iterator[Exact]:
    """A mitred strip stands out by its width and a seam at each end of the edge."""
    for step in known.sewing.steps:
        if isinstance(step, BorderStep) and step.corners == "mitred":
            yield (step.width + Exact(known.quilt.seam)) * 2


def between_seams(plan: BackingPlan | None) -> Iterator[Fraction]:
    """What shows of each width of cloth, and of a strip between them."""
    if plan is None or not plan.best.joins:
        return
    strip, wide, one = plan.best.insert, plan.cloth_width, plan.seam
    widths = [wide] * plan.best.panels
    if strip is not None:
        widths = [strip.split, strip.width, wide - strip.split] if strip.split else widths
        widths = widths if strip.split else [wide, strip.width, *widths[1:]]
    left = plan.size.across if plan.best.seams == "lengthwise" else plan.size.down or Fraction(0)
    outer = {0, len(widths) - 1}
    for number, width in enumerate(widths):
        shows = min(left, width - (one if number in outer else 2 * one))
        left -= shows
        yield shows
