"""Strip sets in words: strips joined along their long edges, and cut across."""

from __future__ import annotations

from collections.abc import Callable

from patternbook.booklet import wording
from patternbook.booklet.step_facts import CHECK, Context, Fact, Words
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import SegmentStep, Step, StripStep


def strips(first: StripStep, where: Context) -> Words:
    """Strips joined into sets."""
    quilt = where.known.quilt
    seam = wording.length(quilt.seam, quilt.system)
    does = (
        f"Lay the strips {wording.listed(first.strips)} side by side in this order.",
        f"Join them right sides together along their long edges with a {seam} seam.",
    )
    sets = Fact("Make this many sets", "Make {} sets.", lambda made, _: str(made.make))
    wide = Fact(
        "Each set should measure across, with seam allowances",
        "Each set should measure {} across with seam allowances.",
        lambda made, size: wording.length(made.measure.across, size.quilt.system),
    )
    return Words(f"{where.name}: join the strips", does, (wide, sets))


def segments(first: SegmentStep, where: Context) -> Words:
    """Sets cut across."""
    width = wording.length(first.segment, where.known.quilt.system)
    each = wording.spelled(first.per_set)
    does = (
        "Straighten one end of each set.",
        f"Cut slices {width} wide across the seams, {each} from each set.",
    )
    facts = (
        Fact("Slices to cut", "Cut {} slices.", _of("cut")),
        Fact("Slices to sew on", "{} are sewn on.", _of("make")),
        Fact("Slices to spare", "To spare: {}.", _of("spare")),
        CHECK,
    )
    return Words(f"{where.name}: cut the sets across", does, facts)


def _of(figure: str) -> Callable[[Step, Evidence], str]:
    return lambda step, _: str(getattr(step, figure))
