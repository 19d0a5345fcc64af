"""One-way prints: whether the print of every patch stands the same way up in the quilt."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted
from patternbook.quilt.place import Patch
from patternbook.quilt.records import LayoutMade, Piece, Quilt

WAYS: Final = ("upright", "on its side to the right", "upside down", "on its side to the left")


def one_way(evidence: Evidence) -> Iterator[Notice]:
    """Warnings where the print of one letter would stand several ways in the top."""
    quilt = evidence.quilt
    for piece in quilt.pieces.values():
        fabric = quilt.fabrics.get(piece.fabric or "")
        if fabric is None or not fabric.one_way:
            continue
        ways = Counter(
            patch.turn.quarters
            for patch in evidence.patches
            if patch.letter == piece.letter and not _free(patch, piece, quilt)
        )
        if len(ways) > 1:
            yield _told(piece, ways, quilt)


def _free(patch: Patch, piece: Piece, quilt: Quilt) -> bool:
    """A square that is sewn in as it was cut can be laid with its print upright wherever it is;
    a square of a strip set or of a unit that is cut apart cannot."""
    square = piece.cut.across == piece.cut.down
    unit = quilt.units.get(patch.within[-1].split()[0])
    return (
        square and patch.outline is None and unit is not None and isinstance(unit.made, LayoutMade)
    )


def _told(piece: Piece, ways: Counter[int], quilt: Quilt) -> Notice:
    counted = ", ".join(f"{number} {WAYS[way]}" for way, number in sorted(ways.items()))
    message = (
        f"{piece.letter} is of one-way cloth ('{piece.fabric}'), and its print would stand "
        f"{len(ways)} ways in the quilt: {counted}."
    )
    hint = (
        "Take a cloth without direction, turn fewer units, or give the turned places a letter of "
        "their own."
    )
    place = piece.key_places.get("fabric") or piece.place
    fabric = quilt.fabrics[piece.fabric or ""]
    places = (place, fabric.key_places.get("direction") or fabric.place)
    return recounted(
        quilt, "print-direction", "R18", message, *places, hint=hint, severity="warning"
    )
