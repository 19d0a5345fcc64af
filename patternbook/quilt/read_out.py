"""How a number of one size is told in a notice: in the decimals of centimetres, or in fractions."""

from __future__ import annotations

from fractions import Fraction

from patternbook.exact import Exact
from patternbook.inch import plain, printed
from patternbook.quilt.resolve import Resolver


def shown(value: Exact | Fraction | None, resolver: Resolver) -> str:
    """As the booklet prints it; `?` where it is not known."""
    return "?" if value is None else printed(value, resolver.system.unit == "cm")


def typed(value: Exact | Fraction | None, resolver: Resolver) -> str:
    """As the author types it."""
    return "?" if value is None else plain(value, resolver.system.unit == "cm")
