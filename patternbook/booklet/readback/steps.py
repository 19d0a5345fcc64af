"""The steps, read back: what each unit should measure, and how many of it are made."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Final

from patternbook.booklet.readback.reading import (
    TOP,
    Differs,
    by_name,
    compared,
    near,
    numbers,
    tables,
)
from patternbook.booklet.readback.tagged import Line
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import PiecedMade, Sides, StripSetMade

_STEP: Final = re.compile(r"\d+ (?P<unit>[^:]+)")
_MEASURE: Final = re.compile(r"[Ss]hould measure (?:about )?(?P<size>\S+ × \S+″|\S+ × \S+ cm)")
CHAPTER: Final = "Sewing, step by step"


def steps(lines: Sequence[Line], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """Measures that no unit has, and numbers that are not made."""
    yield from _measures(lines, sizes)
    for table in tables(lines):
        unit = unit_of(table.under, sizes) if table.chapter == CHAPTER else None
        if unit is None:
            continue
        for size, known in sizes.items():
            column = table.column(size)
            if column is None or unit not in known.quilt.units:
                continue
            for label, right in made_of(unit, known).items():
                row = table.row(label)
                if row is not None and column < len(row.cells):
                    yield from _one_of(f"{label} ({unit})", size, row, column, right)


def _one_of(
    what: str, size: str, row: Line, column: int, right: tuple[Fraction, ...]
) -> Iterator[Differs]:
    shown = numbers(row.cells[column])
    if shown and shown[0] not in right:
        yield from compared(what, size, row, column, right[:1])


def unit_of(heading: str, sizes: Mapping[str, Evidence]) -> str | None:
    """The unit of a step's heading, as `5 Nine: join the rows`."""
    found = _STEP.match(heading)
    if found is None:
        return None
    known = next(iter(sizes.values())).quilt
    if found["unit"].lower() == TOP:
        return known.top
    names = {name for one in sizes.values() for name in one.quilt.units}
    return by_name(names).get(found["unit"].strip())


def made_of(unit: str, known: Evidence) -> Mapping[str, tuple[Fraction, ...]]:
    """What the rows of a step's table may say."""
    made = known.quilt.units[unit].made
    make = Fraction(known.quilt.units[unit].make)
    rounds = tuple(Fraction(step.make) for step in known.sewing.steps if step.unit == unit)
    found = {"Make": (make, *rounds), "Wanted": (make,), "Slices to sew on": (make,)}
    if isinstance(made, StripSetMade):
        found["Make this many sets"] = (Fraction(made.sets),)
        found["Slices to cut"] = (Fraction(made.sets * made.per_set), make)
    if isinstance(made, PiecedMade):
        found["Times to do this"] = (Fraction(made.goes),)
    return found


def _measures(lines: Sequence[Line], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """`Should measure` in a sentence, or in a row with a column for each size."""
    chapter, unit = "", None
    head: tuple[str, ...] = ()
    for line in lines:
        if line.kind in {"H1", "H2"}:
            chapter = line.words
        elif line.kind == "H3" and chapter == CHAPTER:
            unit = unit_of(line.words, sizes)
        elif chapter == CHAPTER and unit is not None and line.kind == "TR":
            head = line.cells if not line.cells[0] or line.cells[0] == "Size" else head
            if line.cells[0].startswith("Should measure"):
                yield from _row(line, unit, head, sizes)
        elif chapter == CHAPTER and unit is not None:
            yield from _sentence(line, unit, sizes)


def _row(
    line: Line, unit: str, head: tuple[str, ...], sizes: Mapping[str, Evidence]
) -> Iterator[Differs]:
    names = by_name(sizes)
    for word, cell in zip(head[1:], line.cells[1:], strict=False):
        size = names.get(word)
        if size is not None:
            yield from _measure(cell, unit, size, line.page, sizes[size])


def _sentence(line: Line, unit: str, sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    found = _MEASURE.search(line.words)
    for size, known in sizes.items() if found else ():
        if found and unit in known.quilt.units:
            yield from _measure(found["size"], unit, size, line.page, known)


def _measure(text: str, unit: str, size: str, page: int, known: Evidence) -> Iterator[Differs]:
    shown = numbers(text)
    right = _known(unit, known)
    if len(shown) == 2 and shown not in right and shown[::-1] not in right:
        whole = known.quilt.units[unit].measure
        best = " × ".join(str(near(side, known.quilt.system)) for side in whole)
        yield Differs(f"what {unit} should measure", size, page, text, best)


def _known(unit: str, known: Evidence) -> frozenset[tuple[Fraction, ...]]:
    """All that the unit measures on the way, in either direction."""
    made = known.quilt.units[unit].made
    system = known.quilt.system
    measures: list[Sides] = [known.quilt.units[unit].measure]
    for step in known.sewing.steps:
        if step.unit == unit:
            measures.append(step.measure)
            rounds = getattr(step, "rounds", ())
            measures += [group.measure for one in rounds for group in one.groups if group.measure]
    if isinstance(made, PiecedMade) and made.before is not None:
        measures.append(made.before)
    return frozenset(tuple(near(side, system) for side in one) for one in measures)
