"""How a number of one size is told in a notice: in the decimals of centimetres, or in fractions."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import plain, printed, ruler_up
from patternbook.methods.world import Tally, Term
from patternbook.quilt.resolve import Resolver

SIDE_WORDS: Final = {"across": "wide", "down": "long"}


def shown(value: Exact | Fraction | None, resolver: Resolver) -> str:
    """As the booklet prints it; `?` where it is not known."""
    return "?" if value is None else printed(value, resolver.system.unit == "cm")


def typed(value: Exact | Fraction | None, resolver: Resolver) -> str:
    """As the author types it."""
    return "?" if value is None else plain(value, resolver.system.unit == "cm")


def read(value: Exact | None, resolver: Resolver) -> str:
    """As it can be read off: `about 5.66` where a root is left in it."""
    if value is None or value.rational:
        return shown(value, resolver)
    return f"about {float(value):.2f}"


def needed(value: Exact | None, resolver: Resolver) -> str:
    """As the author types what is right: where a root is left in it, the ruler's next mark."""
    if value is None or value.rational:
        return typed(value, resolver)
    return typed(ruler_up(value, resolver.system), resolver)


def written_out(tally: Tally, resolver: Resolver) -> str:
    """The sum with its numbers: `D 18 1/2 + 12 A 24 + 2 seams 1/2`."""
    return " + ".join(_term(term, resolver) for term in tally.terms) or "nothing"


def _term(term: Term, resolver: Resolver) -> str:
    value = resolver.known(term.each)
    comes_to = "?" if value is None else shown(value * term.times, resolver)
    label = "seams" if term.label == "seam" and term.times > 1 else term.label
    return " ".join(
        word for word in (str(term.times) if term.times > 1 else "", label, comes_to) if word
    )
