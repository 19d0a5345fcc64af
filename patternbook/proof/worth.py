"""What one strip of cloth can be worth at given prices: the stages of cutting reckoned through in
whole numbers, with no search of a planner's."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Mapping, Sequence
from math import gcd
from typing import Final, Literal, NamedTuple

MILLION: Final = 1_000_000
Manner = Literal["shared", "thrifty"]


class Priced(NamedTuple):
    """Like pieces: their sides along the strip and across it, how many are wanted, whether they
    may be turned, whether they want strips of their own width, and the price of one."""

    along: int
    across: int
    number: int
    turns: bool
    own_width: bool
    price: int

    def lays(self, width: int) -> Iterator[tuple[int, int]]:
        """(along, across) of each way in which it lies in a strip so long."""
        if self.along <= width:
            yield self.along, self.across
        turned = self.turns and not self.own_width and self.along != self.across
        if turned and self.across <= width:
            yield self.across, self.along


class Cloth(NamedTuple):
    """Cloth to be cut into strips `width` long, each no wider than the cap (None: any); `highest`
    is the widest a strip may be, unless a piece is wider."""

    width: int
    highest: int | None = None
    cap: int | None = None


def strip_widths(pieces: Sequence[Priced], cloth: Cloth, manner: Manner) -> list[int]:
    """Every width of strip that this manner of cutting has: the sides of pieces; in thrifty
    cutting also all sums of them that are no wider than the widest strip."""
    sides: set[int] = set()
    usual: set[int] = set()
    narrow = [0]  # the narrowest strip of each kind that no strip of a usual width yields
    loose: set[int] = set()
    for piece in pieces:
        mine = {high for _, high in piece.lays(cloth.width) if _under(high, cloth.cap)}
        low = {high for high in mine if _under(high, cloth.highest)}
        sides |= mine
        usual |= low
        if mine and not low:
            narrow.append(min(mine))
        loose |= set() if piece.own_width else mine
    if manner == "shared":
        return sorted(usual.union(narrow) - {0})
    most = max(cloth.highest or max(sides, default=0), *narrow)
    return sorted(sides.union(sums(loose, most if cloth.cap is None else min(most, cloth.cap))))


def _under(width: int, most: int | None) -> bool:
    return most is None or width <= most


def sums(sides: Iterable[int], most: int) -> list[int]:
    """All sums of these, each as often as need be, up to so much."""
    every = (1 << (most + 1)) - 1
    found = 1
    for side in sides:
        step = side
        while step <= most:
            found |= (found << step) & every
            step *= 2
    return [total for total in range(1, most + 1) if found >> total & 1]


def worth(pieces: Sequence[Priced], cloth: Cloth, manner: Manner) -> Iterator[tuple[int, int]]:
    """Each width of strip, with the most (in millionths) that a strip so wide can be worth."""
    paid = [piece for piece in pieces if piece.price > 0]
    for wide in strip_widths(pieces, cloth, manner):
        yield wide, (_shared if manner == "shared" else _thrifty)(paid, cloth.width, wide)


def _shared(pieces: Sequence[Priced], width: int, wide: int) -> int:
    """Each sub-cut holds a stack of one kind; no more of a kind than are wanted."""
    row = {0: 0}
    for piece in pieces:
        ways = [(along, _stack(piece, across, wide)) for along, across in piece.lays(width)]
        ways = [way for way in ways if way[1]]
        if ways:
            row = _added(row, list(_steps(ways, piece, width)), width)
    return max(row.values())


def _stack(piece: Priced, across: int, wide: int) -> int:
    return int(across == wide) if piece.own_width else wide // across


def _steps(ways: Sequence[tuple[int, int]], piece: Priced, width: int) -> Iterator[tuple[int, int]]:
    """(length, worth) of 1, 2, 3, … sub-cuts of the kind, the shortest length for so many."""
    least = [0]
    for count in range(1, piece.number + 1):
        length = min(along + least[max(0, count - stack)] for along, stack in ways)
        if length > width:
            break
        least.append(length)
    for count in range(1, len(least)):
        if count + 1 == len(least) or least[count + 1] > least[count]:
            yield least[count], count * piece.price


def _added(row: Mapping[int, int], steps: Sequence[tuple[int, int]], width: int) -> dict[int, int]:
    """What so much of the strip is worth once another kind was offered; lengths that are worth no
    more than a shorter one are left out."""
    found = dict(row)
    for taken, value in row.items():
        for length, more in steps:
            total = taken + length
            if total > width:
                break
            if value + more > found.get(total, -1):
                found[total] = value + more
    return _rising(found)


def _rising(row: Mapping[int, int]) -> dict[int, int]:
    kept, best = {}, -1
    for length in sorted(row):
        if row[length] > best:
            best = row[length]
            kept[length] = best
    return kept


def _thrifty(pieces: Sequence[Priced], width: int, wide: int) -> int:
    """Each sub-cut is as long as some piece and holds a stack of any that are no longer; of a kind
    no more to a sub-cut than are wanted. What stands in several sub-cuts is not added up: a strip
    is worth no more than this, and perhaps less."""
    stacks = list(_stacks([piece for piece in pieces if not piece.own_width], width, wide))
    alone = [piece for piece in pieces if piece.own_width and piece.across == wide]
    row = _as_often_as_fits(stacks, width)
    for piece in alone:
        fit = min(piece.number, width // piece.along)
        steps = [(count * piece.along, count * piece.price) for count in range(1, fit + 1)]
        row = _added(row, steps, width)
    return max(row.values())


def _as_often_as_fits(stacks: Sequence[tuple[int, int]], width: int) -> dict[int, int]:
    """What each length is worth, filled with these lengths as often as need be."""
    cell = gcd(*(along for along, _ in stacks)) or width
    best = [0] * (width // cell + 1)
    lengths = [(along // cell, value) for along, value in stacks]
    for here in range(1, len(best)):
        offered = (best[here - long] + value for long, value in lengths if long <= here)
        best[here] = max(best[here - 1], max(offered, default=0))
    return _rising({here * cell: value for here, value in enumerate(best)})


def _stacks(pieces: Sequence[Priced], width: int, wide: int) -> Iterator[tuple[int, int]]:
    """(length, worth) of the best sub-cut of each length; those no better than a shorter one are
    left out."""
    lies = sorted(
        (along, across, piece)
        for piece in pieces
        for along, across in piece.lays(width)
        if across <= wide
    )
    row, best = {0: 0}, 0
    for place, (along, across, piece) in enumerate(lies):
        most = min(piece.number, wide // across)
        row = _added(row, [(n * across, n * piece.price) for n in range(1, most + 1)], wide)
        longer = place + 1 == len(lies) or lies[place + 1][0] > along
        if longer and max(row.values()) > best:
            best = max(row.values())
            yield along, best


def sheet_worth(pieces: Sequence[Priced], run: int, deep: int) -> int:
    """The most that a pre-cut piece can be worth with strips along its side `run`, one over the
    other as deep as it is: each strip holds no more of a kind than are wanted, all together
    perhaps more."""
    strips = [one for one in worth(pieces, Cloth(run, None, deep), "shared") if one[1]]
    return max(_as_often_as_fits(strips, deep).values())


def next_length(sides: Iterable[int], base: int, bound: int, most: int) -> int:
    """The least length from the bound on to which strips of these widths can add up, over the
    base; `most` where there is none below it."""
    reach = [base, *(base + total for total in sums(sides, max(0, most - base)))]
    place = bisect_right(reach, bound - 1)
    return reach[place] if place < len(reach) else max(bound, most)
