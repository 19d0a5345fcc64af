"""How lengths are shared out over strips: first fit, largest first, and end to end."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from patternbook.cutting.records import Cut


class Item(NamedTuple):
    """So many (`columns`) equal cuts of one letter, of `lanes` pieces each; `most` of them to a
    strip, where she says so."""

    letter: str
    along: Fraction
    across: Fraction
    columns: int
    lanes: int = 1
    use: str | None = None
    most: int | None = None


@dataclass(frozen=True)
class Filled:
    """So many strips that are filled alike, and what is left of each."""

    times: int
    left: Fraction
    taken: tuple[tuple[Item, int], ...] = ()

    def room(self, item: Item) -> int:
        """How many more cuts of this item one strip takes."""
        fits = int(self.left // item.along)
        if item.most is None:
            return fits
        already = sum(columns for other, columns in self.taken if other.letter == item.letter)
        return max(0, min(fits, item.most - already))

    def given(self, item: Item, columns: int, times: int) -> Filled:
        """`times` of the strips, once they have taken so many cuts of the item."""
        return Filled(times, self.left - columns * item.along, (*self.taken, (item, columns)))

    def cuts(self) -> tuple[Cut, ...]:
        """The cuts of one strip; those of equal size and use are told together."""
        pieces: Counter[tuple[str, Fraction, Fraction, str | None]] = Counter()
        lanes: dict[tuple[str, Fraction, Fraction, str | None], int] = {}
        for item, columns in self.taken:
            key = (item.letter, item.along, item.across, item.use)
            pieces[key] += columns * item.lanes
            lanes[key] = max(item.lanes, lanes.get(key, 1))
        return tuple(
            Cut(letter, along, across, number, lanes[letter, along, across, use], use)
            for (letter, along, across, use), number in pieces.items()
        )


def columns_of(item: Item, pieces: int) -> list[Item]:
    """So many pieces as full cuts of all lanes, and one cut of what remains."""
    full, rest = divmod(pieces, item.lanes)
    items = [item._replace(columns=full)] if full else []
    return items + ([item._replace(columns=1, lanes=rest)] if rest else [])


def first_fit(items: Iterable[Item], run: Fraction, begun: Sequence[Filled] = ()) -> list[Filled]:
    """Each cut goes into the first strip with room for it; a new one is taken where none has.

    `items` come in the order of cutting (largest first) and fit into one `run`. Strips that are
    filled alike stay together, so that hundreds of pieces cost no more than their kinds.
    """
    filled = list(begun)
    for item in items:
        filled = _placed(filled, item, run)
    return filled


def _placed(filled: Sequence[Filled], item: Item, run: Fraction) -> list[Filled]:
    placed: list[Filled] = []
    waiting = item.columns
    for strips in filled:
        waiting, shared = _shared(strips, item, waiting)
        placed += shared
    fresh = Filled(1, run)
    room = max(1, fresh.room(item))
    full, rest = divmod(waiting, room)
    if full:
        placed.append(fresh.given(item, room, full))
    if rest:
        placed.append(fresh.given(item, rest, 1))
    return placed


def _shared(strips: Filled, item: Item, waiting: int) -> tuple[int, list[Filled]]:
    """What still waits, and the strips in their order: full ones, one in part, untouched."""
    room = strips.room(item)
    if not waiting or not room:
        return waiting, [strips]
    full = min(strips.times, waiting // room)
    waiting -= full * room
    in_part = 1 if waiting and full < strips.times else 0
    shared = [strips.given(item, room, full)] if full else []
    if in_part:
        shared.append(strips.given(item, waiting, 1))
        waiting = 0
    untouched = strips.times - full - in_part
    if untouched:
        shared.append(Filled(untouched, strips.left, strips.taken))
    return waiting, shared


def strips_end_to_end(total: Fraction, run: Fraction, loss: Fraction) -> int | None:
    """How many strips give `total` once joined, each join taking `loss`.

    None where a join takes all that a further strip brings.
    """
    if total <= run:
        return 1
    if loss >= run:
        return None
    return int(-(-(total - loss) // (run - loss)))
