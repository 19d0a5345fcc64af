"""Which lengths are one number in the source: both sides of `6 1/2 square` are typed once."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternbook.methods.world import here
from patternbook.quilt.written_at import is_square
from patternbook.value import CutValue, PerSize, SizeValue

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternbook.linear import Key, Sum
    from patternbook.quilt.resolve import Resolver


def checked_by(rest: Sum, resolver: Resolver) -> Iterator[Key]:
    """The figures that an equation checks. A square whose sides are held equal is not checked by
    it: whatever the one number is, it agrees with itself."""
    together: dict[Key, list[Key]] = {}
    for symbol in rest.terms:
        together.setdefault(_typed(symbol.key, resolver), []).append(symbol.key)
    times = {symbol.key: number for symbol, number in rest.terms.items()}
    for keys in together.values():
        first, *others = keys
        if not others or times[first] + times[others[0]] != 0:
            yield from keys


def _typed(key: Key, resolver: Resolver) -> Key:
    """The figure as it is typed: without its side, where one number says both."""
    if len(key) != 4:
        return key
    parts: Mapping[str, object] = resolver.pieces if key[0] == "pieces" else resolver.units
    value = getattr(parts.get(key[1]), key[2].replace("-", "_"), None)
    stated = here(value, resolver.size) if isinstance(value, PerSize) else None
    once = isinstance(stated, CutValue | SizeValue) and is_square(stated)
    return key[:-1] if once else key
