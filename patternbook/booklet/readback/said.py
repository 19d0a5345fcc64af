"""Counts that a step tells in a sentence, where all its sizes have the same."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Final

from patternbook.booklet.readback.counted import right_counts
from patternbook.booklet.readback.reading import Differs
from patternbook.booklet.readback.steps import CHAPTER, made_of, unit_of
from patternbook.booklet.readback.tagged import Line
from patternbook.inch import printed
from patternbook.proof.evidence import Evidence

# How a sentence says what a table calls by its first word.
SAID: Final = (
    ("Make this many sets", re.compile(r"\bMake (\d+) sets\b")),
    ("Make", re.compile(r"\bMake (\d+)\.")),
    ("Slices to cut", re.compile(r"\bCut (\d+) slices\b")),
    ("Slices to sew on", re.compile(r"\b(\d+) are sewn on\b")),
    ("Times to do this", re.compile(r"\bDo this (\d+) times\b")),
    ("Wanted", re.compile(r"\b(\d+) are wanted\b")),
)


def said(lines: Sequence[Line], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """A count that is right in no size of its unit."""
    chapter, unit = "", None
    for line in lines:
        if line.kind in {"H1", "H2"}:
            chapter, unit = line.words, None
        elif line.kind == "H3" and chapter == CHAPTER:
            unit = unit_of(line.words, sizes)
        elif unit is not None and line.kind in {"P", "LI"}:
            yield from _counts(line, unit, sizes)


def _counts(line: Line, unit: str, sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    for label, pattern in SAID:
        for found in pattern.findall(line.words):
            right = _right(label, unit, sizes)
            if right and Fraction(found) not in right:
                best = " or ".join(sorted(printed(value) for value in right))
                yield Differs(f"{label} ({unit})", "", line.page, found, best)


def _right(label: str, unit: str, sizes: Mapping[str, Evidence]) -> set[Fraction]:
    """What the sentence may say, in any size."""
    found: set[Fraction] = set()
    for known in sizes.values():
        if unit in known.quilt.units:
            found.update(made_of(unit, known).get(label, ()))
            found.update(value for values in right_counts(label, unit, known) for value in values)
    return found
