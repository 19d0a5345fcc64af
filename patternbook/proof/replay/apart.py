"""The pieces of a strip taken apart again with nothing but straight cuts right across."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

from patternbook.notice import Notice
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.proof.replay.lay import Lain, Lies, Replayed


class Knot(NamedTuple):
    """Pieces that no straight cut parts; `upon` where two of them lie on the same cloth."""

    pieces: tuple[Lies, ...]
    upon: tuple[Lies, Lies] | None


def apart(cloth: Replayed, lain: Lain) -> Iterator[Notice]:
    """Errors where pieces lie one on the other, outside the strip, or cannot be cut apart."""
    yield from _inside(cloth, lain)
    for knot in knots(lain.pieces):
        letters = " and ".join(dict.fromkeys(one.letter for one in knot.upon or knot.pieces))
        place = part_place(cloth.quilt, knot.pieces[0].letter)
        if knot.upon:
            at = shown(cloth.length(max(one.left for one in knot.upon)), cloth.quilt)
            message = f"{letters}: two lie one on the other, {at} from the end of their strip."
            yield recounted(cloth.quilt, "cut-overlap", "R6", message, place)
        else:
            message = f"{letters}: no cut across the strip, then one along it, parts them."
            yield recounted(cloth.quilt, "cut-straight", "R6", message, place)


def knots(pieces: Sequence[Lies]) -> Iterator[Knot]:
    """Sub-cuts across the strip first, cross-cuts of each sub-cut next; then each piece lies alone
    (and is trimmed where it is smaller), or it cannot be had."""
    for column in _parted(pieces, lambda one: (one.left, one.right)):
        if len(column) > 1:
            for row in _parted(column, lambda one: (one.top, one.bottom)):
                if len(row) > 1:
                    yield Knot(tuple(row), next(filter(_touch, combinations(row, 2)), None))


def _parted(pieces: Sequence[Lies], ends: Callable[[Lies], tuple[int, int]]) -> list[list[Lies]]:
    """Groups between which a straight cut goes right across."""
    groups: list[list[Lies]] = []
    reached = -1
    for begins, end, one in sorted((*ends(one), one) for one in pieces):
        if begins >= reached:
            groups.append([one])
        else:
            groups[-1].append(one)
        reached = max(end, reached)
    return groups


def _touch(pair: tuple[Lies, Lies]) -> bool:
    one, other = pair
    beside = one.right <= other.left or other.right <= one.left
    return not (beside or one.bottom <= other.top or other.bottom <= one.top)


def _inside(cloth: Replayed, lain: Lain) -> Iterator[Notice]:
    """Each piece ends on its strip; the first that does not is told."""
    for one in lain.pieces:
        over = {"end": one.right - lain.run, "edge": one.bottom - lain.wide}
        for side, past in over.items():
            if past > 0:
                by = shown(cloth.length(past), cloth.quilt)
                message = f"{one.letter} ends {by} past the {side} of its strip."
                place = part_place(cloth.quilt, one.letter)
                yield recounted(cloth.quilt, "cut-outside", "R6", message, place)
                return
