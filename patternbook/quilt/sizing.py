"""The finished width and length of one piece, from its cut or finished size."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.linear import Sum
from patternbook.methods.world import Rule, Span, Tally, Term, World, here
from patternbook.quilt.templates import template_span
from patternbook.source.cloth import WrittenPiece

BOTH: Final = Rule("cut-finished", "R1", "A cut size is the finished size and two seams.")


def allowance(piece: WrittenPiece, world: World) -> Sum:
    """What a side loses between cut and finished."""
    diagonal = here(piece.diagonal, world.size)
    if diagonal is None:
        return world.seam * 2
    return Sum.of(world.triangle("twice" if diagonal == "twice" else "once"))


def piece_span(letter: str, piece: WrittenPiece, world: World) -> Span:
    """Finished width and length; a side that nothing states is left for the equations."""
    by_template = template_span(letter, piece, world)
    if by_template is not None:
        return by_template
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
