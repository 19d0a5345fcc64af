"""What the prices of a bound prove by themselves, reckoned anew."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final, NamedTuple

from patternbook.cutting.records import Least
from patternbook.proof.worth import (
    MILLION,
    Cloth,
    Manner,
    Priced,
    next_length,
    sheet_worth,
    strip_widths,
    worth,
)

# A pre-cut piece more than four times as long as wide is a strip, and never cut across first.
STRIP: Final = 4


class Proven(NamedTuple):
    """At least so long, or so many pre-cuts; or why the prices prove nothing."""

    bound: int
    fault: str | None = None


def proven(proof: Least, manner: Manner) -> Proven:
    """The bound: of all blocks of lengthwise pieces that were tried the least."""
    found = []
    for prices, block in zip(proof.prices, proof.blocks, strict=True):
        priced = dict(prices)
        pieces = [
            Priced(along, across, number, turns, own_width, priced.get(name, 0))
            for name, along, across, number, turns, own_width in proof.kinds
        ]
        if proof.down is None:
            found.append(_of_the_bolt(proof, pieces, block, manner))
        else:
            found.append(_of_sheets(proof.width, proof.down, pieces))
    return next((one for one in found if one.fault), min(found, default=Proven(0, "no prices")))


def _of_the_bolt(
    proof: Least, pieces: Sequence[Priced], block: tuple[int, int], manner: Manner
) -> Proven:
    """What all pieces cost together, less what the cloth beside the block is worth; raised to the
    area, and to the next length that strips can add up to."""
    below = Cloth(proof.width, proof.highest)
    for wide, most in worth(pieces, below, manner):
        if most > wide * MILLION:
            return Proven(0, f"a strip {wide} units wide would be worth {most / MILLION:g}")
    across, long = block
    bound = long + _cost(pieces) - long * _beside(pieces, proof, block, manner)
    area = Fraction(sum(one.along * one.across * one.number for one in pieces), proof.width)
    full = max(bound, Fraction(long), area + Fraction(long * across, proof.width))
    sides = strip_widths(pieces, below, manner)
    return Proven(next_length(sides, long, int(-(-full // 1)), proof.bound))


def _of_sheets(across: int, down: int, pieces: Sequence[Priced]) -> Proven:
    """No pre-cut piece may be worth more than one, whichever way its strips run."""
    most = 0
    if across <= STRIP * down:  # strips along its length
        most = sheet_worth(
            [_turned(piece) for piece in pieces if not piece.own_width], down, across
        )
    if down <= STRIP * across:
        most = max(most, sheet_worth(pieces, across, down))
    if most > MILLION:
        return Proven(0, f"a pre-cut piece would be worth {most / MILLION:g} of one")
    area = Fraction(sum(one.along * one.across * one.number for one in pieces), across * down)
    return Proven(int(-(-max(_cost(pieces), area) // 1)))


def _turned(piece: Priced) -> Priced:
    return piece._replace(along=piece.across, across=piece.along)


def _cost(pieces: Sequence[Priced]) -> Fraction:
    return Fraction(sum(piece.price * piece.number for piece in pieces), MILLION)


def _beside(
    pieces: Sequence[Priced], proof: Least, block: tuple[int, int], manner: Manner
) -> Fraction:
    """What each unit of the cloth beside a block can be worth at most."""
    across, long = block
    if not long or across >= proof.width:
        return Fraction(0)
    cloth = Cloth(proof.width - across, proof.highest, long)
    ratios = (Fraction(most, wide * MILLION) for wide, most in worth(pieces, cloth, manner))
    return max(ratios, default=Fraction(0))
