"""What goes into the bag of one kit: each letter, how many of it, and how large it is cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from patternbook.cutting.kits import in_strips, last_of, strips_of, to_length
from patternbook.cutting.records import BINDING, CuttingPlan, LetterPlan
from patternbook.quilt.records import CutSize, Piece, Quilt


@dataclass(frozen=True)
class Bagged:
    """So many alike of one letter in each bag: patches, whole strips, or lengths of a strip.

    `diagonal`: triangles, and `size` is that of the square (or oblong) they are cut from.
    `join`: strips to be sewn end to end; the last of them may be a part, `last` long.
    """

    letter: str
    fabric: str | None
    kind: Literal["patches", "strips", "lengths"]
    number: int
    size: CutSize
    diagonal: Literal["once", "twice"] | None = None
    join: Literal["diagonal", "straight"] | None = None
    last: Fraction | None = None


def bag(quilt: Quilt, one: CuttingPlan) -> tuple[Bagged, ...]:
    """All that is cut for one kit, in the order of the letters, the binding last."""
    pieces = (piece for letter, piece in quilt.pieces.items() if letter in one.letters)
    lines = (line for piece in pieces for line in _letter(quilt, one, piece))
    return (*lines, *_binding(one))


def _letter(quilt: Quilt, one: CuttingPlan, piece: Piece) -> Iterator[Bagged]:
    plan = one.letters[piece.letter]
    if in_strips(quilt, one, piece):
        yield from _in_strips(quilt, one, piece, plan)
    elif piece.is_strip:
        yield from _lengths(piece, [(run.length, run.number) for run in piece.runs])
    else:
        number = piece.count + piece.spare
        yield Bagged(piece.letter, piece.fabric, "patches", number, piece.cut, piece.diagonal)


def _in_strips(quilt: Quilt, one: CuttingPlan, piece: Piece, plan: LetterPlan) -> Iterator[Bagged]:
    """Its whole strips, spare ones with them, and what is cut to length from others."""
    strips = strips_of(one, piece.letter)
    cut_up = [
        strip
        for strip in strips
        if to_length(quilt, piece) and not strip.join and not strip.cuts[0].whole
    ]
    whole = sum(strip.times for strip in strips if strip not in cut_up)
    over = max(0, plan.strips - sum(strip.times for strip in strips))
    whole += max(over, piece.spare if piece.is_strip else 0)
    joined = next((strip for strip in strips if strip.join), None)
    if whole:
        part = joined is not None and len(joined.letters) > 1
        yield Bagged(
            piece.letter,
            piece.fabric,
            "strips",
            whole,
            CutSize(plan.strip_width, None),
            join=joined.join.kind if joined and joined.join else None,
            last=last_of(joined, piece.letter) if joined and part else None,
        )
    cuts = [(cut, strip) for strip in cut_up for cut in strip.cuts if cut.letter == piece.letter]
    yield from _lengths(piece, [(cut.along, cut.number * strip.times) for cut, strip in cuts])


def _lengths(piece: Piece, lengths: list[tuple[Fraction, int]]) -> Iterator[Bagged]:
    """The longest first."""
    found: Counter[Fraction] = Counter()
    for length, number in lengths:
        found[length] += number
    for length in sorted(found, reverse=True):
        size = CutSize(piece.cut.across, length)
        yield Bagged(piece.letter, piece.fabric, "lengths", found[length], size)


def _binding(one: CuttingPlan) -> Iterator[Bagged]:
    plan = one.binding
    if plan is None:
        return
    if plan.square is not None:
        size = CutSize(plan.square, plan.square)
        yield Bagged(BINDING, plan.fabric, "patches", plan.squares, size)
        return
    size = CutSize(plan.cut, None)
    join = plan.join if plan.strips > 1 else None
    yield Bagged(BINDING, plan.fabric, "strips", plan.strips, size, join=join)
