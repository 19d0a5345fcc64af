"""Sums of strips written out, so that both sides of a contradiction can be followed."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from patternbook.cutting.asked import Asked
from patternbook.cutting.groups import Group
from patternbook.cutting.records import Cut, Join, Strip
from patternbook.cutting.told import long, number, times
from patternbook.inch import System


def need(group: Group, system: System) -> str:
    """How the strips that are needed come about."""
    strips = times(group.own, "strip")
    if group.lengthwise:
        return f"{times(group.own, 'piece')} along the length"
    if len(group.strips) == 1 and group.strips[0].join:
        return f"{lengths(group.strips[0].cuts, system)} end to end: {strips}"
    one = _only(group)
    if one and not group.strips[0].join:
        per, along = per_strip(one, group), one.laid.along
        fill = f"{-(-per // one.laid.lanes)} × {number(along, system)}"
        of = f"{fill} of {long(group.cloth.run, system)}"
        return f"{times(one.cuts, 'piece')}, {per} to a strip ({of}): {strips}"
    parts = " + ".join(_filled(strip, system) for strip in group.strips)
    spare = f" + {group.spare} spare" if group.spare else ""
    return f"{parts}{spare}: {strips}"


def given(group: Group, stated: int, system: System) -> str:
    """What the stated strips give, and how much that is short."""
    if len(group.strips) == 1 and group.strips[0].join:
        strip, join = group.strips[0], group.strips[0].join
        short = strip.run - strip.left - made(stated, strip.length, join)
        return f"{made_of(stated, strip.length, join, system)}, short by {long(short, system)}"
    one = _only(group)
    if one and not group.lengthwise and not group.strips[0].join:
        gives = stated * per_strip(one, group)
        return f"the {stated} stated give {gives}, short by {times(one.cuts - gives, 'piece')}"
    return f"the {stated} stated are short by {group.own - stated}"


def per_strip(member: Asked, group: Group) -> int:
    """How many pieces are cut from one strip: as many as fit, or fewer if she says so."""
    fits = member.laid.fits(group.cloth.run)
    return min(fits, member.piece.stated_per_strip or fits)


def _only(group: Group) -> Asked | None:
    """The one letter, where its strips give nothing else and its pieces are all alike."""
    alone = len(group.members) == 1 and not group.members[0].piece.is_strip and group.strips
    return group.members[0] if alone else None


def made(strips: int, run: Fraction, join: Join) -> Fraction:
    """How long so many strips are once joined."""
    return strips * run - max(0, strips - 1) * join.loss


def made_of(strips: int, run: Fraction, join: Join, system: System) -> str:
    """`6 × 40 − 5 × ½ = 237½″`."""
    joins = f" − {strips - 1} × {number(join.loss, system)}" if join.loss and strips > 1 else ""
    total = long(made(strips, run, join), system)
    return f"{strips} × {number(run, system)}{joins} = {total}"


def lengths(cuts: Sequence[Cut], system: System) -> str:
    """`2 × 60½ + 2 × 50½ = 222″`."""
    parts = " + ".join(f"{cut.columns} × {number(cut.along, system)}" for cut in cuts)
    return f"{parts} = {long(sum((cut.taken for cut in cuts), Fraction(0)), system)}"


def _filled(strip: Strip, system: System) -> str:
    """`7 of (1 A 5½ + 1 B 2½)`."""
    if strip.cuts and strip.cuts[0].whole:
        return f"{strip.times} whole for {strip.cuts[0].use}"
    cuts = " + ".join(
        f"{cut.number} {cut.letter} {number(cut.along, system)}" for cut in strip.cuts
    )
    return f"{strip.times} of ({cuts})" + (" joined" if strip.join else "")
