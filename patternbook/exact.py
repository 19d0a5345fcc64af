"""Exact lengths of diagonal work: sums of whole numbers and fractions over 1, √2, √3 and √6."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, isqrt, lcm, sqrt
from typing import Final

Rational = Fraction | int
RADICANDS: Final = (1, 2, 3, 6)
ZERO: Final = Fraction(0)
ROOTS: Final = tuple(map(sqrt, RADICANDS))
# Beyond rounding in a sum of four products, by far.
UNSURE: Final = 1e-12


class Exact:
    """a + b√2 + c√3 + d√6, with fractions a to d.

    The four basis numbers are independent over the fractions, so the value is nought
    only where all four parts are; every other sign is settled by narrowing bounds.
    """

    __slots__ = ("denominator", "numerator", "roots")
    # Whole numbers over one denominator, in lowest terms: a Fraction checks and reduces far more
    # than a sum of eighths needs, and check would spend a third of its time there.
    numerator: int
    denominator: int
    # The numerators over √2, √3 and √6; empty where all three are nought, which is nearly always.
    roots: tuple[int, ...]

    def __init__(
        self, one: Rational = 0, root2: Rational = 0, root3: Rational = 0, root6: Rational = 0
    ) -> None:
        self.numerator, self.denominator, self.roots = one.numerator, one.denominator, ()
        if root2 or root3 or root6:
            parts = (one, root2, root3, root6)
            common = lcm(*(part.denominator for part in parts))
            first, *rest = (part.numerator * (common // part.denominator) for part in parts)
            self.numerator, self.denominator, self.roots = first, common, tuple(rest)

    @classmethod
    def of(cls, value: Exact | Rational) -> Exact:
        """The value itself, or a fraction as an exact length."""
        return value if type(value) is Exact else cls(value)  # type: ignore[arg-type]

    @classmethod
    def _ratio(cls, numerator: int, denominator: int) -> Exact:
        """A rational value from two whole numbers, the second above nought."""
        new = cls.__new__(cls)
        if denominator != 1:
            common = gcd(numerator, denominator)
            if common != 1:
                numerator //= common
                denominator //= common
        new.numerator, new.denominator, new.roots = numerator, denominator, ()
        return new

    @classmethod
    def _rooted(cls, one: int, two: int, three: int, six: int, denominator: int) -> Exact:
        """A value from five whole numbers, the last above nought."""
        if not (two or three or six):
            return cls._ratio(one, denominator)
        new = cls.__new__(cls)
        common = gcd(one, two, three, six, denominator)
        if common != 1:
            one, two, three, six = one // common, two // common, three // common, six // common
            denominator //= common
        new.numerator, new.denominator, new.roots = one, denominator, (two, three, six)
        return new

    @property
    def one(self) -> Fraction:
        """The rational part."""
        return Fraction(self.numerator, self.denominator)

    @property
    def parts(self) -> tuple[Fraction, ...]:
        """The four fractions, over 1, √2, √3 and √6."""
        return tuple(Fraction(number, self.denominator) for number in self._four())

    def _four(self) -> tuple[int, ...]:
        return (self.numerator, *(self.roots or (0, 0, 0)))

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
            return self._plus(other.numerator, other.denominator)
        return self._sum(other, 1)

    __radd__ = __add__

    def _plus(self, numerator: int, denominator: int) -> Exact:
        own = self.denominator
        if own == denominator:
            return Exact._ratio(self.numerator + numerator, own)
        return Exact._ratio(self.numerator * denominator + numerator * own, own * denominator)

    def _sum(self, other: Exact, sign: int) -> Exact:
        """The other added, or taken away where the sign is -1."""
        own, its = other.denominator, self.denominator * sign
        a, b, c, d = self._four()
        e, f, g, h = other._four()
        return Exact._rooted(
            a * own + e * its,
            b * own + f * its,
            c * own + g * its,
            d * own + h * its,
            self.denominator * own,
        )

    def __neg__(self) -> Exact:
        if not self.roots:
            return Exact._ratio(-self.numerator, self.denominator)
        two, three, six = self.roots
        return Exact._rooted(-self.numerator, -two, -three, -six, self.denominator)

    def __abs__(self) -> Exact:
        return -self if self.sign() < 0 else self

    def __sub__(self, other: Exact | Rational) -> Exact:
        other = Exact.of(other)
        if not self.roots and not other.roots:
            return self._plus(-other.numerator, other.denominator)
        return self._sum(other, -1)

    def __rsub__(self, other: Exact | Rational) -> Exact:
        return Exact.of(other) - self

    def __mul__(self, other: Exact | Rational) -> Exact:
        other = Exact.of(other)
        denominator = self.denominator * other.denominator
        if not self.roots and not other.roots:
            return Exact._ratio(self.numerator * other.numerator, denominator)
        a, b, c, d = self._four()
        e, f, g, h = other._four()
        return Exact._rooted(
            a * e + 2 * b * f + 3 * c * g + 6 * d * h,
            a * f + b * e + 3 * (c * h + d * g),
            a * g + c * e + 2 * (b * h + d * f),
            a * h + d * e + b * g + c * f,
            denominator,
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
            return (
                self.numerator == other.numerator
                and self.denominator == other.denominator
                and self.roots == other.roots
            )
        return NotImplemented

    def __hash__(self) -> int:
        if self.roots:
            return hash((self.numerator, self.denominator, self.roots))
        return hash(self.numerator) if self.denominator == 1 else hash(self.one)

    def __lt__(self, other: Exact | Rational) -> bool:
        other = Exact.of(other)
        if not self.roots and not other.roots:
            return self.numerator * other.denominator < other.numerator * self.denominator
        return (self - other).sign() < 0

    # The other three would be made of the first and of equality, in twice the time.
    def __gt__(self, other: Exact | Rational) -> bool:
        return Exact.of(other) < self

    def __le__(self, other: Exact | Rational) -> bool:
        return not Exact.of(other) < self

    def __ge__(self, other: Exact | Rational) -> bool:
        return not self < other

    def sign(self) -> int:
        """-1, 0 or 1, exactly."""
        if not self.roots:
            return (self.numerator > 0) - (self.numerator < 0)
        near = self._nearly(UNSURE)
        if near:
            return 1 if near > 0 else -1
        scale = 1 << 16
        while True:
            low, high = self._bounds(scale)
            if low > 0 or high < 0:
                return 1 if low > 0 else -1
            scale *= scale

    def _nearly(self, unsure: float) -> float:
        """The sum of the numerators in floating point; nought where its terms cancel to less than
        that share of them, or are too large for it."""
        try:
            terms = [number * root for number, root in zip(self._four(), ROOTS, strict=True)]
        except OverflowError:
            return 0.0
        total = sum(terms)
        return total if abs(total) > sum(map(abs, terms)) * unsure else 0.0

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
        if not self.roots:
            return self.numerator / self.denominator
        near = self._nearly(1 / 1024)
        if near:
            return near / self.denominator
        return float(sum(self._bounds(1 << 60), ZERO) / 2)

    def __repr__(self) -> str:
        named = zip(self.parts, ("", "√2", "√3", "√6"), strict=True)
        return " + ".join(f"{part}{root}" for part, root in named if part) or "0"


ROOT2: Final = Exact(0, 1)
ROOT3: Final = Exact(0, 0, 1)
