"""What of one fabric may be planned freely, in whole numbers, and what is cut as in plain cutting.

Whole strips, strips that are joined end to end (with all letters cut from what these leave), the
binding and what fits no strip stay as they are; all else is the planner's to lay.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import lcm
from typing import Final, NamedTuple

from patternbook.cutting.fabric import Laid
from patternbook.cutting.groups import Group
from patternbook.cutting.letters import strips_cut
from patternbook.cutting.packing import Item
from patternbook.cutting.planner.records import Kind, Manner, Task
from patternbook.cutting.records import BINDING, Strip
from patternbook.quilt.records import Quilt

# A length that three folds bring under the ruler; a longer block cannot be cut along the cloth.
LONGEST: Final = {"in": 8 * Fraction(24), "cm": 8 * Fraction(60)}


class Wish(NamedTuple):
    """Like cuts of one letter: `along` the strip, `across` it. `lengthwise`: along the selvedge,
    where `along` is its length and `across` what it takes of the width."""

    letter: str
    along: Fraction
    across: Fraction
    number: int
    use: str | None
    strip: bool
    lengthwise: bool


@dataclass(frozen=True)
class Wishes:
    """What is left to the planner, and the strips (with the letters whose they are) that are not.

    `unit` is the length that all lengths are whole numbers of."""

    free: tuple[Wish, ...]
    fixed: tuple[tuple[str, Strip], ...]
    unit: Fraction

    def whole(self, length: Fraction) -> int:
        """A length in units."""
        return int(length / self.unit)

    @property
    def fixed_length(self) -> Fraction:
        """The cloth that the strips take which are not planned."""
        return sum((strip.cloth for _, strip in self.fixed), Fraction(0))


def wishes(quilt: Quilt, laid: Laid) -> Wishes:
    """What may be planned of a fabric that is laid out plainly."""
    free: list[Wish] = []
    fixed: list[tuple[str, Strip]] = []
    for group in laid.groups:
        if group.host is None or _stays(group):
            fixed += _as_it_is(laid, group)
        else:
            free += _free(group)
            fixed += [(group.host.letter, strip) for strip in _whole_strips(group, laid)]
    fixed += [pair for pair in _owned(laid) if pair[0] == BINDING]
    return Wishes(tuple(free), tuple(fixed), _unit(quilt, laid, free))


def _stays(group: Group) -> bool:
    """Whether the group is cut as in plain cutting: nothing that is joined is planned anew."""
    joined = any(strip.join for strip in group.strips)
    return joined or bool(group.unlaid) or bool(group.too_long)


def _owned(laid: Laid) -> Iterator[tuple[str, Strip]]:
    for place, strip in enumerate(laid.strips):
        yield laid.owners[place], strip


def _as_it_is(laid: Laid, group: Group) -> list[tuple[str, Strip]]:
    letter = group.host.letter if group.host else ""
    return [pair for pair in _owned(laid) if pair[0] == letter]


def _whole_strips(group: Group, laid: Laid) -> Iterator[Strip]:
    for strip in group.strips:
        if strip.cuts and strip.cuts[0].whole:
            yield strip
    if group.host and group.host.is_strip and not group.lengthwise:
        spare = strips_cut(group) - sum(strip.times for strip in group.strips)
        if spare > 0:
            yield Strip(group.wide, laid.cloth.run, spare)


def _free(group: Group) -> Iterator[Wish]:
    for member in group.members:
        found: dict[Item, int] = {}
        for item in (*member.items, *(member.whole if group.lengthwise else ())):
            like = item._replace(columns=0, lanes=1, most=None)
            found[like] = found.get(like, 0) + item.columns * item.lanes
        for item, number in found.items():
            yield _wish(group, item, number, strip=member.piece.is_strip)


def _wish(group: Group, item: Item, number: int, *, strip: bool) -> Wish:
    along, across = item.along, item.across
    if group.lengthwise and not strip:
        along, across = across, along
    return Wish(item.letter, along, across, number, item.use, strip, group.lengthwise)


def _unit(quilt: Quilt, laid: Laid, free: Iterable[Wish]) -> Fraction:
    sides = [side for wish in free for side in (wish.along, wish.across)]
    cloth = laid.cloth
    more = [cloth.run, quilt.settings.spare, shop_step(quilt)]
    more += [side for side in (cloth.deep, cloth.roll) if side is not None]
    more += [strip.cloth for strip in laid.strips]
    return Fraction(1, lcm(*(length.denominator for length in (*sides, *more))))


def shop_step(quilt: Quilt) -> Fraction:
    """The length by which cloth is sold."""
    settings, system = quilt.settings, quilt.system
    step = settings.yard_step if system.unit == "in" else settings.metre_step
    return step * system.bolt


def task(quilt: Quilt, laid: Laid, wished: Wishes, manner: Manner) -> Task:
    """The question put to the planner for cloth off the bolt."""
    highest = Fraction(24) if quilt.system.unit == "in" else Fraction(60)
    return Task(
        width=wished.whole(laid.cloth.run),
        kinds=tuple(kinds(laid, wished, lengthwise=False)),
        manner=manner,
        # Cloth that shrinks is not bought in whole steps of what is left of it: the shortest then.
        step=1 if quilt.settings.shrinkage else wished.whole(shop_step(quilt)),
        allowance=wished.whole(wished.fixed_length + quilt.settings.spare),
        lengthwise=tuple(kinds(laid, wished, lengthwise=True)),
        highest=wished.whole(highest),
        longest=wished.whole(LONGEST[quilt.system.unit]),
    )


def kinds(laid: Laid, wished: Wishes, *, lengthwise: bool) -> Iterator[Kind]:
    """The free pieces as the planner knows them: by their place among the wishes."""
    turns = not laid.cloth.fabric.one_way
    for place, wish in enumerate(wished.free):
        if wish.lengthwise == lengthwise:
            yield Kind(
                str(place),
                wished.whole(wish.along),
                wished.whole(wish.across),
                wish.number,
                turns and not wish.strip,
                wish.strip,
            )
