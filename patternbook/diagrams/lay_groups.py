"""Strips that are cut alike, and what stands beside their picture."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternbook.cutting.records import BINDING, Cut, Strip
from patternbook.diagrams import words
from patternbook.diagrams.pattern import Size


@dataclass(frozen=True)
class Group:
    """Strips that are drawn once: all cut alike, but for a last one that is cut less."""

    strip: Strip
    times: int
    last: Strip | None = None


def groups(strips: Sequence[Strip]) -> tuple[Group, ...]:
    """Neighbouring strips that are cut alike, with the last one that holds fewer pieces."""
    made: list[Group] = []
    for strip in strips:
        before = made[-1] if made else None
        if before and before.last is None and _less(before.strip, strip):
            made[-1] = Group(before.strip, before.times + 1, strip)
        else:
            made.append(Group(strip, strip.times))
    return tuple(made)


def _less(full: Strip, other: Strip) -> bool:
    """Whether the other is one strip cut into the same pieces, only fewer."""
    if other.times != 1 or other.join or full.join or not full.cuts:
        return False
    return _like(full) == _like(other)


def _like(strip: Strip) -> object:
    """What strips have in common that differ only in how many pieces they give."""
    cuts = [(cut.letter, cut.along, cut.across, cut.lanes, cut.whole) for cut in strip.cuts]
    return strip.width, strip.length, strip.along, cuts


def tells(size: Size, group: Group) -> list[tuple[str, bool]]:
    """What stands beside a strip: how many, then each letter with its size."""
    strip = group.strip
    lines = [(f"× {group.times}" + (", joined" if strip.join and group.times > 1 else ""), True)]
    lines += [(tell(size, cut, strip), False) for cut in strip.cuts]
    if group.last is not None:
        fewer = words.listed(f"{cut.number} {cut.letter}" for cut in group.last.cuts)
        lines.append((f"(the last: {fewer})", False))
    return list(dict.fromkeys(lines))


def tell(size: Size, cut: Cut, strip: Strip) -> str:
    system = size.system
    if cut.letter == BINDING:
        return f"{words.length(cut.along, system)} of binding"
    if cut.whole:
        return f"{cut.letter} whole: {cut.use}" if cut.use else f"{cut.letter} whole"
    piece = size.quilt.pieces[cut.letter]
    if piece.is_strip or strip.join:
        total = sum(
            one.number for one in strip.cuts if (one.letter, one.along) == (cut.letter, cut.along)
        )
        return f"{total} {cut.letter}, {words.length(cut.along, system)} long"
    return f"{cut.number} {cut.letter}, {words.cut(piece.cut, system)}"
