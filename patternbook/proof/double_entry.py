"""Double entry: the pieces that come off the strips are the pieces that lie in the top, or that
what lies there was cut from, and the spare ones; both are counted here, from the strips and from
the places."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.cutting.records import UNNAMED, FabricPlan
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.fits import BOLTS
from patternbook.proof.recounted import place_of, recounted
from patternbook.quilt.records import Piece, PiecedMade, Quilt, StripSetMade

EACH: Final = {None: 1, "once": 2, "twice": 4}
SEWN = "A letter must lie where it is counted: check the cells that name it."


def double_entry(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a letter is cut more or less often than it is sewn, or from another fabric."""
    for piece in evidence.quilt.pieces.values():
        yield from _counted(evidence, piece)
        if piece.letter not in evidence.cutting.letters:
            yield from _forgotten(evidence.quilt, piece)
        elif piece.is_strip:
            yield from _lengths(evidence, piece)
        else:
            yield from _patches(evidence, piece)


def _counted(evidence: Evidence, piece: Piece) -> Iterator[Notice]:
    """The count is what lies in the top, the strips of a set counted as strips."""
    if not evidence.patches:
        return
    lie = _sewn(evidence, piece)
    if lie != piece.count:
        message = f"{piece.letter}: {piece.count} are counted, {lie} lie in the top."
        at = place_of(evidence.quilt, "pieces", piece.letter, "count") or piece.place
        figures = (str(piece.count), str(lie))
        yield recounted(evidence.quilt, "sewn-count", "R3", message, at, figures=figures, hint=SEWN)


def _sewn(evidence: Evidence, piece: Piece) -> int:
    """Patches in the top, and those of units that other units are cut from. Where they are slices
    of sets, the strips of those sets; of a unit with a method of its own, what its goes take."""
    letter, number = piece.letter, 0
    for unit in evidence.quilt.units.values():
        made, units = unit.made, evidence.taken[unit.name]
        if isinstance(made, PiecedMade):
            goes = evidence.goes(unit, made, units)
            number += goes * sum(taking.number for taking in made.takes if taking.part == letter)
        elif isinstance(made, StripSetMade):
            number += made.strips.count(letter) * made.sets if units else 0
        else:
            cut_up = units - evidence.lying[unit.name]
            each = sum(part.part == letter for part in unit.placed) if cut_up else 0
            number += evidence.lie.get((letter, unit.name), 0) + cut_up * each
    return number


def _forgotten(quilt: Quilt, piece: Piece) -> Iterator[Notice]:
    """A letter without a plan, though nothing keeps it from being cut: a letter that the cloth
    has no room for has been told."""
    fabric = quilt.fabrics.get(piece.fabric or UNNAMED)
    shorter = min(side for side in piece.cut if side is not None)
    narrow = piece.host or piece.strip_width or (fabric and fabric.form not in BOLTS)
    if not narrow and shorter <= (fabric.width if fabric else quilt.width):
        message = f"{piece.letter} is sewn {piece.count} times, and nothing is cut for it."
        yield recounted(quilt, "cut-count", "R3", message, piece.place)


def cuts_asked(piece: Piece) -> int:
    """How many cut pieces (squares, where they are cut again on the diagonal) a patch takes, its
    spare ones and those of each hand counted."""
    each = EACH[piece.diagonal]
    needed = piece.count + piece.spare
    pairs = -(-(needed - piece.mirrored) // each) - (-piece.mirrored // each)
    square = piece.cut.across == piece.cut.down
    least = -(-needed // each) if square or each == 1 else pairs
    return max(least, piece.stated_squares or 0)


def _patches(evidence: Evidence, piece: Piece) -> Iterator[Notice]:
    each, asked = EACH[piece.diagonal], cuts_asked(piece)
    cut = sum(found for _, found in _off_the_strips(evidence, piece))
    if cut != asked:
        spare = f" + {piece.spare} spare" if piece.spare else ""
        of_each = f", {each} from each cut" if each > 1 else ""
        message = (
            f"{piece.letter}: {cut} are cut off the strips; {piece.count} sewn{spare}{of_each} "
            f"take {asked}."
        )
        yield recounted(evidence.quilt, "cut-count", "R3", message, piece.place)
    yield from _fabrics(evidence, piece)


def _off_the_strips(evidence: Evidence, piece: Piece) -> list[tuple[FabricPlan, int]]:
    """How many pieces of a letter the strips of each fabric give."""
    found = []
    for plan in evidence.cutting.fabrics.values():
        number = sum(strip.pieces(piece.letter) for strip in plan.strips)
        if number:
            found.append((plan, number))
    return found


def _fabrics(evidence: Evidence, piece: Piece) -> Iterator[Notice]:
    for plan, number in _off_the_strips(evidence, piece):
        if plan.fabric != (piece.fabric or UNNAMED):
            message = (
                f"{number} {piece.letter} are cut from {plan.fabric}, not from {piece.fabric}."
            )
            yield recounted(evidence.quilt, "cut-fabric", "R3", message, piece.place)


def _lengths(evidence: Evidence, piece: Piece) -> Iterator[Notice]:
    """A strip's lengths: one for every strip of a set, one for every patch elsewhere."""
    yield from _fabrics(evidence, piece)
    if not evidence.patches:
        return
    cut = sum(found for _, found in _off_the_strips(evidence, piece))
    sewn = _sewn(evidence, piece)
    if cut == sewn:
        return
    message = f"{piece.letter}: {cut} lengths are cut of its strips, {sewn} are sewn."
    yield recounted(evidence.quilt, "cut-count", "R3", message, piece.place)
