"""A plan of pre-cuts without a piece too many: what is over is left out of as few as can be."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from patternbook.cutting.planner.every_filling import within
from patternbook.cutting.planner.records import Kind
from patternbook.cutting.planner.sheet_ways import Direction, summed
from patternbook.cutting.planner.sheet_zone import SheetCut
from patternbook.cutting.planner.zone import Counts, Strip

# Sheets that are cut alike, and how many.
SheetPlan = dict[SheetCut, int]


def exact(kinds: Sequence[Kind], plan: Iterable[tuple[SheetCut, int]]) -> SheetPlan:
    """The same pre-cuts with exactly the pieces that are asked for."""
    kept: Counter[SheetCut] = Counter()
    for sheet, times in plan:
        kept[sheet] += times
    over = _over(kinds, kept)
    while any(over):
        full = max(kept, key=lambda sheet: _relief(kinds, sheet, over))
        kept[full] -= 1
        trimmed = _without(kinds, full, over)
        if trimmed.strips:
            kept[trimmed] += 1
        kept = +kept
        over = _over(kinds, kept)
    return dict(kept)


def _over(kinds: Sequence[Kind], plan: SheetPlan) -> Counts:
    """How many pieces of each kind are too many."""
    total = [-kind.number for kind in kinds]
    for sheet, times in plan.items():
        for place, number in enumerate(summed(sheet.strips, len(kinds))):
            total[place] += number * times
    return tuple(total)


def _relief(kinds: Sequence[Kind], sheet: SheetCut, over: Counts) -> tuple[int, int]:
    """How much of what is over one such sheet can do without; of equals the one that holds
    least."""
    counts = summed(sheet.strips, len(kinds))
    areas = [kind.along * kind.across for kind in kinds]
    held = sum(area * number for area, number in zip(areas, counts, strict=True))
    spared = within(counts, over)
    return sum(area * number for area, number in zip(areas, spared, strict=True)), -held


def _without(kinds: Sequence[Kind], sheet: SheetCut, over: Counts) -> SheetCut:
    """One sheet without what is over: whole strips first, then pieces of the others."""
    left = list(over)
    kept = []
    for strip in sheet.strips:
        if all(number <= spare for number, spare in zip(strip.counts, left, strict=True)):
            left = [spare - number for number, spare in zip(strip.counts, left, strict=True)]
        else:
            kept.append(strip)
    thinner = []
    for strip in kept:
        spared = within(strip.counts, tuple(left))
        left = [spare - number for number, spare in zip(spared, left, strict=True)]
        thinner.append(Strip(strip.height, _less(strip.counts, spared)))
    return SheetCut(sheet.way, _together(kinds, sheet.way, thinner))


def _less(counts: Counts, spared: Counts) -> Counts:
    return tuple(number - spare for number, spare in zip(counts, spared, strict=True))


def _together(kinds: Sequence[Kind], way: Direction, strips: Iterable[Strip]) -> tuple[Strip, ...]:
    """The same pieces in as few strips as first fit gives, none higher than it must be."""
    kept: list[Strip] = []
    for strip in sorted(strips, key=lambda one: (-one.height, one.counts)):
        for place, other in enumerate(kept):
            both = Strip(other.height, summed((strip, other), len(kinds)))
            if _fits(way, both):
                kept[place] = both
                break
        else:
            kept.append(strip)
    lowest = (_lowest(way, strip) for strip in kept)
    return tuple(sorted(lowest, key=lambda one: (-one.height, one.counts)))


def _lowest(way: Direction, strip: Strip) -> Strip:
    heights = (height for height in way.zone.heights if height < strip.height)
    lower = (Strip(height, strip.counts) for height in heights)
    return next((one for one in lower if _fits(way, one)), strip)


def _fits(way: Direction, strip: Strip) -> bool:
    return way.zone.fits(strip.height, strip.counts)
