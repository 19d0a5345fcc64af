"""How the cutting was planned, in a sentence or two: the style, what was shown of it, and what
another style would save."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book
from patternbook.booklet.chart_strips import lengthwise
from patternbook.booklet.cloth_words import label
from patternbook.cutting.records import FabricPlan, Style
from patternbook.proof.evidence import Evidence
from patternbook.proof.least import rests_on_trying

HOW: Final[dict[Style, str]] = {
    "plain": "Every letter has strips of its own.",
    "shared": (
        "Letters share strips, and some pieces are trimmed from a wider strip or lie in a stack: "
        "cut strip by strip, as the lays show."
    ),
    "thrifty": (
        "Letters share strips, and pieces of several letters lie in one stack: cut strip by "
        "strip, as the lays show."
    ),
}
OTHERWISE: Final[dict[Style, str]] = {
    "plain": "With strips of its own for every letter",
    "shared": "Where letters share strips",
    "thrifty": "Where letters share strips and stacks",
}


def how_planned(book: Book) -> str:
    """The note on the way of cutting."""
    style = book.first.quilt.settings.cutting
    said = [HOW[style], *_along(book), *_shown(book, style), *_saved(book, style)]
    return " ".join(said)


def _plans(book: Book) -> Iterator[tuple[Evidence, FabricPlan]]:
    for known in book.all:
        for plan in known.cutting.fabrics.values():
            yield known, plan


def _along(book: Book) -> Iterator[str]:
    """`F of Saucer is cut along the length of the cloth (twin): across it you would buy ⅛ yd
    more.`"""
    found: dict[tuple[tuple[str, ...], str, Fraction], list[str]] = {}
    for known, plan in _plans(book):
        for letters, more in _chosen_along(plan):
            key = (letters, wording.title(plan.fabric), more)
            found.setdefault(key, []).append(known.quilt.size)
    for (letters, cloth, more), named in found.items():
        lies = "is" if len(letters) == 1 else "are"
        buys = f"you would buy {wording.amount(more, book.system.bolt_unit)} more" if more else (
            "it would take more cloth"
        )  # fmt: skip
        yield (
            f"{wording.listed(letters)} of {cloth} {lies} cut along the length of the "
            f"cloth{_where(book, named)}: across it {buys}."
        )


def _chosen_along(plan: FabricPlan) -> Iterator[tuple[tuple[str, ...], Fraction]]:
    """The letters laid along the cloth because more is bought where they lie across it, and how
    much more."""
    if not plan.other_ways:
        return
    across = min(plan.other_ways, key=lambda way: len(lengthwise(way)))
    letters = tuple(letter for letter in lengthwise(plan) if letter not in lengthwise(across))
    if letters:
        yield letters, (across.buy.amount or Fraction(0)) - (plan.buy.amount or Fraction(0))


def _shown(book: Book, style: Style) -> Iterator[str]:
    """What is claimed of a planned cutting, and no more than was shown."""
    if style == "plain":
        return
    open_ones = [pair for pair in _plans(book) if pair[1].style == style and not pair[1].proven]
    if not open_ones:
        yield "No cutting of this kind needs less to be bought."
    for known, plan in open_ones:
        takes = wording.length(plan.length, book.system)
        least = wording.length(plan.bound, book.system)
        yield (
            f"{_cloth(known, plan)}, {known.quilt.size}: the plan takes {takes}, and none of this "
            f"kind takes less than {least}."
        )
    yield from _tried(book, style)


def _tried(book: Book, style: Style) -> Iterator[str]:
    """`For Hull (throw) this was found by trying: …`: where a sum alone does not show it."""
    shown = [pair for pair in _plans(book) if pair[1].style == style and pair[1].least]
    found: dict[str, list[str]] = {}
    for known, plan in shown:
        if rests_on_trying(known.quilt, plan):
            found.setdefault(wording.title(plan.fabric), []).append(known.quilt.size)
    if found:
        yield (
            f"For {wording.listed([cloth + _where(book, named) for cloth, named in found.items()])}"
            " this was found by trying: every strip that a cutting from less cloth could have was "
            "tried, and no such cutting can be made of them."
        )
        if len(shown) > sum(map(len, found.values())):
            yield "For all other cloth a sum shows it."


def _cloth(known: Evidence, plan: FabricPlan) -> str:
    fabric = known.quilt.fabrics.get(plan.fabric)
    return label(fabric) if fabric else "The fabric"


def _saved(book: Book, style: Style) -> Iterator[str]:
    """`Where letters share strips you buy less: Floor ¼ yd (throw, queen).`"""
    for other in HOW:
        if other == style:
            continue
        found: dict[tuple[str, Fraction], list[str]] = {}
        for known, plan in _plans(book):
            differs = _differs(plan, other)
            if differs:
                found.setdefault((_cloth(known, plan), differs), []).append(known.quilt.size)
        if found:
            more = "more" if other == "plain" else "less"
            yield f"{OTHERWISE[other]} you buy {more}: {_told(book, found)}."
            return


def _differs(plan: FabricPlan, style: Style) -> Fraction:
    """How much less is bought off the bolt in another style; how much more in plain cutting."""
    for other in plan.others:
        same = other.style == style and other.length != plan.length
        if same and other.amount is not None and plan.buy.amount is not None:
            less = plan.buy.amount - other.amount
            return max(-less if style == "plain" else less, Fraction(0))
    return Fraction(0)


def _told(book: Book, found: dict[tuple[str, Fraction], list[str]]) -> str:
    unit = book.system.bolt_unit
    parts = []
    for (cloth, less), named in found.items():
        parts.append(f"{cloth} {wording.amount(less, unit)}{_where(book, named)}")
    return wording.listed(parts)


def _where(book: Book, named: list[str]) -> str:
    """` (throw, queen)`, where it is not so in every size."""
    if len(named) == len(book.all):
        return ""
    return f" ({', '.join(wording.glued(name) for name in named)})"
