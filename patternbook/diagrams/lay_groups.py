"""Strips that are cut alike, and what stands beside their picture."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from patternbook.cutting.records import BINDING, Cut, CutStep, FabricPlan, Ruler, Sheet, Strip
from patternbook.diagrams import words
from patternbook.diagrams.pattern import Size


@dataclass(frozen=True)
class Group:
    """Strips that are drawn once: all cut alike, but for a last one that is cut less."""

    strip: Strip
    times: int
    last: Strip | None = None


@dataclass(frozen=True)
class Said:
    """A line of words beside a picture, and the rulers that its cut is made with."""

    text: str
    heavy: bool = False
    rulers: tuple[Ruler, ...] = ()


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
    cuts = [
        (cut.letter, cut.along, cut.across, cut.lanes, cut.whole, cut.above) for cut in strip.cuts
    ]
    return strip.width, strip.length, strip.along, cuts


def stacks(strip: Strip) -> tuple[Cut, ...]:
    """All its cuts, those that lie above others among them."""
    return tuple(one for cut in strip.cuts for one in cut.stacked)


def tells(size: Size, plan: FabricPlan, group: Group) -> list[Said]:
    """What stands beside a strip: how many, then each letter with its size."""
    strip = group.strip
    joined = ", joined" if strip.join and group.times > 1 else ""
    lines = [Said(f"× {group.times}{joined}", heavy=True, rulers=_strip_rulers(plan, strip))]
    lines += told(size, plan, strip)
    if group.last is not None:
        fewer = words.listed(f"{cut.number} {cut.letter}" for cut in group.last.cuts)
        lines.append(Said(f"(the last: {fewer})"))
    return list(dict.fromkeys(lines))


def told(size: Size, plan: FabricPlan, strip: Strip) -> list[Said]:
    """A line for each letter and size that is cut from a strip."""
    return [
        Said(tell(size, cut, strip), rulers=_piece_rulers(plan, strip, cut))
        for cut in stacks(strip)
    ]


def tell(size: Size, cut: Cut, strip: Strip) -> str:
    total = sum(
        one.number
        for one in stacks(strip)
        if (one.letter, one.along, one.across) == (cut.letter, cut.along, cut.across)
    )
    return numbered(size, cut, strip, total)


def numbered(size: Size, cut: Cut, strip: Strip, total: int) -> str:
    """`6 A, 6⅞ × 6⅞″`: so many pieces that lie so."""
    system = size.system
    if cut.letter == BINDING:
        return f"{words.length(cut.along, system)} of binding"
    if cut.whole:
        return f"{cut.letter} whole: {cut.use}" if cut.use else f"{cut.letter} whole"
    piece = size.quilt.pieces[cut.letter]
    if piece.is_strip or strip.join:
        long = cut.across if strip.along == "length" else cut.along
        return f"{total} {cut.letter}, {words.length(long, system)} long"
    return f"{total} {cut.letter}, {words.cut(piece.cut, system)}"


def told_of_sheet(size: Size, plan: FabricPlan, sheet: Sheet) -> list[Said]:
    """A line for each letter that one pre-cut piece gives: all its strips together."""
    cuts = [
        (plan.strips[row.strip], cut, cut.number * row.times)
        for row in sheet.rows
        for cut in stacks(plan.strips[row.strip])
    ]
    totals: Counter[str] = Counter()
    for strip, cut, number in cuts:
        totals[numbered(size, cut, strip, 1)] += number
    return list(
        dict.fromkeys(
            Said(
                numbered(size, cut, strip, totals[numbered(size, cut, strip, 1)]),
                rulers=_piece_rulers(plan, strip, cut),
            )
            for strip, cut, _ in cuts
        )
    )


def _strip_rulers(plan: FabricPlan, strip: Strip) -> tuple[Ruler, ...]:
    """Those that the strip itself is cut off with."""
    found = (step for step in plan.steps if step.kind == "strip" and _of(step, strip))
    return next((step.rulers for step in found if step.length == strip.length), ())


def _piece_rulers(plan: FabricPlan, strip: Strip, cut: Cut) -> tuple[Ruler, ...]:
    """Those that such pieces are cut from it with."""
    for step in plan.steps:
        across = cut.across if cut.across != strip.width else None
        same = (step.letters, step.length, step.across) == ((cut.letter,), cut.along, across)
        if step.kind == "subcut" and same and _of(step, strip):
            return step.rulers
    return ()


def _of(step: CutStep, strip: Strip) -> bool:
    return step.width == strip.width and (step.reason == "long") == (strip.along == "length")
