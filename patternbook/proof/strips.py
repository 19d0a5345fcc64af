"""Strips counted the handbook's way: pieces to a strip rounded down, strips rounded up."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.cutting.records import FabricPlan, LetterPlan, Strip
from patternbook.notice import Notice
from patternbook.proof.double_entry import EACH
from patternbook.proof.evidence import Evidence
from patternbook.proof.fits import BOLTS
from patternbook.proof.recounted import recounted, shown
from patternbook.quilt.records import Fabric, Piece, Quilt


def strips(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a letter has more or fewer strips than the handbook's sum gives."""
    quilt, cutting = evidence.quilt, evidence.cutting
    for letter, plan in cutting.letters.items():
        piece, fabric = quilt.pieces.get(letter), cutting.fabrics.get(plan.fabric)
        if piece is None or fabric is None:
            continue
        mine = [strip for strip in fabric.strips if letter in strip.letters]
        if fabric.least is not None and fabric.form in BOLTS:
            yield from _together(quilt, piece, plan, mine)
        if piece.host or not _alone(quilt, piece, fabric, mine):
            yield from _enough(quilt, piece, mine)
        else:
            yield from _own(quilt, piece, plan, fabric, mine)


def _alone(quilt: Quilt, piece: Piece, plan: FabricPlan, mine: list[Strip]) -> bool:
    """Whether the letter's strips give nothing else, are not joined and lie across the cloth."""
    plain = plan.style == "plain" and plan.form in (*BOLTS, "strip roll")
    own = all(strip.letters == (piece.letter,) and not strip.join for strip in mine)
    hosts = {other.host for other in quilt.pieces.values()}
    across = piece.along == "width" and not piece.is_strip
    return plain and own and across and piece.letter not in hosts


def _own(
    quilt: Quilt, piece: Piece, plan: LetterPlan, fabric: FabricPlan, mine: list[Strip]
) -> Iterator[Notice]:
    cuts = sum(strip.pieces(piece.letter) for strip in mine)
    run = _run(quilt.fabrics.get(plan.fabric), fabric.width)
    fit = per_strip(piece, quilt.fabrics.get(plan.fabric), plan.strip_width, run)
    if not fit or not cuts:
        return
    least = -(-cuts // min(fit, piece.stated_per_strip or fit))
    wanted = max(least, piece.stated_strips or 0)
    cut = sum(strip.times for strip in mine)
    if plan.own != least or plan.strips != wanted or cut != least:
        message = (
            f"{piece.letter}: {cuts} cuts, {fit} to a strip of {shown(run, quilt)}, take {least} "
            f"strips; the plan has {plan.own}, cuts {plan.strips} and lays {cut}."
        )
        yield recounted(quilt, "strip-count", "R5", message, piece.place)


def _run(fabric: Fabric | None, width: Fraction) -> Fraction:
    if fabric and fabric.form == "strip roll" and fabric.size and fabric.size.down:
        return max(fabric.size.across, fabric.size.down)
    return fabric.width if fabric and fabric.form in BOLTS else width


def per_strip(piece: Piece, fabric: Fabric | None, wide: Fraction, run: Fraction) -> int:
    """How many of a piece lie in one strip, the better way round; upright if one-way."""
    across, down = piece.cut.across, piece.cut.down or run
    if piece.sideways and piece.cut.down is not None:
        across, down = down, across
    ways = [(across, down)]
    if not (fabric and fabric.one_way):
        ways.append((down, across))
    return max(int(run // along) * int(wide // high) for along, high in ways)


def _together(quilt: Quilt, piece: Piece, plan: LetterPlan, mine: list[Strip]) -> Iterator[Notice]:
    """Where strips are shared a letter has no number of its own: it is in so many strips."""
    cut = sum(strip.times for strip in mine)
    if plan.strips != cut and not piece.is_strip:
        message = f"{piece.letter} lies in {cut} strips, the chart says {plan.strips}."
        yield recounted(quilt, "strip-count", "R5", message, piece.place)


def _enough(quilt: Quilt, piece: Piece, mine: list[Strip]) -> Iterator[Notice]:
    """Strips that are shared or joined hold at least the letter's own length."""
    if piece.is_strip or not mine:
        return
    needed = -(-(piece.count + piece.spare) // EACH[piece.diagonal])
    given = sum(strip.pieces(piece.letter) for strip in mine)
    shorter = min(side for side in piece.cut if side is not None)
    room = sum(
        int(strip.run // shorter) * (1 if strip.join else strip.times) * _lanes(strip, shorter)
        for strip in mine
    )
    if given < needed or room < needed:
        message = f"{piece.letter}: {needed} cuts are needed, its strips give {given}."
        yield recounted(quilt, "strip-count", "R5", message, piece.place)


def _lanes(strip: Strip, shorter: Fraction) -> int:
    return int(strip.width // shorter) or 1
