"""The words of the pictures, read back: letters are the pattern's, and so are all measures."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from fractions import Fraction
from functools import cache
from typing import Final

from patternbook.booklet.readback.reading import Differs, near, numbers
from patternbook.booklet.readback.seamed import between_seams, longer_than_measured
from patternbook.booklet.readback.tagged import FIGURE, Line
from patternbook.exact import Exact
from patternbook.methods.made import Placed
from patternbook.proof.evidence import Evidence

_LETTER: Final = re.compile(r"[A-HJ-NP-Z]{1,2}[0-9]?")
_MARKED: Final = re.compile(r"[0-9½¼¾⅛⅜⅝⅞⅓⅔⁄ .×]+(?:″| cm)$")
# The seam test, the scale's own inch and the tools are of no size of the pattern.
CHAPTERS: Final = ("Cutting", "Sewing, step by step", "Finishing")
# Where patches lie, and sketches: no length that is cut or sewn; nor ways of cutting not taken.
SKIPPED: Final = frozenset(
    {"placed", "sketch", "standings", "places", "key_places", "outline", "other_ways"}
)
TEST: Final = "Test your seam"


def pictures(
    lines: Sequence[Line], letters: frozenset[str], right: frozenset[Fraction]
) -> Iterator[Differs]:
    """Labels that name no piece, and measures that the pattern does not have."""
    chapter = under = ""
    for line in lines:
        if line.kind in {"H1", "H2"}:
            chapter, under = line.words, ""
        elif line.kind == "H3":
            under = line.words
        elif line.kind == FIGURE and chapter in CHAPTERS and under != TEST:
            yield from _labels(line, letters, right)


def _labels(line: Line, letters: frozenset[str], right: frozenset[Fraction]) -> Iterator[Differs]:
    for label in dict.fromkeys(line.cells):
        if _LETTER.fullmatch(label) and label not in letters:
            yield Differs("a letter in a picture", "", line.page, label, "no such piece")
        elif _MARKED.fullmatch(label) and not right.issuperset(numbers(label)):
            yield Differs("a measure in a picture", "", line.page, label, "none like it")


def lengths(known: Evidence) -> frozenset[Fraction]:
    """Every length in the records of one size, as it can be printed."""
    system = known.quilt.system
    parts = (known.quilt, known.cutting, known.sewing)
    seamed: tuple[Exact | Fraction, ...] = (
        *between_seams(known.cutting.backing),
        *longer_than_measured(known),
    )
    return frozenset(near(value, system) for value in {*_lengths(parts), *seamed})


@cache
def _names(kind: type) -> tuple[str, ...]:
    return tuple(one.name for one in fields(kind) if one.name not in SKIPPED)


def _lengths(held: object) -> Iterator[Exact | Fraction]:
    if isinstance(held, Exact | Fraction):
        yield held
    elif isinstance(held, Mapping):
        for one in held.values():
            yield from _lengths(one)
    elif isinstance(held, Placed):
        yield from (held.across, held.down)
    elif isinstance(held, tuple):
        for one in held:
            yield from _lengths(one)
    elif is_dataclass(held) and not isinstance(held, type):
        for name in _names(type(held)):
            yield from _lengths(getattr(held, name))
