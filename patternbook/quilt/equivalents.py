"""Centimetres that stand beside inches only to be printed: read against what they stand for."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES, INCHES_A_CENTIMETRE, plain, printed
from patternbook.methods.world import here
from patternbook.notice import Edit, Mark, Notice
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.written_at import SIDES, edit
from patternbook.source.cloth import WrittenPiece
from patternbook.value import CutValue, SizeValue

# To the nearest millimetre, as conversion tables print them (source beside the test).
TENTH: Final = Fraction(1, 10)


def equivalents(resolver: Resolver) -> Iterator[Notice]:
    """An error for every stated `cut-cm` that is not the cut in centimetres."""
    for letter, piece in resolver.pieces.items():
        yield from _one(letter, piece, resolver)


def _one(letter: str, piece: WrittenPiece, resolver: Resolver) -> Iterator[Notice]:
    cut, stated = here(piece.cut, resolver.size), here(piece.cut_cm, resolver.size)
    if cut is None or stated is None:
        return
    inches = resolver.system.unit == "in"
    for side, said in ((cut.across, stated.across), (cut.down, stated.down)):
        if not isinstance(side, Fraction):
            continue
        exact = side / INCHES_A_CENTIMETRE if inches else side
        if abs(said - exact) <= TENTH / 2:
            continue
        needed = _tenths(side, inches=inches)
        way = "too little" if said < exact else "too much"
        off = printed(abs(said - exact) // (TENTH / 10) * TENTH / 10, decimals=True)
        written = f"{printed(side)}″" if inches else f"{printed(side, decimals=True)} cm"
        message = (
            f"{letter} is cut {written}, which is {printed(needed, decimals=True)} cm; "
            f"{printed(said, decimals=True)} is stated, {off} {way}."
        )
        typed = plain(needed, decimals=True)
        marks = (Mark(stated.place, "stated here"), Mark(cut.place, "the cut"))
        yield Notice(
            "cut-cm",
            "error",
            "quilt",
            message,
            marks,
            "R17",
            (resolver.size,),
            plain(said, decimals=True),
            typed,
            f"Write {typed} at `cut-cm`, or leave it out.",
            (_mend(stated, cut, inches=inches),),
        )
        return


def _mend(stated: SizeValue, cut: CutValue, *, inches: bool) -> Edit:
    """Both sides in centimetres as they are written there."""
    numbers = {
        name: Exact(_tenths(side, inches=inches))
        for name, side in zip(SIDES, (cut.across, cut.down), strict=True)
        if isinstance(side, Fraction)
    }
    return edit(stated, numbers, CENTIMETRES, sure=True)


def _tenths(side: Fraction, *, inches: bool) -> Fraction:
    """A length of the cut in centimetres, to the nearest millimetre."""
    exact = side / INCHES_A_CENTIMETRE if inches else side
    return (exact + TENTH / 2) // TENTH * TENTH
