"""A strip of the top's spare cloth let into the backing, so that a length of cloth less will do."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Final, NamedTuple

from patternbook.cutting.backing import metres, panels, sides_for, sold_as
from patternbook.cutting.finishing import Insert, Panels, Patches, Seams
from patternbook.cutting.records import BackingPlan, FabricPlan
from patternbook.cutting.washing import before_washing
from patternbook.inch import ruler_up
from patternbook.quilt.records import Quilt

SHOWS: Final = {"in": Fraction(2), "cm": Fraction(5)}  # of a strip (common practice, no source)
MOST: Final = 4  # lengths that a strip stands for: one wider than that is half the back
WAYS: Final[tuple[Seams, ...]] = ("crosswise", "lengthwise")


class Spare(NamedTuple):
    """Cloth of one fabric that nothing is cut from: `deep` of its length, as wide as it is."""

    fabric: str
    deep: Fraction
    width: Fraction


class Wish(NamedTuple):
    """A strip that would do: the seams' direction, the lengths of cloth beside it, its cut width,
    how long it must be."""

    seams: Seams
    panels: int
    width: Fraction
    length: Fraction


def spares(quilt: Quilt, fabrics: Mapping[str, FabricPlan], but: str | None) -> tuple[Spare, ...]:
    """What is bought and not used of every fabric that is one piece of cloth, on the ruler's
    marks; not of the backing's own, which is what is being planned."""
    return tuple(
        Spare(name, plan.buy.spare // quilt.system.step * quilt.system.step, plan.width)
        for name, plan in fabrics.items()
        if name != but and plan.buy.amount is not None and plan.buy.spare > 0
        if name not in quilt.fabrics or quilt.fabrics[name].prints == 1
    )


def wishes(quilt: Quilt, plan: BackingPlan) -> Iterator[Wish]:
    """Every strip with which less cloth is bought than without any."""
    asked = quilt.backing
    if asked is None:
        return
    for seams in (asked.seams,) if asked.seams else WAYS:
        covered, each = sides_for(plan.size, seams)
        whole = panels(quilt, plan.size, plan.cloth_width, seams).panels
        for number in range(max(1, whole - MOST), whole):
            saves = number * each < (plan.whole or plan.best).length
            if saves and asked.stated_panels in {None, number}:
                joins = max(2, number)
                need = covered - number * plan.cloth_width + joins * 2 * plan.seam
                least = 2 * plan.seam + SHOWS[quilt.system.unit]
                width = max(ruler_up(need, quilt.system), least, asked.stated_insert or least)
                yield Wish(seams, number, width, each)


def patches(spare: Spare, width: Fraction, length: Fraction, seam: Fraction) -> Patches | None:
    """The spare cloth as patches for a strip: cut across the cloth, or along it, whichever gives
    more of the strip."""
    along = min(spare.width, length)
    ways = (
        Patches(spare.fabric, int(spare.deep // width), width, along),
        Patches(spare.fabric, int(spare.width // width), width, min(spare.deep, length)),
    )
    best = max(ways, key=lambda way: (way.number * (way.along - seam), -way.number))
    return best if best.number and best.along > seam else None


def made_of(used: tuple[Patches, ...], seam: Fraction) -> Fraction:
    """How long patches are, sewn end to end."""
    number = sum(one.number for one in used)
    total = sum((one.number * one.along for one in used), Fraction(0))
    return total - max(0, number - 1) * seam


def strip(wish: Wish, found: tuple[Spare, ...], seam: Fraction) -> tuple[Patches, ...]:
    """The fewest patches that come to its length; all there are where they do not."""
    given = (patches(spare, wish.width, wish.length, seam) for spare in found)
    longest = sorted((one for one in given if one), key=lambda one: (-one.along, one.fabric))
    used: tuple[Patches, ...] = ()
    rest = wish.length - seam  # each patch brings its length less one seam, and the first all
    for one in longest:
        if rest <= 0:
            break
        each = one.along - seam
        number = min(one.number, int(-(-rest // each)))
        rest -= number * each
        used = (*used, one._replace(number=number))
    return used


def with_strip(quilt: Quilt, plan: BackingPlan, found: tuple[Spare, ...]) -> BackingPlan:
    """The same backing with the strip let in that makes it cheapest; as it is where the spare
    cloth makes none."""
    made = [way for wish in wishes(quilt, plan) if (way := _panels(quilt, plan, wish, found))]
    if not made:
        return plan
    best = min(made, key=lambda way: (way.amount, way.insert.width if way.insert else 0, way.seams))
    whole = plan.fewest or plan.best
    return replace(plan, best=best, whole=whole, fewest=None)


def _panels(quilt: Quilt, plan: BackingPlan, wish: Wish, found: tuple[Spare, ...]) -> Panels | None:
    seam = 2 * plan.seam
    used = strip(wish, found, seam)
    length = made_of(used, seam)
    if length < wish.length:
        return None
    number, width = wish.panels, plan.cloth_width
    split = Fraction(int(width / 3)) if number == 1 else Fraction(0)
    insert = Insert(wish.width, wish.length, length, used, split)
    cloth, joins = number * wish.length, max(2, number)
    covered, _ = sides_for(plan.size, wish.seams)
    return Panels(
        wish.seams,
        number,
        wish.length,
        number * width + wish.width - joins * seam,
        cloth,
        sold_as(quilt, cloth, number),
        metres(before_washing(cloth, quilt), quilt),
        (covered - wish.width + joins * seam) / number,
        insert,
    )
