"""The finished width and length of one piece, from its cut or finished size."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.linear import Sum
from patternbook.methods.world import Rule, Span, Tally, Term, World, here
from patternbook.source.cloth import WrittenPiece

# Half- and quarter-square triangles (trade facts 5.1 and 5.8); exact methods come with the
# sewing methods that use them, here they size a square of a fragment's cutting list.
DIAGONAL: Final = {"once": Fraction(7, 8), "twice": Fraction(5, 4)}
BOTH: Final = Rule("cut-finished", "R1", "A cut size is the finished size and two seams.")


def allowance(piece: WrittenPiece, world: World) -> Sum:
    """What a side loses between cut and finished."""
    diagonal = here(piece.diagonal, world.size)
    return Sum.of(DIAGONAL[diagonal]) if diagonal is not None else world.seam * 2


def piece_span(letter: str, piece: WrittenPiece, world: World) -> Span:
    """Finished width and length; a side that nothing states is left for the equations."""
    if piece.template is not None:
        _later(letter, piece, world)
    cut, finished = here(piece.cut, world.size), here(piece.finished, world.size)
    loss = allowance(piece, world)
    sides = []
    for side in ("across", "down"):
        unknown = world.unknown(("pieces", letter, "finished", side))
        form = unknown
        number = getattr(cut, side) if cut is not None else "fit"
        if isinstance(number, Fraction):
            place = cut.place if cut is not None else None
            form = world.given(("pieces", letter, "cut", side), number, place) - loss
        if finished is not None:
            key = ("pieces", letter, "stated finished", side)
            stated = world.given(key, getattr(finished, side), finished.place)
            if form is unknown:
                form = stated
            else:
                one = Tally(f"{letter} finishes", (Term("cut less seams", 1, form),), piece.place)
                other = Tally("stated", (Term("", 1, stated),), finished.place)
                world.equal(other, one, BOTH)
        sides.append(form)
    return Span(*sides)


def _later(letter: str, piece: WrittenPiece, world: World) -> None:
    message = f"{letter} is cut by a template ({piece.template}), which cannot be drawn yet."
    hint = "So far: squares, rectangles and strips."
    world.error("method-later", "R13", message, piece.place, hint)
