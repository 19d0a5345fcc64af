"""How far each number can be believed: what agrees, what is given, and what is taken on trust."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from patternbook.exact import Exact
from patternbook.linear import Key
from patternbook.notice import Mark, Notice
from patternbook.quilt.read_out import SIDE_WORDS, shown, typed
from patternbook.quilt.records import Standing
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.typed_once import checked_by


def trust(resolver: Resolver) -> Iterator[Notice]:
    """Advice for every figure that nothing checks because the equations needed it."""
    checked = _checked(resolver)
    for key, stated in resolver.on_trust.items():
        if checked[key]:
            continue
        value = stated.symbol.value or Exact(0)
        word = SIDE_WORDS.get(stated.key[-1], "long")
        what = f"{stated.worked_out.what} {shown(value, resolver)} {word}"
        message = f"taken on trust: {what}; nothing else fixes it."
        marks = (Mark(stated.place, "stated here"),)
        hint = "Check it against your own drawing."
        yield Notice(
            "on-trust",
            "advice",
            "quilt",
            message,
            marks,
            "R20",
            (resolver.size,),
            typed(value, resolver),
            hint=hint,
        )


def standings(resolver: Resolver) -> dict[Key, Standing]:
    """How far each number of lengths can be believed."""
    checked = _checked(resolver)
    found: dict[Key, Standing] = {}
    for key in resolver.symbols:
        ways = checked[key]
        status, kind = ("agrees", "exact") if ways else ("given", "free")
        found[key] = Standing(status, kind, ways + 1, resolver.places.get(key))  # type: ignore[arg-type]
    for check in resolver.checks:
        if check.stated is not None:
            found[check.stated.key] = Standing("agrees", "exact", 2, check.stated.place)
    for key, stated in resolver.on_trust.items():
        ways = checked[key]
        status, kind = ("agrees", "exact") if ways else ("on trust", "free")
        found[key] = Standing(status, kind, ways + 1, stated.place)  # type: ignore[arg-type]
    return found


def _checked(resolver: Resolver) -> Counter[Key]:
    """How many equations check each figure."""
    return Counter(key for check in resolver.checks for key in checked_by(check.rest, resolver))
