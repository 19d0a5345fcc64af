"""One-way cloth: which way up each piece lies in the quilt, so that its print is cut upright."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace

from patternbook.methods.made import Turn
from patternbook.quilt.parts import TOP
from patternbook.quilt.place import lying
from patternbook.quilt.records import Piece, Unit
from patternbook.source.cloth import WrittenFabric


def upright(
    pieces: Mapping[str, Piece], units: Mapping[str, Unit], fabrics: Mapping[str, WrittenFabric]
) -> dict[str, Piece]:
    """The pieces, those of one-way cloth with the way that most of them lie."""
    ways: Counter[tuple[str, bool]] = Counter(
        (patch.letter, patch.turn.sideways) for patch in lying(units, TOP, Turn())
    )
    return {
        letter: replace(piece, sideways=ways[letter, True] > ways[letter, False])
        if _one_way(piece, fabrics)
        else piece
        for letter, piece in pieces.items()
    }


def _one_way(piece: Piece, fabrics: Mapping[str, WrittenFabric]) -> bool:
    fabric = fabrics.get(piece.fabric or "")
    return fabric is not None and fabric.direction == "one-way"
