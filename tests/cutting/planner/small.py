"""Small cutting tasks in few words, and the shortest plan of one by trying everything."""

from collections.abc import Iterator
from functools import cache

from patternbook.cutting.planner.records import Answer, Kind, Manner, Task

EIGHTH_YARD = 36  # in eighths of an inch


def kind(name: str, along: int, across: int, number: int, **more: bool) -> Kind:
    return Kind(name, along, across, number, **more)


def told(answer: Answer) -> list[str]:
    """`2 × 44: 3 A 84×44`: two strips 44 wide, three sub-cuts of A along the strip in each."""
    lines = []
    for strip in answer.strips:
        cuts = [
            f"{cut.pieces} {cut.kind} {cut.along}×{cut.across}"
            + (f" in {cut.columns}" if cut.columns != cut.pieces else "")
            for cut in strip.columns
        ]
        beside = " beside" if strip.beside else ""
        lines.append(f"{strip.times} × {strip.height}{beside}: {', '.join(cuts)}")
    return lines


def shortest(task: Task) -> int:
    """The length of the shortest plan of even, trimmed or shared cutting; by trying every strip
    after every other. For a handful of pieces."""
    strips = {
        (height, counts)
        for height in {side for one in task.kinds for _, side in _lays(one)}
        for counts in _yields(task, height)
    }

    @cache
    def least(left: tuple[int, ...]) -> int:
        if not any(left):
            return 0
        found = [
            height + least(tuple(max(0, a - b) for a, b in zip(left, counts, strict=True)))
            for height, counts in strips
            if any(a and b for a, b in zip(left, counts, strict=True))
        ]
        return min(found)

    return least(tuple(one.number for one in task.kinds))


def _lays(one: Kind) -> set[tuple[int, int]]:
    ways = {(one.along, one.across)}
    return ways | {(one.across, one.along)} if one.turns and not one.own_width else ways


def _yields(task: Task, height: int) -> set[tuple[int, ...]]:
    """What the strips of a height can yield: every row of sub-cuts that fits the width."""
    cuts = [
        (along, place, count)
        for place, one in enumerate(task.kinds)
        for along, across in _lays(one)
        for count in _stacks(task.manner, one, across, height)
    ]
    nothing = (0,) * len(task.kinds)
    reached = {(0, nothing)}
    fresh = reached
    while fresh:
        fresh = set(_longer(task, cuts, fresh)) - reached
        reached = reached | fresh
    return {counts for _, counts in reached if any(counts)}


def _stacks(manner: Manner, one: Kind, across: int, height: int) -> list[int]:
    """How many pieces one sub-cut may hold, at most."""
    if manner == "even" or one.own_width:
        return [1] if across == height else []
    if across > height:
        return []
    return [height // across if manner == "shared" else 1]


def _longer(
    task: Task, cuts: list[tuple[int, int, int]], rows: set[tuple[int, tuple[int, ...]]]
) -> Iterator[tuple[int, tuple[int, ...]]]:
    for taken, counts in rows:
        for along, place, count in cuts:
            number = min(task.kinds[place].number, counts[place] + count)
            if taken + along <= task.width and number > counts[place]:
                yield taken + along, (*counts[:place], number, *counts[place + 1 :])
