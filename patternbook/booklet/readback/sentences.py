"""The sentences, read back: every measure in them is one that the pattern has."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from patternbook.booklet.readback.reading import Differs, numbers
from patternbook.booklet.readback.tagged import Line
from patternbook.inch import GLYPH
from patternbook.proof.evidence import Evidence

# The quilting has its own plan, which is not among the records here.
CHAPTERS: Final = ("At a glance", "Cutting", "Sewing, step by step", "Finishing")
_NUMBER: Final = rf"(?:\d+{GLYPH}|{GLYPH}|\d+ \d+⁄\d+|\d+⁄\d+|\d+(?:\.\d+)?)"
_MARKED: Final = re.compile(rf"(?:{_NUMBER} × )?{_NUMBER}(?:″| cm)")
_TYPED: Final = re.compile(r"(?:(\d+) )?(\d+)/(\d+)|(\d+(?:\.\d+)?)")


def sentences(lines: Sequence[Line], right: frozenset[Fraction]) -> Iterator[Differs]:
    """Measures that are none of the `right` ones: the pattern's, and what its author types."""
    chapter = ""
    for line in lines:
        if line.kind in {"H1", "H2"}:
            chapter = line.words
        elif chapter in CHAPTERS and line.kind in {"LI", "P"}:
            for measure in _MARKED.findall(line.words):
                if not right.issuperset(numbers(measure)):
                    yield Differs("a measure in a sentence", "", line.page, measure, "none like it")


def measures(text: str) -> list[str]:
    """What is printed with the sign of its unit: `6½ × 6½″`."""
    return _MARKED.findall(text)


def typed_by_author(known: Evidence) -> frozenset[Fraction]:
    """Every number in the author's own sentences, which are proof-read by themselves."""
    quilt = known.quilt
    parts = (*quilt.fabrics.values(), *quilt.pieces.values(), *quilt.units.values())
    holders = (*parts, *quilt.quilting, quilt.backing, quilt.batting, quilt.binding)
    borders = (border for _, made in known.layouts() for border in made.borders)
    notes = (getattr(held, "note", None) for held in (*holders, *borders))
    texts = (*quilt.words.values(), *(note for note in notes if note))
    return frozenset(value for text in texts for value in _numbers(text))


def _numbers(text: str) -> Iterator[Fraction]:
    """As they are typed, and as they are printed."""
    yield from numbers(text)
    for whole, top, bottom, plain in _TYPED.findall(text):
        if plain:
            yield Fraction(plain)
        elif int(bottom):
            yield Fraction(int(top), int(bottom)) + int(whole or 0)
