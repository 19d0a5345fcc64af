"""What is dealt one print together: a piece, a group, all of one unit, or a slice of a set."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Final, NamedTuple

from patternbook.forms import by_name
from patternbook.quilt.mixing import Dice, Item, Pool
from patternbook.quilt.place import Patch
from patternbook.quilt.records import Fabric, Piece, Quilt, StripSetMade, Unit

PIECE: Final = "piece"
GROUP: Final = "group"


class Scrap(NamedTuple):
    """A patch of a fabric with many prints: its number among all patches, and its fabric."""

    number: int
    patch: Patch
    fabric: Fabric


def items(
    scraps: Sequence[Scrap], pairs: Sequence[tuple[int, int]], quilt: Quilt
) -> Iterator[Item]:
    """Slices of strip sets by their sets; everything else as `one-print-per` says."""
    sliced: dict[tuple[str, ...], list[Scrap]] = {}
    single: dict[str, list[Scrap]] = {}
    for scrap in scraps:
        if _set_of(scrap.patch, quilt) is not None:
            sliced.setdefault(scrap.patch.within, []).append(scrap)
        else:
            single.setdefault(scrap.fabric.name, []).append(scrap)
    for of in single.values():
        yield from _of_fabric(of, pairs, quilt)
    yield from _slices(sliced, quilt)


def _set_of(patch: Patch, quilt: Quilt) -> Unit | None:
    """The strip set that a patch is sliced from."""
    unit = quilt.units.get(patch.within[-1].split()[0])
    return unit if unit and isinstance(unit.made, StripSetMade) else None


def _of_fabric(
    scraps: Sequence[Scrap], pairs: Sequence[tuple[int, int]], quilt: Quilt
) -> Iterator[Item]:
    fabric = scraps[0].fabric
    pool = Pool(fabric.prints, _room(fabric), Dice(fabric.seed))
    for patches_ in _together(scraps, pairs, fabric):
        shows = [(number,) * len(patches_) for number in range(1, fabric.prints + 1)]
        weight = sum((_weight(one, fabric, quilt) for one in patches_), Fraction(0))
        yield Item(pool, tuple(one.number for one in patches_), shows, weight)


def _together(
    scraps: Sequence[Scrap], pairs: Sequence[tuple[int, int]], fabric: Fabric
) -> Iterable[Sequence[Scrap]]:
    if fabric.one_print_per == PIECE:
        return [(scrap,) for scrap in scraps]
    if fabric.one_print_per == GROUP:
        return _groups(scraps, pairs)
    within: dict[tuple[str, ...], list[Scrap]] = {}
    for scrap in scraps:
        within.setdefault(_inside(scrap, fabric.one_print_per), []).append(scrap)
    return within.values()


def _inside(scrap: Scrap, unit: str) -> tuple[str, ...]:
    """Which one of the units a patch is in; itself where it is in none."""
    path = scrap.patch.within
    for depth, name in enumerate(path, 1):
        if name.split()[0] == unit:
            return path[:depth]
    return (*path, str(scrap.number))


def _groups(scraps: Sequence[Scrap], pairs: Sequence[tuple[int, int]]) -> Iterable[Sequence[Scrap]]:
    """Patches of one letter that touch, directly or through others of it."""
    letters = {scrap.number: scrap.patch.letter for scrap in scraps}
    leader = {scrap.number: scrap.number for scrap in scraps}

    def first(number: int) -> int:
        while leader[number] != number:
            leader[number] = number = leader[leader[number]]
        return number

    for one, other in pairs:
        if one in letters and letters[one] == letters.get(other):
            low, high = sorted((first(one), first(other)))
            leader[high] = low
    groups: dict[int, list[Scrap]] = {}
    for scrap in scraps:
        groups.setdefault(first(scrap.number), []).append(scrap)
    return groups.values()


def _room(fabric: Fabric) -> Fraction | None:
    """How much length the strips of one print give, where a roll holds so many strips."""
    if not by_name[fabric.form].strips or fabric.size is None or fabric.pack is None:
        return None
    strips = fabric.pack * (fabric.stated_packs or 1) // fabric.prints
    return Fraction(strips) * _long(fabric) if strips else None


def _long(fabric: Fabric) -> Fraction:
    sides = fabric.size or ()
    return max((side for side in sides if side is not None), default=fabric.width)


def _weight(scrap: Scrap, fabric: Fabric, quilt: Quilt) -> Fraction:
    """What a patch takes of its print: of a strip its length, else one."""
    piece: Piece = quilt.pieces[scrap.patch.letter]
    if by_name[fabric.form].strips and piece.cut.down is not None:
        return max(piece.cut.across, piece.cut.down)
    return Fraction(1)


# ---- strip sets


def _slices(sliced: Mapping[tuple[str, ...], list[Scrap]], quilt: Quilt) -> Iterator[Item]:
    """Each slice is dealt a set, and with it the prints of the set's strips."""
    by_unit: dict[str, list[list[Scrap]]] = {}
    for scraps in sliced.values():
        unit = _set_of(scraps[0].patch, quilt)
        if unit is not None:
            by_unit.setdefault(unit.name, []).append(scraps)
    for name, slices in by_unit.items():
        made = quilt.units[name].made
        if isinstance(made, StripSetMade):
            fabrics = [scrap.fabric for scrap in slices[0]]
            shows = _sets(fabrics, made.sets)
            pool = Pool(len(shows), Fraction(made.per_set), Dice(fabrics[0].seed))
            for scraps in slices:
                numbers = tuple(scrap.number for scrap in scraps)
                yield Item(pool, numbers, shows, Fraction(1))


def _sets(fabrics: Sequence[Fabric], sets: int) -> list[tuple[int, ...]]:
    """The prints of every set's strips: all used evenly, no two alike side by side."""
    pools = {fabric.name: Pool(fabric.prints, None, Dice(fabric.seed)) for fabric in fabrics}
    made = []
    for _ in range(max(1, sets)):
        strips: list[int] = []
        for number, fabric in enumerate(fabrics):
            pool = pools[fabric.name]
            left = strips[-1] if number and fabrics[number - 1] is fabric else None
            option = next(o for _, _, o in pool.order if not fabric.apart or o + 1 != left)
            pool.use(option, Fraction(1))
            strips.append(option + 1)
        made.append(tuple(strips))
    return made
