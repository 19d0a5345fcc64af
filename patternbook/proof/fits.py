"""What is laid on a strip has room there, and no strip is longer than its cloth is wide."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from patternbook.cutting.records import BINDING, Cut, FabricPlan, Sheet, Strip
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.quilt.records import Piece, Quilt

BOLTS: Final = ("yardage", "wide backing")  # cloth that is sold by its length


def fits(evidence: Evidence) -> Iterator[Notice]:
    """Errors where cuts do not fit their strip, or strips their cloth."""
    quilt = evidence.quilt
    for plan in evidence.cutting.fabrics.values():
        for strip in plan.strips:
            yield from _strip(quilt, plan, strip)
            for cut in strip.cuts:
                for one in cut.stacked:
                    yield from _cut(quilt, strip, one)
        for sheet in plan.sheets:
            yield from _sheet(quilt, plan, sheet)


def _strip(quilt: Quilt, plan: FabricPlan, strip: Strip) -> Iterator[Notice]:
    run = run_of(quilt, strip)
    taken = sum((-(-cut.number // cut.lanes) * cut.along for cut in strip.cuts), Fraction(0))
    what = " and ".join(strip.letters) or "spare"
    place = part_place(quilt, strip.letters[0]) if strip.letters else None
    if taken > run:
        message = (
            f"{what}: the cuts take {shown(taken, quilt)} of a strip {shown(run, quilt)} long, "
            f"{shown(taken - run, quilt)} too much."
        )
        yield recounted(quilt, "cuts-fit", "R6", message, place)
    if strip.join is not None and strip.join.length != run:
        message = (
            f"{what}: {strip.times} strips of {shown(strip.length, quilt)} joined are "
            f"{shown(run, quilt)} long, not {shown(strip.join.length, quilt)}."
        )
        yield recounted(quilt, "cuts-fit", "R5", message, place)
    if plan.form in BOLTS and strip.length > plan.width:
        message = (
            f"{what}: strips {shown(strip.length, quilt)} long from cloth "
            f"{shown(plan.width, quilt)} wide."
        )
        yield recounted(quilt, "cuts-fit", "R6", message, place)


def run_of(quilt: Quilt, strip: Strip) -> Fraction:
    """How long the strip is; joined ones together, less what every join takes."""
    join = strip.join
    if join is None:
        return strip.length
    loss = strip.width if join.kind == "diagonal" else 2 * quilt.seam
    if quilt.settings.joins == "not counted":
        loss = Fraction(0)
    return strip.times * strip.length - (strip.times - 1) * loss


def _cut(quilt: Quilt, strip: Strip, cut: Cut) -> Iterator[Notice]:
    place = part_place(quilt, cut.letter)
    if cut.lanes * cut.across > strip.width:
        message = (
            f"{cut.letter}: {cut.lanes} side by side take {shown(cut.lanes * cut.across, quilt)} "
            f"of a strip {shown(strip.width, quilt)} wide."
        )
        yield recounted(quilt, "cuts-fit", "R6", message, place)
    piece = quilt.pieces.get(cut.letter)
    if piece is not None and not _as_cut(piece, strip, cut):
        lies = f"{shown(cut.along, quilt)} × {shown(cut.across, quilt)}"
        sides = " × ".join(shown(side, quilt) for side in piece.cut if side is not None)
        message = f"{cut.letter} lies {lies} on its strip; it is cut {sides}."
        yield recounted(quilt, "cut-size", "R20", message, place)
    if piece is None and cut.letter != BINDING:
        message = f"{cut.letter} is cut from a strip, and there is no such piece."
        yield recounted(quilt, "cut-size", "R3", message, place)


def _as_cut(piece: Piece, strip: Strip, cut: Cut) -> bool:
    """A patch has its own two sides, a strip its own width."""
    if piece.cut.down is None:
        return piece.cut.across in (cut.across, cut.along if strip.along == "length" else None)
    return {cut.along, cut.across} == set(piece.cut)


def _sheet(quilt: Quilt, plan: FabricPlan, sheet: Sheet) -> Iterator[Notice]:
    run, deep = (sheet.down, sheet.across) if sheet.turned else (sheet.across, sheet.down)
    strips = [(plan.strips[row.strip], row.times) for row in sheet.rows]
    taken = sum((strip.width * times for strip, times in strips), Fraction(0))
    longest = max((strip.length for strip, _ in strips), default=Fraction(0))
    if taken > deep or longest > run:
        fabric = quilt.fabrics.get(plan.fabric)
        message = (
            f"{plan.fabric}: strips {shown(longest, quilt)} long and {shown(taken, quilt)} wide "
            f"in all from a piece {shown(run, quilt)} × {shown(deep, quilt)}."
        )
        yield recounted(quilt, "sheet-fit", "R6", message, fabric.place if fabric else None)
