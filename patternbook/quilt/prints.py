"""Which of a fabric's many prints each patch is shown in, so that no two alike touch."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from difflib import get_close_matches

from patternbook.notice import Mark, Notice
from patternbook.quilt.dealt import GROUP, PIECE, Scrap, items
from patternbook.quilt.joins import touching
from patternbook.quilt.mixing import Dealing
from patternbook.quilt.place import Patch, patches
from patternbook.quilt.records import Fabric, Quilt


def mixed(
    quilt: Quilt, top: Sequence[Patch] | None = None
) -> tuple[Mapping[int, int], tuple[Notice, ...]]:
    """The print (from 1) of each patch of the top that has a choice, by its number in `patches`;
    and what cannot be kept apart. `top` saves finding the patches once more."""
    if quilt.top is None or all(fabric.prints < 2 for fabric in quilt.fabrics.values()):
        return {}, ()
    laid = patches(quilt, quilt.top) if top is None else top
    scraps = tuple(_scraps(laid, quilt))
    pairs = _alike_pairs(scraps)
    dealt = tuple(items(scraps, pairs, quilt))
    together = {patch: number for number, item in enumerate(dealt) for patch in item.patches}
    dealing = Dealing(dealt, _beside(pairs, together, laid, quilt))
    prints = dealing.deal()
    return dict(sorted(prints.items())), tuple(_told(dealing.clashes(), laid, quilt))


def nameless(quilt: Quilt) -> Iterator[Notice]:
    """Errors where a fabric has one print per something that the quilt does not hold."""
    for fabric in quilt.fabrics.values():
        per = fabric.one_print_per
        if fabric.prints < 2 or quilt.top is None or per in {PIECE, GROUP, *quilt.units}:
            continue
        place = fabric.key_places.get("one-print-per") or fabric.place
        near = get_close_matches(per, (PIECE, GROUP, *quilt.units), 1)
        yield Notice(
            "print-unit",
            "error",
            "sewing",
            f"'{fabric.name}' has one print per {per}, and no unit is called that.",
            (Mark(place, "named here"),) if place else (),
            "R19",
            (quilt.size,),
            hint=f"Did you mean {near[0]}?" if near else "Write piece, group or a unit's name.",
        )


def _scraps(laid: Sequence[Patch], quilt: Quilt) -> Iterator[Scrap]:
    for number, patch in enumerate(laid):
        fabric = _fabric(patch.letter, quilt)
        if fabric is not None and fabric.prints > 1:
            yield Scrap(number, patch, fabric)


def _fabric(letter: str, quilt: Quilt) -> Fabric | None:
    piece = quilt.pieces.get(letter)
    return quilt.fabrics.get(piece.fabric or "") if piece else None


def _alike_pairs(scraps: Sequence[Scrap]) -> tuple[tuple[int, int], ...]:
    """The patches of one fabric that share an edge, by their numbers among all patches."""
    pairs = touching([scrap.patch for scrap in scraps])
    return tuple(
        (scraps[one].number, scraps[other].number)
        for one, other in pairs
        if scraps[one].fabric is scraps[other].fabric
    )


def _beside(
    pairs: Iterable[tuple[int, int]],
    together: Mapping[int, int],
    laid: Sequence[Patch],
    quilt: Quilt,
) -> Mapping[int, Sequence[int]]:
    """The patches that are not to be alike: those that touch and are not dealt together."""
    beside: dict[int, list[int]] = {}
    for one, other in pairs:
        fabric = _fabric(laid[one].letter, quilt)
        if fabric and fabric.apart and together[one] != together[other]:
            beside.setdefault(one, []).append(other)
            beside.setdefault(other, []).append(one)
    return beside


def _told(
    clashes: Sequence[tuple[int, int]], laid: Sequence[Patch], quilt: Quilt
) -> Iterator[Notice]:
    by_fabric: dict[str, int] = {}
    for one, _ in clashes:
        fabric = _fabric(laid[one].letter, quilt)
        if fabric:
            by_fabric[fabric.name] = by_fabric.get(fabric.name, 0) + 1
    for name, pairs in by_fabric.items():
        fabric = quilt.fabrics[name]
        place = fabric.key_places.get("apart") or fabric.place
        places = "1 place" if pairs == 1 else f"{pairs} places"
        message = f"'{name}': with {fabric.prints} prints two alike touch at {places} of the top."
        yield Notice(
            "prints-touch",
            "warning" if "apart" in fabric.key_places else "advice",
            "sewing",
            message,
            (Mark(place, "kept apart here"),) if place else (),
            None,
            (quilt.size,),
            hint="Use more prints, or write `apart: no`.",
        )
