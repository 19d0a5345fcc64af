"""Sums of known and unknown lengths, and the small linear system that finds the unknown ones.

Every number the author gives stays a symbol with a value, so that an equation left over once
the unknowns are found says not only whether its two sides agree but which numbers it checks.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Final

from patternbook.exact import Exact, Rational

Key = tuple[str, ...]
ONE: Final = Exact(1)


@dataclass(frozen=True)
class Symbol:
    """One length, known by the figure it stands for; `value` is None while it is unknown."""

    key: Key
    value: Exact | None = field(default=None, compare=False)


@dataclass(frozen=True)
class Sum:
    """A constant and so many of each symbol; no symbol stands in it with nought."""

    constant: Exact
    terms: Mapping[Symbol, Exact]

    @classmethod
    def of(cls, value: Sum | Exact | Rational) -> Sum:
        """A number as a sum without symbols."""
        return value if isinstance(value, Sum) else cls(Exact.of(value), {})

    @classmethod
    def symbol(cls, symbol: Symbol) -> Sum:
        """One symbol alone."""
        return cls(Exact(0), {symbol: ONE})

    def __add__(self, other: Sum | Exact | Rational) -> Sum:
        other = Sum.of(other)
        if not other.terms:
            return Sum(self.constant + other.constant, self.terms)
        terms = dict(self.terms)
        for symbol, times in other.terms.items():
            total = terms[symbol] + times if symbol in terms else times
            if total.sign():
                terms[symbol] = total
            else:
                del terms[symbol]
        return Sum(self.constant + other.constant, terms)

    def __mul__(self, by: Exact | Rational) -> Sum:
        if by == 0:
            return NOTHING
        if by == 1:
            return self
        return Sum(self.constant * by, {s: times * by for s, times in self.terms.items()})

    def __sub__(self, other: Sum | Exact | Rational) -> Sum:
        return self + Sum.of(other) * -1

    def unknowns(self) -> tuple[Symbol, ...]:
        """The symbols without a value."""
        return tuple(symbol for symbol in self.terms if symbol.value is None)

    def value(self) -> Exact | None:
        """What it comes to; None while a symbol is unknown."""
        total = self.constant
        for symbol, times in self.terms.items():
            if symbol.value is None:
                return None
            total = total + symbol.value * times
        return total


NOTHING: Final = Sum(Exact(0), {})


def total(sums: Iterable[tuple[int, Sum]]) -> Sum:
    """So many of each, all added."""
    constant = Exact(0)
    terms: dict[Symbol, Exact] = {}
    for times, form in sums:
        constant = constant + form.constant * times
        for symbol, part in form.terms.items():
            more = part * times
            terms[symbol] = terms[symbol] + more if symbol in terms else more
    return Sum(constant, {symbol: part for symbol, part in terms.items() if part.sign()})


class Equations:
    """Equations in solved form: each unknown that is found, in known symbols and free unknowns."""

    def __init__(self) -> None:
        self.found: dict[Symbol, Sum] = {}

    def reduced(self, form: Sum) -> Sum:
        """The sum with every unknown that is found put in."""
        for symbol in form.unknowns():
            if symbol in self.found:
                form = form + (self.found[symbol] - Sum.symbol(symbol)) * form.terms[symbol]
        return form

    def value(self, form: Sum) -> Exact | None:
        """What the sum comes to; None while it is not fixed."""
        return self.reduced(form).value()

    def let_equal(self, one: Sum, other: Sum) -> Sum | None:
        """Hold the two equal. Returns what is left of their difference where no unknown is
        free to take it up (a check: nought if they agree), None where one was."""
        rest = self.reduced(one - other)
        free = rest.unknowns()
        if not free:
            return rest
        found, times = free[-1], rest.terms[free[-1]]
        self._find(found, (rest - Sum.symbol(found) * times) * -times.inverse())
        return None

    def _find(self, symbol: Symbol, form: Sum) -> None:
        for other, old in self.found.items():
            if symbol in old.terms:
                times = old.terms[symbol]
                self.found[other] = old + (form - Sum.symbol(symbol)) * times
        self.found[symbol] = form


def fraction(value: Exact | Fraction) -> Fraction:
    """A rational length as a fraction; ValueError for an irrational one."""
    return Exact.of(value).fraction
