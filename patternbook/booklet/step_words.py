"""The words of a step, by what is done in it."""

from __future__ import annotations

from collections.abc import Sequence

from patternbook.booklet.border_words import border
from patternbook.booklet.order import Together
from patternbook.booklet.row_words import line, lines
from patternbook.booklet.set_words import segments, strips
from patternbook.booklet.step_facts import CHECK, Context, Words
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import (
    BorderStep,
    LinesStep,
    LineStep,
    SegmentStep,
    StripStep,
)


def words(step: Together, sizes: Sequence[Evidence]) -> Words:
    """All that is said of it, but for pressing and the author's note."""
    where = Context(step, tuple(sizes))
    match step.any:
        case StripStep() as first:
            return strips(first, where)
        case SegmentStep() as first:
            return segments(first, where)
        case LineStep() as first:
            return line(first, where)
        case LinesStep() as first:
            return lines(first, where)
        case BorderStep() as first:
            return border(first, where)
        case _:
            return Words(where.name, (), (CHECK,))
