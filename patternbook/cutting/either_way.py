"""Long pieces across the cloth or along it: in shared and thrifty cutting the way that buys less,
where the pattern leaves it open."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import combinations
from typing import Final

from patternbook.cutting.as_laid import said
from patternbook.cutting.buying import Basket, rounded
from patternbook.cutting.fabric import FabricCut, Wanted, cut_fabric
from patternbook.cutting.groups import Group
from patternbook.cutting.planned import planned
from patternbook.cutting.records import Style
from patternbook.forms import by_length
from patternbook.quilt.records import Quilt

# So many letters of one fabric are tried in every choice of them, those of the most cloth first.
MOST: Final = 3
PIECES: Final = 24  # more of one letter are no few long ones


@dataclass(frozen=True)
class Way:
    """One fabric with its pieces lying so, and how it is then cut."""

    wanted: Wanted
    cut: FabricCut
    turned: frozenset[str] = frozenset()


def best_way(quilt: Quilt, wanted: Wanted, plain: FabricCut, style: Style) -> Way:
    """The fabric in this style with its long pieces as they take least to be bought, across the
    cloth where that is no more; its bound holds whichever way they lie."""
    across = Way(wanted, planned(quilt, wanted, plain, style))
    if style == "plain":
        return across
    found = [across, *_turned(quilt, wanted, plain, style)]
    best = min(found, key=lambda way: (_bought(quilt, way), len(way.turned)))
    return _bounded(quilt, best, [way for way in found if way is not best])


def _turned(quilt: Quilt, wanted: Wanted, plain: FabricCut, style: Style) -> Iterator[Way]:
    """With every choice of the letters that may lie along the cloth; not where they do not fit it
    so, or would be longer than can be cut."""
    letters = _open(wanted, plain)[:MOST]
    for number in range(1, len(letters) + 1):
        for chosen in combinations(letters, number):
            turned = lengthwise(wanted, frozenset(chosen))
            so = cut_fabric(quilt, turned)
            cut = planned(quilt, turned, so, style)
            if cut.plan.style == style and not any(_not_laid(group) for group in so.laid.groups):
                yield Way(turned, cut, frozenset(chosen))


def lengthwise(wanted: Wanted, letters: frozenset[str]) -> Wanted:
    """The same with these letters along the cloth."""
    hosts = tuple(
        (replace(host, along="length") if host.letter in letters else host, guests)
        for host, guests in wanted.hosts
    )
    return replace(wanted, hosts=hosts)


def _open(wanted: Wanted, plain: FabricCut) -> list[str]:
    """The letters of which nothing says how they lie, those of the most cloth first: what is
    joined, and strips of which lengths are longer than half the cloth is wide."""
    if not by_length(wanted.fabric.form) or wanted.fabric.one_way:
        return []
    found = [
        (sum((strip.cloth for strip in group.strips), Fraction(0)), group.host.letter)
        for group in plain.laid.groups
        if group.host and not said(group.host) and _is_long(group)
    ]
    return [letter for _, letter in sorted(found, key=lambda one: (-one[0], one[1]))]


def _is_long(group: Group) -> bool:
    """Whether its pieces may lie along the cloth, and have something to gain: they share their
    strips with no other letter, and none is sewn as long as the cloth is wide, nor kept spare."""
    if len(group.members) != 1 or _not_laid(group):
        return False
    piece, run = group.members[0].piece, group.cloth.run
    if piece.is_strip and (piece.spare or any(one.whole for one in piece.runs)):
        return False
    if sum(item.columns * item.lanes for item in group.members[0].items) > PIECES:
        return False
    joined = any(strip.join for strip in group.strips)
    return joined or any(one.length * 2 > run for one in piece.runs)


def _not_laid(group: Group) -> bool:
    return bool(group.unlaid or group.too_long)


def _bought(quilt: Quilt, way: Way) -> Fraction:
    """What is bought of it, whatever she states."""
    return _rounded(quilt, way, way.cut.plan.length)


def _rounded(quilt: Quilt, way: Way, length: Fraction) -> Fraction:
    plan, wanted = way.cut.plan, way.wanted
    basket = Basket(wanted.fabric, plan.buy.lines, plan.strips, plan.sheets, way.cut.letters)
    return rounded(quilt, basket, length)


def _bounded(quilt: Quilt, best: Way, others: list[Way]) -> Way:
    """No plan of this style is shorter, whichever way the long pieces lie."""
    if not others:
        return best
    plan = best.cut.plan
    bound = min(plan.bound, *(way.cut.plan.bound for way in others))
    proven = _rounded(quilt, best, bound) == _bought(quilt, best)
    plan = replace(
        plan,
        bound=bound,
        proven=proven,
        limit_hit=plan.limit_hit or not proven,
        other_ways=tuple(way.cut.plan for way in others),
    )
    return replace(best, cut=replace(best.cut, plan=plan))
