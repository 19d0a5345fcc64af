"""The words of a step, by what is done in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from patternbook.booklet.border_words import border
from patternbook.booklet.order import Together
from patternbook.booklet.piece_words import piece
from patternbook.booklet.row_words import line, lines
from patternbook.booklet.set_words import segments, strips
from patternbook.booklet.step_facts import CHECK, Context, Fact, Words
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import (
    BorderStep,
    LinesStep,
    LineStep,
    PieceStep,
    SegmentStep,
    Step,
    StripStep,
)


def words(step: Together, sizes: Sequence[Evidence]) -> Words:
    """All that is said of it, but for pressing and the author's note."""
    where = Context(step, tuple(sizes))
    said = _said(step, where)
    if any(made.last and _mirrored(made, known) for known, made in where.found()):
        return replace(said, facts=(*said.facts, MIRRORED))
    return said


def _mirrored(step: Step, known: Evidence) -> int:
    """How many of the unit are made the other hand."""
    return known.quilt.units[step.unit].mirrored


MIRRORED: Final = Fact(
    "Of these the other hand, as in a mirror",
    "{} of these are made the other hand, as in a mirror: lay every part the other way round.",
    lambda step, known: str(_mirrored(step, known)),
)


def _said(step: Together, where: Context) -> Words:
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
        case PieceStep():
            return piece(where)
        case _:
            return Words(where.name, (), (CHECK,))
