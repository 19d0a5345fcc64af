"""How each letter is cut, as a reader of the cutting chart needs it."""

from __future__ import annotations

from fractions import Fraction

from patternbook.cutting.asked import Asked
from patternbook.cutting.groups import Group
from patternbook.cutting.records import Cut, LetterPlan, OtherWay, Strip
from patternbook.quilt.records import Quilt, StripSetMade


def letter_plans(quilt: Quilt, group: Group) -> tuple[LetterPlan, ...]:
    """One plan for the host, and one for each of its guests, which have no strips of their own."""
    return tuple(_letter(quilt, group, member) for member in group.members)


def strips_cut(group: Group) -> int:
    """The strips that are cut: as many as she states, where that is enough."""
    host = group.host
    if host is None:
        return group.own
    # In a fragment that sews nothing of them, whole strips may be stated by their count.
    stated = host.stated_strips or (host.stated_count if host.is_strip and not host.runs else 0)
    return max(group.own, stated or 0)


def _letter(quilt: Quilt, group: Group, member: Asked) -> LetterPlan:
    piece = member.piece
    hosting = piece is group.host
    fits = member.laid.fits(group.cloth.run)
    mine = [strip for strip in group.strips if piece.letter in strip.letters]
    own = group.own if hosting else 0
    per_strip = min(fits, piece.stated_per_strip or fits)
    alone = hosting and len(group.members) == 1 and not group.lengthwise and not group.cloth.deep
    return LetterPlan(
        piece.letter,
        group.cloth.fabric.name,
        None if hosting or group.host is None else group.host.letter,
        piece.cut,
        member.laid.wide,
        member.laid.along or None,
        member.needed,
        member.cuts,
        member.each,
        fits,
        per_strip,
        own,
        strips_cut(group) if hosting else 0,
        any(strip.join for strip in mine),
        any(exact(quilt, group, strip) for strip in mine),
        alone and per_strip > 1 and own * per_strip == member.cuts,
        _other_way(group, member) if alone else None,
    )


def exact(quilt: Quilt, group: Group, strip: Strip) -> bool:
    """Whether less than a seam's width is over in each strip.

    Not told of strips sewn end to end, nor of a strip or pre-cut that is used as it is.
    """
    if strip.join or not strip.cuts or strip.along == "length" or strip.left >= quilt.seam:
        return False
    first = strip.cuts[0]
    if first.whole:
        return set_of(quilt, first) is not None
    return not group.cloth.deep or sum(cut.columns for cut in strip.cuts) > 1


def set_of(quilt: Quilt, cut: Cut) -> StripSetMade | None:
    """The strip set that a whole strip is sewn into."""
    unit = quilt.units.get(cut.use or "")
    return unit.made if unit and isinstance(unit.made, StripSetMade) else None


def _other_way(group: Group, member: Asked) -> OtherWay | None:
    """The letter from strips as wide as its other side, where she leaves that open."""
    piece, cloth = member.piece, group.cloth
    settled = piece.strip_width or cloth.roll or cloth.fabric.one_way or piece.cut.down is None
    if settled or piece.cut.across == piece.cut.down or not member.cuts:
        return None
    wide, along = member.laid.along, member.laid.across
    strips = -(-member.cuts // int(cloth.run // along))
    return OtherWay(wide, strips, Fraction(strips * wide))
