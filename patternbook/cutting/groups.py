"""Strips that one letter is cut from, and the letters that share them: packed, joined or whole."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby
from typing import Literal

from patternbook.cutting.asked import Asked, asked, laid
from patternbook.cutting.cloth import Cloth
from patternbook.cutting.packing import Filled, Item, first_fit, strips_end_to_end
from patternbook.cutting.records import Cut, Join, Strip
from patternbook.quilt.records import Piece, Quilt


@dataclass(frozen=True)
class Group:
    """One letter's strips with those who share them. `unlaid` letters fit into no strip,
    `too_long` ones have lengths that no strip gives and that may not be joined."""

    cloth: Cloth
    wide: Fraction
    members: tuple[Asked, ...]
    strips: tuple[Strip, ...] = ()
    spare: int = 0
    unlaid: tuple[Piece, ...] = ()
    too_long: tuple[Asked, ...] = ()

    @property
    def host(self) -> Piece | None:
        """The letter whose strips they are; None where not even that one could be laid."""
        return self.members[0].piece if self.members else None

    @property
    def lengthwise(self) -> bool:
        """Whether the strips are cut along the selvedge."""
        return bool(self.host and self.host.along == "length")

    @property
    def own(self) -> int:
        """The strips that are needed (cut along the length: the pieces)."""
        if self.lengthwise:
            return sum(member.cuts for member in self.members)
        return sum(strip.times for strip in self.strips) + self.spare

    @property
    def faults(self) -> int:
        """How many letters cannot be cut as asked, or only in joined pieces."""
        return len(self.unlaid) + len(self.too_long) + sum(bool(s.join) for s in self.strips)


def group(quilt: Quilt, cloth: Cloth, host: Piece, guests: Sequence[Piece]) -> Group:
    """The strips for one letter and its guests, largest cuts first."""
    lies = laid(host, cloth)
    if lies is None:
        return Group(cloth, Fraction(0), (), unlaid=(host, *guests))
    members, unlaid = [asked(quilt, host, lies, cloth)], []
    for guest in guests:
        beside = laid(guest, cloth, lies.wide)
        if beside is None:
            unlaid.append(guest)
        else:
            members.append(asked(quilt, guest, beside, cloth))
    if host.along == "length":
        return _lengthwise(cloth, members, unlaid)
    spare = sum(member.piece.spare for member in members if member.piece.is_strip)
    too_long = [m for m in members if m.longer_than(cloth.run) and not _may_join(m)]
    wide = lies.wide
    strips = (*_whole(members, wide, cloth), *_shared(quilt, members, wide, cloth))
    return Group(cloth, wide, tuple(members), strips, spare, tuple(unlaid), tuple(too_long))


def _may_join(member: Asked) -> bool:
    return member.piece.join != "none" and member.each == 1


def _whole(members: Iterable[Asked], wide: Fraction, cloth: Cloth) -> list[Strip]:
    return [
        Strip(wide, cloth.run, item.columns, (replace(_cut(item, 1), whole=True),))
        for member in members
        for item in member.whole
    ]


def _cut(item: Item, columns: int) -> Cut:
    number = columns * item.lanes
    return Cut(item.letter, item.along, item.across, number, item.lanes, item.use)


def _shared(quilt: Quilt, members: Sequence[Asked], wide: Fraction, cloth: Cloth) -> list[Strip]:
    """Long cuts from strips sewn end to end, the others from what these leave and from more."""
    long = [item for member in members for item in member.longer_than(cloth.run)]
    short = [item for member in members for item in member.items if item not in long]
    strips, begun = [], []
    if long:
        joined = _end_to_end(quilt, members[0].piece, long, wide, cloth.run)
        strips.append(joined)
        begun.append(Filled(1, joined.left))
    largest_first = sorted(short, key=lambda item: item.along, reverse=True)
    filled = first_fit(largest_first, cloth.run, begun)
    if begun:
        last = strips.pop()
        strips.append(_with_cuts(last, filled.pop(0).cuts()))
    return strips + [Strip(wide, cloth.run, alike.times, cuts) for alike, cuts in _alike(filled)]


def _with_cuts(strip: Strip, cuts: tuple[Cut, ...]) -> Strip:
    return Strip(strip.width, strip.length, strip.times, strip.cuts + cuts, join=strip.join)


def _alike(filled: Iterable[Filled]) -> list[tuple[Filled, tuple[Cut, ...]]]:
    """Neighbours with the same cuts as one."""
    pairs = [(strips, strips.cuts()) for strips in filled]
    merged = []
    for cuts, same in groupby(pairs, key=lambda pair: pair[1]):
        strips = [pair[0] for pair in same]
        times = sum(one.times for one in strips)
        merged.append((Filled(times, strips[0].left), cuts))
    return merged


def _end_to_end(
    quilt: Quilt, piece: Piece, items: Sequence[Item], wide: Fraction, run: Fraction
) -> Strip:
    total = sum((item.columns * item.along for item in items), Fraction(0))
    kind, loss = join_loss(quilt, piece.join, wide)
    strips = strips_end_to_end(total, run, loss)
    if strips is None:  # as wide as it is long: only a straight join brings anything
        kind, loss = "straight", 2 * quilt.seam
        strips = strips_end_to_end(total, run, loss) or 1
    join = Join(kind, loss, strips * run - (strips - 1) * loss)
    cuts = tuple(_cut(item, item.columns) for item in items)
    return Strip(wide, run, strips, cuts, join=join)


def strips_joined(quilt: Quilt, group: Group, piece: Piece, join: str) -> int:
    """How many strips all lengths of a piece take, sewn end to end in that way."""
    lies = [member for member in group.members if member.piece is piece]
    items = [item for member in lies for item in (*member.items, *member.whole)]
    joined = replace(piece, join=join)  # type: ignore[arg-type]
    return _end_to_end(quilt, joined, items, group.wide, group.cloth.run).times


def join_loss(
    quilt: Quilt, join: str, wide: Fraction
) -> tuple[Literal["diagonal", "straight"], Fraction]:
    """A diagonal join takes the strip's width (trade facts 6.10), a straight one two seams."""
    kind: Literal["diagonal", "straight"] = "diagonal" if join == "diagonal" else "straight"
    if quilt.settings.joins == "not counted":
        return kind, Fraction(0)
    return kind, wide if kind == "diagonal" else 2 * quilt.seam


def _lengthwise(cloth: Cloth, members: Sequence[Asked], unlaid: Sequence[Piece]) -> Group:
    """Lengths of the cloth, the longest pieces first, side by side across its width."""
    items = [item for member in members for item in _side_by_side(member)]
    items.sort(key=lambda item: (item.across, item.along), reverse=True)
    wide = members[0].laid.wide
    too_wide = [member.piece for member in members if member.laid.wide > cloth.run]
    if too_wide:
        return Group(cloth, wide, (), unlaid=(*too_wide, *unlaid))
    lengths = [
        Strip(max(cut.across for cut in cuts), cloth.run, alike.times, cuts, "length")
        for alike, cuts in _alike(first_fit(items, cloth.run))
    ]
    return Group(cloth, wide, tuple(members), tuple(lengths), 0, tuple(unlaid))


def _side_by_side(member: Asked) -> list[Item]:
    if not member.piece.is_strip:
        return list(member.items)
    return [
        item._replace(along=item.across, across=item.along)
        for item in (*member.whole, *member.items)
    ]
