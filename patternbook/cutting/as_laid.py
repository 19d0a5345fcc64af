"""Which way pieces lie on the cloth: as the author says, or as the cutting has laid them."""

from __future__ import annotations

from dataclasses import replace

from patternbook.cutting.records import CuttingPlan
from patternbook.quilt.records import Piece, Quilt


def said(piece: Piece) -> bool:
    """Whether the author says how the piece lies, or of what strips it is cut. `join` says how
    they are joined where they must be."""
    of_strips = (piece.strip_width, piece.stated_strips, piece.stated_per_strip)
    return "along" in piece.key_places or piece.along == "length" or any(map(bool, of_strips))


def as_laid(quilt: Quilt, cutting: CuttingPlan) -> Quilt:
    """The quilt with its pieces as the cutting lays them: along the cloth where that was chosen."""
    along = {
        letter
        for plan in cutting.fabrics.values()
        for strip in plan.strips
        if strip.along == "length"
        for letter in strip.letters
    }
    pieces = {
        letter: replace(piece, along="length") if letter in along and not said(piece) else piece
        for letter, piece in quilt.pieces.items()
    }
    return replace(quilt, pieces=pieces)


def as_said(quilt: Quilt) -> Quilt:
    """The quilt with its pieces as the author says that they lie, for another way of cutting."""
    pieces = {
        letter: replace(piece, along="width") if "along" not in piece.key_places else piece
        for letter, piece in quilt.pieces.items()
    }
    return replace(quilt, pieces=pieces)
