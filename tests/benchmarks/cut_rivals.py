"""Other ways to cut the same pieces: each kind from its own strips, shelves, and free packing by
a general-purpose library."""

from collections.abc import Callable, Iterator
from typing import Any, Final, NamedTuple

import rectpack

from patternbook.cutting.planner.records import Kind, Task

Side = tuple[int, int]  # along the strip, across it


def _ways(kind: Kind, width: int) -> list[Side]:
    ways = [(kind.along, kind.across), (kind.across, kind.along)]
    return [way for way in ways[: 2 if kind.turns else 1] if way[0] <= width]


def _rows(kind: Kind, width: int, way: Side) -> int:
    """What a kind takes of the cloth in strips of its own."""
    return -(-kind.number // (width // way[0])) * way[1]


def own_strips(task: Task) -> int:
    """The usual way by hand: each kind from its own strips, the better way round."""
    width = task.width
    return sum(min(_rows(kind, width, way) for way in _ways(kind, width)) for kind in task.kinds)


def shelves(task: Task) -> int:
    """First fit, highest first; the best of three rules for which way round a kind lies."""
    width = task.width
    rules: list[Callable[[Kind, Side], Any]] = [
        lambda _, way: -way[0],
        lambda _, way: way[0],
        lambda kind, way: (_rows(kind, width, way), way[1]),
    ]
    return min(_shelved(task, rule) for rule in rules)


def _shelved(task: Task, rule: Callable[[Kind, Side], Any]) -> int:
    pieces = []
    for kind in task.kinds:
        way = min(_ways(kind, task.width), key=lambda way, kind=kind: rule(kind, way))  # type: ignore[misc]
        pieces += [way] * kind.number
    left: list[int] = []
    length = 0
    for along, across in sorted(pieces, key=lambda way: (-way[1], -way[0])):
        shelf = next((place for place, room in enumerate(left) if room >= along), None)
        if shelf is None:
            left.append(task.width - along)
            length += across
        else:
            left[shelf] -= along
    return length


class Packed(NamedTuple):
    """The shortest free packing. `stages`: how many times the direction of cutting straight
    through changes, counted from the first cuts across the cloth; None: it cannot be so cut."""

    length: int
    stages: int | None


class Lying(NamedTuple):
    """A piece on the cloth."""

    x: int
    y: int
    along: int
    across: int


WAYS: Final = (
    rectpack.MaxRectsBssf,
    rectpack.MaxRectsBl,
    rectpack.SkylineBl,
    rectpack.SkylineMwfl,
    rectpack.GuillotineBssfMinas,
    rectpack.GuillotineBafSas,
)
ORDERS: Final = (rectpack.SORT_AREA, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE)
SLOW: Final = 350  # pieces; more are not packed in the ways that try every free place
WORK: Final = 20_000  # pieces laid for one list, in all tries together
HALVINGS: Final = 6


def packed(task: Task) -> Packed:
    """The best of six ways by three orders, the length of each halved down by tries."""
    pieces = [(k.along, k.across) for k in task.kinds for _ in range(k.number)]
    turns = all(kind.turns or kind.along == task.width for kind in task.kinds)
    area = -(-sum(along * across for along, across in pieces) // task.width)
    best: list[Lying] = []
    longest = shelves(task) * 13 // 10 + 40
    tries = WORK // len(pieces)
    for way in WAYS[2 if len(pieces) > SLOW else 0 :]:
        for order in ORDERS:
            low, high, halvings = area, longest, 0
            while low <= high and halvings <= HALVINGS and tries:
                length = (low + high) // 2 if halvings else high
                laid = _lay(way, order, (task.width, length), pieces, turns)
                halvings, tries = halvings + 1, tries - 1
                if laid:
                    best, high = laid, _length(laid) - 1
                elif halvings == 1:
                    break
                else:
                    low = length + 1
            longest = _length(best) - 1 if best else longest
    return Packed(_length(best), stages(best))


def _length(laid: list[Lying]) -> int:
    return max(one.y + one.across for one in laid)


def _lay(
    way: Any, order: Any, cloth: tuple[int, int], pieces: list[Side], turns: bool
) -> list[Lying]:
    """Where all the pieces lie, or nothing where some do not fit."""
    mode, bins = rectpack.PackingMode.Offline, rectpack.PackingBin.BBF
    packer = rectpack.newPacker(mode, bins, way, order, rotation=turns)
    for along, across in pieces:
        packer.add_rect(along, across)
    packer.add_bin(*cloth)
    packer.pack()
    laid = [Lying(x, y, along, across) for _, x, y, along, across, _ in packer.rect_list()]
    return laid if len(laid) == len(pieces) else []


def stages(laid: list[Lying], *, across: bool = True, whole: bool = False) -> int | None:
    """The least number of stages, trimming not counted. `whole`: the other direction found no
    cut through it."""
    if len(laid) == 1:
        return 0
    groups = list(_apart(laid, across=across))
    if len(groups) == 1 and whole:
        return None
    whole = len(groups) == 1
    below = [stages(group, across=not across, whole=whole) for group in groups]
    return None if None in below else 1 + max(one or 0 for one in below)


def _apart(laid: list[Lying], *, across: bool) -> Iterator[list[Lying]]:
    """What lies between cuts straight through."""
    ends = [(one.y, one.y + one.across) if across else (one.x, one.x + one.along) for one in laid]
    group: list[Lying] = []
    reach = 0
    for (start, end), one in sorted(zip(ends, laid, strict=True)):
        if group and start >= reach:
            yield group
            group = []
        group.append(one)
        reach = max(reach, end)
    yield group
