"""Exact lengths of diagonal work: sums of whole numbers and fractions over 1, √2, √3 and √6."""

from __future__ import annotations

from fractions import Fraction
from functools import total_ordering
from math import isqrt
from typing import Final

Rational = Fraction | int
RADICANDS: Final = (1, 2, 3, 6)
ZERO: Final = Fraction(0)


@total_ordering
class Exact:
    """a + b√2 + c√3 + d√6, with fractions a to d.

    The four basis numbers are independent over the fractions, so the value is nought
    only where all four parts are; every other sign is settled by narrowing bounds.
    """

    __slots__ = ("one", "roots")
    one: Fraction
    # The parts over √2, √3 and √6; empty where all three are nought, which is nearly always.
    roots: tuple[Fraction, ...]

    def __init__(
        self, one: Rational = 0, root2: Rational = 0, root3: Rational = 0, root6: Rational = 0
    ) -> None:
        self.one = one if type(one) is Fraction else Fraction(one)
        rooted = root2 or root3 or root6
        self.roots = (Fraction(root2), Fraction(root3), Fraction(root6)) if rooted else ()

    @classmethod
    def of(cls, value: Exact | Rational) -> Exact:
        """The value itself, or a fraction as an exact length."""
        return value if isinstance(value, Exact) else cls(value)

    @property
    def parts(self) -> tuple[Fraction, ...]:
        """The four fractions, over 1, √2, √3 and √6."""
        return (self.one, *(self.roots or (ZERO, ZERO, ZERO)))

    @property
    def rational(self) -> bool:
        """Whether no root is left in it."""
        return not self.roots

    @property
    def fraction(self) -> Fraction:
        """The value as a fraction; ValueError where a root is left in it."""
        if not self.rational:
            raise ValueError(f"{self} is not a fraction")
        return self.one

    def __add__(self, other: Exact | Rational) -> Exact:
        other = Exact.of(other)
        if not self.roots and not other.roots:
            return Exact(self.one + other.one)
        return Exact(*(a + b for a, b in zip(self.parts, other.parts, strict=True)))

    __radd__ = __add__

    def __neg__(self) -> Exact:
        if not self.roots:
            return Exact(-self.one)
        return Exact(*(-a for a in self.parts))

    def __sub__(self, other: Exact | Rational) -> Exact:
        other = Exact.of(other)
        if not self.roots and not other.roots:
            return Exact(self.one - other.one)
        return self + -other

    def __rsub__(self, other: Exact | Rational) -> Exact:
        return Exact.of(other) - self

    def __mul__(self, other: Exact | Rational) -> Exact:
        other = Exact.of(other)
        if not self.roots and not other.roots:
            return Exact(self.one * other.one)
        (a, b, c, d), (e, f, g, h) = self.parts, other.parts
        return Exact(
            a * e + 2 * b * f + 3 * c * g + 6 * d * h,
            a * f + b * e + 3 * (c * h + d * g),
            a * g + c * e + 2 * (b * h + d * f),
            a * h + d * e + b * g + c * f,
        )

    __rmul__ = __mul__

    def __truediv__(self, other: Exact | Rational) -> Exact:
        return self * Exact.of(other).inverse()

    def inverse(self) -> Exact:
        """One divided by the value; ZeroDivisionError for nought."""
        if not self.roots:
            return Exact(1 / self.one)
        a, b, c, d = self.parts
        # (u + v√3)(u - v√3) leaves p + q√2 with u = a + b√2 and v = c + d√2; then once more.
        other = Exact(a, b, -c, -d)
        p, q = (self * other).parts[:2]
        return other * Exact(p, -q) * (1 / (p * p - 2 * q * q))

    def __eq__(self, other: object) -> bool:
        if isinstance(other, Exact | Fraction | int):
            other = Exact.of(other)
            return self.one == other.one and self.roots == other.roots
        return NotImplemented

    def __hash__(self) -> int:
        return hash((self.one, self.roots)) if self.roots else hash(self.one)

    def __lt__(self, other: Exact | Rational) -> bool:
        other = Exact.of(other)
        if not self.roots and not other.roots:
            return self.one < other.one
        return (self - other).sign() < 0

    def sign(self) -> int:
        """-1, 0 or 1, exactly."""
        if not self.roots:
            return (self.one > 0) - (self.one < 0)
        scale = 1 << 16
        while True:
            low, high = self._bounds(scale)
            if low > 0 or high < 0:
                return 1 if low > 0 else -1
            scale *= scale

    def _bounds(self, scale: int) -> tuple[Fraction, Fraction]:
        """Two fractions that the value lies between; closer as scale grows."""
        low = high = ZERO
        for part, radicand in zip(self.parts, RADICANDS, strict=True):
            root = isqrt(radicand * scale * scale)
            ends = (part * root / scale, part * (root + (radicand > 1)) / scale)
            low, high = low + min(ends), high + max(ends)
        return low, high

    def up(self, step: Fraction) -> Fraction:
        """The smallest multiple of step that is not below the value."""
        return -((-self).down(step))

    def down(self, step: Fraction) -> Fraction:
        """The largest multiple of step that is not above the value."""
        if not self.roots:
            return self.one // step * step
        scale = 1 << 16
        while True:
            low, high = (bound // step for bound in self._bounds(scale))
            if low == high:
                return low * step
            if self == high * step or (high - low == 1 and self > high * step):
                return high * step
            scale *= scale

    def __float__(self) -> float:
        return float(sum(self._bounds(1 << 60), ZERO) / 2)

    def __repr__(self) -> str:
        named = zip(self.parts, ("", "√2", "√3", "√6"), strict=True)
        return " + ".join(f"{part}{root}" for part, root in named if part) or "0"


ROOT2: Final = Exact(0, 1)
ROOT3: Final = Exact(0, 0, 1)
