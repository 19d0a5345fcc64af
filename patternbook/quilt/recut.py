"""What a piece of a unit that is trimmed should be cut, told at the cut itself."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final, NamedTuple

from patternbook.exact import Exact
from patternbook.inch import ruler_up
from patternbook.linear import Key, Symbol
from patternbook.notice import Edit, Mark, Notice, Place
from patternbook.quilt.checks import Bound
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.written_at import SIDES, Measure, edit, measures
from patternbook.value import CutValue, LengthValue, SizeValue

# What is cut, and what a piece is said to finish.
FIGURES: Final = frozenset({"cut", "stated finished"})


class Misfit(NamedTuple):
    """A unit that is not as large as what its pieces give: what it finishes, and what they give."""

    bound: Bound
    size: Exact
    most: Exact


def letter_of(bound: Bound) -> str | None:
    """The one piece that the bound rests on."""
    symbol = _figure(bound)
    return symbol.key[1] if symbol else None


def _figure(bound: Bound) -> Symbol | None:
    for symbol, times in bound.most.sum().terms.items():
        if symbol.key[0] == "pieces" and symbol.value is not None and times > 0:
            return symbol
    return None


def recut(misfits: Sequence[Misfit], resolver: Resolver, *, up: bool = True) -> Edit | None:
    """The cut of one piece with which a unit comes out; both sides of it where both are wrong,
    or where they are cut alike. Between two marks of the ruler it is the next one up, or down."""
    numbers: dict[str, Exact] = {}
    key: Key = ()
    for bound, size, most in misfits:
        symbol = _figure(bound)
        if symbol is None or symbol.value is None or symbol.key[2] not in FIGURES:
            return None
        key, times = symbol.key, bound.most.sum().terms[symbol]
        exact = symbol.value + (size - most) / times
        better = ruler_up(exact, resolver.system) if up else exact.down(resolver.system.step)
        numbers[key[-1]] = max(numbers.get(key[-1], Exact(0)), Exact(better))
    value = _written(resolver, resolver.places.get(key))
    if value is None or isinstance(value, LengthValue) or min(numbers.values()) <= 0:
        return None
    if value.across == value.down and len(numbers) == 1:
        numbers = dict.fromkeys(SIDES, *numbers.values())
    return edit(value, numbers, resolver.system, sure=False)


def _written(resolver: Resolver, place: Place | None) -> Measure | None:
    return measures(resolver.written).get(place) if place else None


def resized(name: str, size: Exact, to: Exact, resolver: Resolver) -> list[Edit]:
    """The unit's own stated sizes, written so that its pieces give them."""
    found: dict[Place, tuple[SizeValue | CutValue, dict[str, Exact]]] = {}
    for stated in (*resolver.stated, *resolver.on_trust.values()):
        if stated.key[:2] != ("units", name) or stated.key[-1] not in SIDES:
            continue
        seams = resolver.length(resolver.seam) * (2 if stated.key[2] == "measure" else 0)
        value = _written(resolver, stated.place)
        if stated.symbol.value == size + seams and isinstance(value, SizeValue):
            found.setdefault(stated.place, (value, {}))[1][stated.key[-1]] = to + seams
    return [
        edit(value, numbers, resolver.system, sure=False)
        for value, numbers in found.values()
        if len(numbers) == len(SIDES)
    ]


def at_the_cut(notice: Notice, better: Edit | None, others: Sequence[Edit]) -> Notice:
    """The notice with its first mark at the wrong figure, and what belongs there."""
    edits = [*([better] if better else []), *others]
    if not edits:
        return notice
    first = replace(edits[0], sure=len(edits) == 1)
    marks = (Mark(first.place, "cut here" if better else "stated here"), *notice.marks)
    once = {mark.place: mark for mark in reversed(marks)}
    return replace(
        notice,
        marks=tuple(sorted(once.values(), key=marks.index)),
        stated=bare(first.old),
        needed=bare(first.new),
        edits=(first, *edits[1:]),
    )


def bare(text: str) -> str:
    """A size without the word: `6 1/2` of `6 1/2 square`."""
    return text.removesuffix(" square")
