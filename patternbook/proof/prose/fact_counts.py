"""Numbers that are counted: pieces, strips, units, rows, packs and panels, each with its noun."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Final, NamedTuple

from patternbook.cutting.records import FabricPlan
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import LayoutMade, Piece, PiecedMade, StripSetMade, Unit
from patternbook.sewing.records import LineStep, PieceStep, SegmentStep

SHAPES: Final = frozenset(("squares", "rectangles", "triangles", "pieces", "patches"))


class Number(NamedTuple):
    """How many: of which part, under which noun. `total`: of the whole quilt, rather than for one
    unit, strip or set."""

    part: str
    noun: str
    value: int
    total: bool = True


def numbers(known: Evidence) -> Iterator[Number]:
    """All that one size counts."""
    for piece in known.quilt.pieces.values():
        yield from _piece(known, piece)
    yield from _strips(known)
    for unit in known.quilt.units.values():
        yield from _unit(known, unit)
    yield from _steps(known)
    yield from _bought(known)
    for name, own in known.quilt.numbers.items():
        yield Number("", name, own, total=False)
    yield Number("", "pieces", known.sewing.totals.pieces)
    yield Number("", "seams", known.sewing.totals.seams)
    yield Number("", "prints", sum(fabric.prints for fabric in known.quilt.fabrics.values()))


def _piece(known: Evidence, piece: Piece) -> Iterator[Number]:
    plan = known.cutting.letters.get(piece.letter)
    if not piece.is_strip:
        noun = "triangles" if piece.diagonal else "pieces"
        yield Number(piece.letter, noun, piece.count)
        yield Number(piece.letter, noun, piece.count + piece.spare)
        for hand in (piece.mirrored, piece.count - piece.mirrored):
            yield Number(piece.letter, noun, hand, total=False)
        if plan is not None:
            yield Number(piece.letter, "squares" if piece.diagonal else "pieces", plan.cuts)
    for run in piece.runs:
        yield Number(piece.letter, "lengths", run.number)
    if plan is not None:
        yield Number(piece.letter, "strips", plan.strips)
        for each in (plan.per_strip, plan.fits, plan.each, plan.own):
            yield Number(piece.letter, "pieces", each, total=False)


def _strips(known: Evidence) -> Iterator[Number]:
    """Strips of a cloth in all, and of each width."""
    for name, cloth in known.cutting.fabrics.items():
        yield Number(name, "strips", sum(strip.times for strip in cloth.strips))
        widths: Counter[object] = Counter()
        for strip in cloth.strips:
            widths[strip.width] += strip.times
            yield Number(name, "strips", strip.times, total=False)
        for number in widths.values():
            yield Number(name, "strips", number, total=False)
        yield from _sheets(name, cloth)
    if known.cutting.binding:
        yield Number("binding", "strips", known.cutting.binding.strips)


def _sheets(name: str, cloth: FabricPlan) -> Iterator[Number]:
    """What one pre-cut square, quarter or panel gives."""
    for sheet in cloth.sheets:
        yield Number(name, "precuts", sheet.times, total=False)
        yield Number(name, "strips", sum(row.times for row in sheet.rows), total=False)
        for row in sheet.rows:
            yield Number(name, "strips", row.times, total=False)
            for cut in cloth.strips[row.strip].cuts:
                yield Number(cut.letter, "pieces", cut.number * row.times, total=False)
                yield Number(cut.letter, "strips", row.times, total=False)


def _unit(known: Evidence, unit: Unit) -> Iterator[Number]:
    yield Number(unit.name, "units", unit.make)
    for hand in (unit.mirrored, unit.make - unit.mirrored):
        yield Number(unit.name, "units", hand, total=False)
    for part, number in unit.uses.items():
        yield Number(part, "units" if part in known.quilt.units else "pieces", number, total=False)
    yield Number(unit.name, "pieces", sum(unit.uses.values()), total=False)
    made = unit.made
    if isinstance(made, StripSetMade):
        yield Number(unit.name, "sets", made.sets)
        for number in (made.per_set, made.fits):
            yield Number(unit.name, "slices", number, total=False)
        yield Number(unit.name, "strips", len(made.strips), total=False)
        yield Number(unit.name, "strips", len(made.strips) * made.sets)
    elif isinstance(made, PiecedMade):
        yield Number(unit.name, "units", made.gives, total=False)
        yield Number(unit.name, "pairs", made.goes)
        for part, number in made.takes:
            yield Number(part, "pieces", number, total=False)
    else:
        yield from _layout(unit, made)


def _layout(unit: Unit, made: LayoutMade) -> Iterator[Number]:
    main = [line for line in made.lines if line.role != "sash"]
    along = max((len(line.parts) for line in main), default=0)
    noun, other = ("columns", "rows") if made.by == "columns" else ("rows", "columns")
    yield Number(unit.name, noun, len(main))
    yield Number(unit.name, noun, len(made.lines), total=False)
    yield Number(unit.name, "borders", len(made.borders))
    for line in made.lines:
        yield Number(unit.name, other, len(line.parts), total=False)
        for part, number in Counter(placed.part for placed in line.parts).items():
            yield Number(part, "pieces", number, total=False)
    if made.setting == "straight" and not made.sash:
        yield Number(unit.name, other, along)
    yield Number(unit.name, "blocks", sum(len(line.parts) for line in main), total=False)


def _steps(known: Evidence) -> Iterator[Number]:
    for step in known.sewing.steps:
        yield Number(step.unit, "step", step.make, total=False)
        yield Number(step.unit, "step", step.one, total=False)
        yield Number(step.unit, "seams", step.seams, total=False)
        for taken in step.parts:
            yield Number(taken.part, "step", taken.one, total=False)
            yield Number(taken.part, "step", taken.all, total=False)
        if isinstance(step, SegmentStep):
            yield Number(step.unit, "slices", step.cut)
            yield Number(step.unit, "slices", step.make)
        elif isinstance(step, PieceStep):
            yield Number(step.unit, "step", step.goes, total=False)
        elif isinstance(step, LineStep):
            yield Number(step.unit, step.role, len(step.numbers), total=False)
        for round_ in step.rounds:
            for number in (round_.joins, round_.all, round_.left):
                yield Number(step.unit, "step", number, total=False)


def _bought(known: Evidence) -> Iterator[Number]:
    for fabric in known.quilt.fabrics.values():
        yield Number(fabric.name, "prints", fabric.prints)
        if fabric.pack:
            yield Number(fabric.name, "pieces", fabric.pack, total=False)
    for name, cloth in known.cutting.fabrics.items():
        if cloth.buy.packs is not None:
            yield Number(name, "packs", cloth.buy.packs)
        if cloth.buy.number is not None:
            yield Number(name, "precuts", cloth.buy.number)
        for letter, number in cloth.buy.more.items():
            yield Number(letter, "pieces", number, total=False)
    if known.cutting.backing:
        yield Number("backing", "panels", known.cutting.backing.best.panels)
