"""The counts in the steps' tables, read back: parts in each, rows to join, places that meet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final

from patternbook.booklet.readback.reading import Differs, Table, numbers
from patternbook.booklet.readback.steps import CHAPTER, unit_of
from patternbook.booklet.readback.tagged import Line
from patternbook.inch import printed
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import LinesStep, LineStep, PieceStep, SegmentStep, Step

Values = tuple[Fraction, ...]
LISTED: Final = 6  # so many numbers of rows are written out; of more, three and the last
PARTS: Final = (" in each", " in all")
LINES: Final = ("Rows", "Columns", "Sash rows", "Diagonal rows")


def counted(found: Sequence[Table], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """Every count that a step has size by size: of its unit, a step must have just that."""
    for table in found:
        unit = unit_of(table.under, sizes) if table.chapter == CHAPTER else None
        for row in table.rows if unit else ():
            for size, known in sizes.items():
                column = table.column(size)
                if unit and column is not None and column < len(row.cells):
                    yield from _one(unit, size, row, column, known)


def _one(unit: str, size: str, row: Line, column: int, known: Evidence) -> Iterator[Differs]:
    label, cell = row.cells[0], row.cells[column]
    right = right_counts(label, unit, known)
    shown = numbers(cell)
    if right and shown and shown not in right:
        told = " or ".join(sorted(_worded(values) for values in right))
        yield Differs(f"{label} ({unit})", size, row.page, cell, told or "nothing")


def right_counts(label: str, unit: str, known: Evidence) -> frozenset[Values]:
    """What a row of this name may say of one of the unit's steps."""
    found = (_figure(label, step) for step in known.sewing.of(unit))
    return frozenset(values for values in found if values is not None)


def _worded(values: Values) -> str:
    return ", ".join(printed(value) for value in values)


def _figure(label: str, step: Step) -> Values | None:
    """What a row of this name says of a step; None where it has no such figure."""
    end = next((end for end in PARTS if label.endswith(end)), None)
    if end is not None:
        return _part(label.removesuffix(end), step)
    if label in LINES:
        return _listed(step) if isinstance(step, LineStep) else None
    if label == "Places in each where seams meet":
        return (Fraction(step.matches),)
    if label in {"Rows to join", "Columns to join"}:
        return (Fraction(step.count),) if isinstance(step, LinesStep) else None
    if label in {"Slices to spare", "To spare"}:
        return (Fraction(step.spare),) if isinstance(step, SegmentStep | PieceStep) else None
    if label == "Make":
        return (Fraction(step.make),)
    return None


def _part(name: str, step: Step) -> Values | None:
    found = (part for part in step.parts if name in {part.part, part.part.replace("-", " ")})
    taken = next(found, None)
    # A letter may be told apart by a number, but the cell holds the count alone.
    return (Fraction(taken.one if taken else 0),)


def _listed(step: LineStep) -> Values:
    every = {after - before for before, after in pairwise(step.numbers)}
    short = len(step.numbers) > LISTED and len(every) == 1
    told = (*step.numbers[:3], step.numbers[-1]) if short else step.numbers
    return tuple(Fraction(number) for number in told)
