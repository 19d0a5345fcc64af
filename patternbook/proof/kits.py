"""Many kits recounted: every bag gets its pieces, every strip gives what it is said to, and no
more cloth is bought than for as many single kits."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.cutting.records import BINDING, BindingPlan, CuttingPlan, FabricPlan, Strip
from patternbook.notice import Notice
from patternbook.proof.double_entry import EACH
from patternbook.proof.recounted import recounted, shown
from patternbook.proof.replay import cut_as_planned
from patternbook.quilt.records import Piece, Quilt


def kits(quilt: Quilt, number: int, one: CuttingPlan, together: CuttingPlan) -> Iterator[Notice]:
    """Errors where the plan for so many kits is not that many times `one` of this quilt."""
    for letter, plan in one.letters.items():
        piece = quilt.pieces[letter]
        mine = _strips(together.fabrics[plan.fabric], letter)
        yield from _letter(quilt, piece, number, _strips(one.fabrics[plan.fabric], letter), mine)
    if one.binding is not None:
        mine = _strips(together.fabrics[one.binding.fabric], BINDING)
        yield from _binding(quilt, one.binding, number, mine)
    for name, single in one.fabrics.items():
        yield from _no_more(quilt, number, single, together.fabrics[name])
        yield from _room(quilt, together.fabrics[name])
        yield from cut_as_planned(quilt, together.fabrics[name])


def _strips(plan: FabricPlan, letter: str) -> list[Strip]:
    return [strip for strip in plan.strips if letter in strip.letters]


def _times(strips: list[Strip]) -> int:
    return sum(strip.times for strip in strips)


def _binding(quilt: Quilt, plan: BindingPlan, number: int, mine: list[Strip]) -> Iterator[Notice]:
    """Whole strips as many times over, or at least so many bias squares."""
    if plan.square is None:
        yield from _same(quilt, BINDING, number, plan.strips, _times(mine))
        return
    found = sum(strip.pieces(BINDING) for strip in mine)
    yield from _same(quilt, BINDING, number, plan.squares, min(found, number * plan.squares))


def _letter(
    quilt: Quilt, piece: Piece, number: int, of_one: list[Strip], mine: list[Strip]
) -> Iterator[Notice]:
    """Whole strips as many times over; of patches and lengths as many as the bags need."""
    if any(cut.letter == piece.letter and cut.whole for strip in mine for cut in strip.cuts):
        shared = any(len(strip.letters) > 1 for strip in of_one)
        if not shared:
            yield from _same(quilt, piece.letter, number, _times(of_one), _times(mine))
        return
    found = sum(strip.pieces(piece.letter) for strip in mine)
    if piece.is_strip:
        wanted = sum(run.number for run in piece.runs)
        yield from _same(quilt, piece.letter, number, wanted, found)
        return
    each = EACH[piece.diagonal]
    needed = number * (piece.count + piece.spare)
    least, hands = -(-needed // each), 2 if piece.mirrored else 1
    most = max(least + hands - 1, number * sum(strip.pieces(piece.letter) for strip in of_one))
    if not least <= found <= most or (each == 1 and number > 1 and found != needed):
        message = (
            f"{piece.letter}: {number} kits of {piece.count + piece.spare} need {needed}; "
            f"{found} cuts of {each} are planned."
        )
        yield recounted(quilt, "kits-pieces", "R3", message, piece.place)


def _same(quilt: Quilt, what: str, number: int, single: int, found: int) -> Iterator[Notice]:
    if found != number * single:
        message = f"{what}: {number} kits × {single} = {number * single}; {found} are planned."
        piece = quilt.pieces.get(what)
        yield recounted(quilt, "kits-pieces", "R3", message, piece.place if piece else None)


def _no_more(quilt: Quilt, number: int, single: FabricPlan, many: FabricPlan) -> Iterator[Notice]:
    """Neither cloth nor pre-cuts nor purchase beyond as many single kits."""
    place = quilt.fabrics[single.fabric].place if single.fabric in quilt.fabrics else None
    pairs: list[tuple[str, Fraction | int | None, Fraction | int | None]] = [
        ("pre-cuts", single.buy.number, many.buy.number),
        ("packs", single.buy.packs, many.buy.packs),
    ]
    if not single.buy.stated:  # what she states need be no step of the shop
        pairs.append(("purchase", single.buy.amount, many.buy.amount))
    # Strips of pre-cut pieces are no measure of what is bought, and of plans that buy the same
    # the planner takes the easiest, not the shortest.
    if single.buy.number is None and many.style == "plain":
        pairs.append(("cloth", single.length, many.length))
    for what, each, found in pairs:
        if each is not None and found is not None and found > number * each:
            message = (
                f"{single.fabric}, {what}: {number} kits × {shown(each, quilt)} = "
                f"{shown(number * each, quilt)}; together {shown(found, quilt)}."
            )
            yield recounted(quilt, "kits-cloth", "R4", message, place)


def _room(quilt: Quilt, many: FabricPlan) -> Iterator[Notice]:
    """The cuts of each strip go into its length and its width."""
    for strip in many.strips:
        taken = sum((cut.taken for cut in strip.cuts), Fraction(0))
        high = max((cut.across * cut.lanes for cut in strip.cuts if not cut.above), default=0)
        if taken > strip.run or (strip.along == "width" and high > strip.width):
            message = (
                f"{many.fabric}: cuts of {shown(taken, quilt)} by {shown(high, quilt)} in a strip "
                f"of {shown(strip.run, quilt)} by {shown(strip.width, quilt)}."
            )
            fabric = quilt.fabrics.get(many.fabric)
            place = fabric.place if fabric else None
            yield recounted(quilt, "kits-strip", "R5", message, place)
