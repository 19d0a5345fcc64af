"""Bias: how long a binding a square of cloth gives, in one long strip or in strips that are joined.

A square of side S is cut on its diagonal. For one long strip both halves are sewn along two sides,
lines are drawn along the bias, and the other two sides are sewn to a tube one line apart: the first
seam leaves (S − 2s) ÷ √2 across the lines, the second (S − 2s) × √2 along each. The trade's rule
takes the whole area, √(length × width) (trade facts 6.12), and overstates small squares (6.13).
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt
from typing import Final

from patternbook.exact import Exact

ROOT_TWO: Final = Exact(0, 1)


def by_area(length: Fraction, width: Fraction) -> Fraction:
    """The side of the square that has the strip's area, up to a whole unit."""
    area = length * width
    root = isqrt(int(area))
    return Fraction(root if root * root >= area else root + 1)


def continuous(side: Fraction, width: Fraction, seam: Fraction) -> Exact:
    """One long strip from one square, its two seams taken off."""
    inner = side - 2 * seam
    if inner <= 0:
        return Exact(0)
    rounds = (ROOT_TWO * (inner / (2 * width))).down(Fraction(1))
    return ROOT_TWO * (inner * rounds)


def per_half(side: Fraction, width: Fraction) -> int:
    """How many strips each half of the square gives: the last is still as long as it is wide on
    its short edge."""
    return max(0, int(((ROOT_TWO * side - width) / (2 * width)).down(Fraction(1))))


def in_strips(side: Fraction, width: Fraction) -> Exact:
    """The strips of one square end to end, measured along their middles. Their ends lie on the
    straight grain, which is just what a diagonal join wants."""
    number = per_half(side, width)
    return ROOT_TWO * (2 * number * side) - 2 * number * number * width


def squared_strips(side: Fraction, width: Fraction) -> Exact:
    """The same once the ends are cut square, for straight joins: their short edges."""
    number = per_half(side, width)
    return ROOT_TWO * (2 * number * side) - 2 * number * (number + 1) * width
