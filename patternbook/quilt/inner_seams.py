"""Which way the seams inside a unit are pressed that is sewn in a way of its own: as the author
says, else toward the darker side, else as its method has it."""

from __future__ import annotations

from typing import Final

from patternbook.methods.made import PiecedMade, SewnSeam
from patternbook.quilt.press_words import TOWARD, holds
from patternbook.quilt.records import Quilt, Unit

DARKNESS: Final = {"light": 0, "medium": 1, "dark": 2}
# The words that such a unit understands beside `toward` with a part.
INNER: Final = ("open", "out", "in", "all one way")


def inner_seams(unit: Unit, made: PiecedMade, quilt: Quilt) -> tuple[int | None, ...]:
    """For each seam the part that it is pressed toward; None: open."""
    word = unit.press[0] if unit.press else None
    return tuple(_toward(seam, word, unit, quilt) for seam in made.seams)


def _toward(seam: SewnSeam, word: str | None, unit: Unit, quilt: Quilt) -> int | None:
    one, other = seam.between
    if word == "open":
        return None
    if word is not None and word.startswith(TOWARD):
        named = word.removeprefix(TOWARD)
        found = [at for at in seam.between if holds(unit.placed[at].part, named, quilt)]
        return found[0] if len(found) == 1 else seam.toward
    if word == "in":
        return other if seam.toward == one else one
    if word is not None or seam.settled or seam.toward is None:
        return seam.toward
    tones = [tone_of(unit.placed[at].part, quilt) for at in seam.between]
    if None in tones or tones[0] == tones[1]:
        return seam.toward
    return one if (tones[0] or 0) > (tones[1] or 0) else other


def tone_of(letter: str, quilt: Quilt) -> int | None:
    """How dark a piece is, 0 to 2; None where no tone is stated."""
    piece = quilt.pieces.get(letter)
    fabric = quilt.fabrics.get(piece.fabric) if piece and piece.fabric else None
    return DARKNESS[fabric.tone] if fabric and fabric.tone else None
