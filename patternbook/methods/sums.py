"""Sums of several parts: those of one name counted together, and several held equal at once."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from patternbook.exact import Exact
from patternbook.linear import Sum
from patternbook.methods.world import Rule, Tally, Term, World
from patternbook.notice import Place


def level(
    tallies: Sequence[tuple[int, Tally]],
    rule: Rule | Sequence[Rule],
    world: World,
    wanted: Exact | None = None,
) -> int:
    """Hold all sums equal, each met so many times. What most agree on is believed, and of two
    that are met equally often the one that is `wanted`; the odd one out is blamed, by its own
    rule where each has one. Returns which is believed."""
    values = [(times, world.known(one.sum())) for times, one in tallies]
    common: Counter[Exact] = Counter()
    for times, value in values:
        if value is not None:
            common[value] += times
    best = max(common, key=lambda value: (common[value], value == wanted), default=None)
    believed = next((n for n, (_, value) in enumerate(values) if value == best), 0)
    for number, (_, one) in enumerate(tallies):
        if number != believed:
            own = rule if isinstance(rule, Rule) else rule[number]
            world.equal(one, tallies[believed][1], own)
    return believed


def gathered(what: str, parts: Sequence[tuple[str, Sum]], place: Place | None) -> Tally:
    """A tally with all parts of one name and length counted together, in order of meeting."""
    terms: dict[tuple[str, int], Term] = {}
    sums: list[Sum] = []
    for label, each in parts:
        kind = next((i for i, known in enumerate(sums) if known == each), len(sums))
        if kind == len(sums):
            sums.append(each)
        old = terms.get((label, kind))
        terms[label, kind] = Term(label, old.times + 1 if old else 1, each)
    return Tally(what, tuple(terms.values()), place)
