"""How advice is told: once a pattern, with what it comes to in each size."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from patternbook.notice import Mark, Notice, Place
from patternbook.proof.evidence import Evidence


def advised(
    code: str,
    rule: str,
    found: Mapping[str, str],
    at: Place | None,
    before: str = "",
    after: str = "",
    hint: str | None = None,
) -> Iterator[Notice]:
    """One piece of advice for all sizes that have it: `found` says of each what it comes to."""
    if not found:
        return
    marks = (Mark(at, "seen here"),) if at else ()
    message = " ".join(part for part in (before, by_size(found), after) if part)
    yield Notice(code, "advice", "proof", message, marks, rule, tuple(found), hint=hint)


def by_size(found: Mapping[str, str]) -> str:
    """What is alike in several sizes is said once, with their names where sizes differ."""
    alike: dict[str, list[str]] = {}
    for size, words in found.items():
        alike.setdefault(words, []).append(size)
    if len(alike) == 1:
        return f"{next(iter(alike))}."
    return "; ".join(f"{', '.join(sizes)}: {words}" for words, sizes in alike.items()) + "."


def place_of(sizes: Sequence[Evidence]) -> Place | None:
    """Where the top is written, for what is true of the whole quilt."""
    for one in sizes:
        top = one.quilt.units.get(one.quilt.top or "")
        place = (top.place if top else None) or one.quilt.place
        if place:
            return place
    return None
