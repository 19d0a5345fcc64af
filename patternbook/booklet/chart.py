"""The cutting chart of one size: for each fabric its strips and what is cut from them."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.booklet import wording
from patternbook.booklet.book import Align, Row, Table
from patternbook.cutting.records import BINDING, BindingPlan, CutStep, FabricPlan, LetterPlan, Strip
from patternbook.inch import System, on_the_ruler
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Piece, PiecedMade

HEAD = ("Pieces", "Cut size", "Strips", "Wide")
ALIGN: tuple[Align, ...] = ("number", "number", "number", "number")
TO_MEASURE = "to your measure"
WHOLE = "whole strips"
AS_BELOW = "lengths below"


def charts(known: Evidence) -> tuple[Table, ...]:
    """A table for each fabric that pieces or binding are cut from."""
    return tuple(
        _chart(known, name, plan) for name, plan in known.cutting.fabrics.items() if plan.strips
    )


def _chart(known: Evidence, name: str, plan: FabricPlan) -> Table:
    called = f"From {name.replace('-', ' ')}" if name else "From one fabric"
    rows = tuple(_row(known, letter) for letter in order(plan))
    return Table("", (called, *HEAD), rows, ALIGN)


def order(plan: FabricPlan) -> tuple[str, ...]:
    """The letters in the order of cutting: widest strips first, longest pieces first."""
    return tuple(dict.fromkeys(letter for strip in plan.strips for letter in strip.letters))


def _row(known: Evidence, letter: str) -> Row:
    if letter == BINDING and known.cutting.binding:
        return _binding(known.cutting.binding, known.quilt.system)
    piece, cut = known.quilt.pieces[letter], known.cutting.letters[letter]
    number, size = _pieces(known, piece, cut)
    strips, wide = _strips(known, cut)
    return Row(letter, (number, size, strips, wide))


def _pieces(known: Evidence, piece: Piece, cut: LetterPlan) -> tuple[str, str]:
    """How many, and what size: squares, where they are cut again on the diagonal."""
    if piece.is_strip:
        whole = all(run.whole for run in piece.runs)
        if whole:
            return wording.NONE, WHOLE
        if _cut_to_length(known, piece.letter):
            return str(sum(run.number for run in piece.runs)), AS_BELOW
        return wording.NONE, TO_MEASURE
    size = wording.cut_size(cut.size, known.quilt.system)
    return str(cut.cuts), size


def _strips(known: Evidence, cut: LetterPlan) -> tuple[str, str]:
    if cut.host:
        return f"with {cut.host}", wording.NONE
    return str(cut.strips), wording.length(cut.strip_width, known.quilt.system)


def _binding(plan: BindingPlan, system: System) -> Row:
    width = wording.length(plan.cut, system)
    if plan.square is not None:
        square = wording.size(plan.square, plan.square, system)
        return Row("Binding", (str(plan.squares), square, "bias", width))
    return Row("Binding", (wording.NONE, WHOLE, str(plan.strips), width))


def is_whole(known: Evidence, letter: str) -> bool:
    """Whether it is cut from the cloth as whole strips."""
    return letter == BINDING or known.quilt.pieces[letter].is_strip


def remarks(known: Evidence, *, shared: bool) -> Iterator[str]:
    """What the chart of one size cannot say in its columns; with `shared` also which strip gives
    what, where no lay is drawn that shows it."""
    if shared:
        for plan in known.cutting.fabrics.values():
            yield from _shared(known, plan)
    for letter in known.quilt.pieces:
        yield from _lengths(known, letter)
    yield from _webs(known)
    yield from _joined(known)
    yield from _diagonal(known)
    yield from _folded(known)


def _shared(known: Evidence, plan: FabricPlan) -> Iterator[str]:
    """Which strip gives what, where letters share strips."""
    guests = {letter for letter, cut in known.cutting.letters.items() if cut.host}
    shared = [strip for strip in plan.strips if guests.intersection(strip.letters)]
    if not shared:
        return
    width = shared[0].width
    group = [strip for strip in plan.strips if strip.width == width and strip.cuts]
    lays = "; ".join(
        f"{_times(strip)} {_gives(strip)}{' each' if strip.times > 1 else ''}" for strip in group
    )
    yield f"Cut the {wording.length(width, known.quilt.system)} strips like this: {lays}."


def _cut_to_length(known: Evidence, letter: str) -> bool:
    """Whether a strip's lengths are cut beforehand: the logs of a block, and not a border's."""
    units = known.quilt.units
    runs = [run for run in known.quilt.pieces[letter].runs if not run.whole]
    return bool(runs) and all(
        run.use in units and isinstance(units[run.use].made, PiecedMade) for run in runs
    )


def _lengths(known: Evidence, letter: str) -> Iterator[str]:
    """How the strips of one letter are cut into the lengths of its logs."""
    cut = known.cutting.letters.get(letter)
    if cut is None or not _cut_to_length(known, letter):
        return
    plan = known.cutting.fabrics[cut.fabric]
    system = known.quilt.system
    lays = "; ".join(
        f"{_times(strip)} {_long(strip, system)}{' each' if strip.times > 1 else ''}"
        for strip in plan.strips
        if letter in strip.letters and not strip.join
    )
    if lays:
        yield f"{letter}, cut to these lengths: {lays}. Sort them by length and label each pile."


def _long(strip: Strip, system: System) -> str:
    return wording.listed(
        f"{wording.spelled(cut.number)}{wording.NBSP}of {wording.length(cut.along, system)}"
        for cut in strip.cuts
    )


def _times(strip: Strip) -> str:
    gives = "gives" if strip.times == 1 else "give"
    return f"{wording.counted(strip.times, 'strip')} {gives}"


def _gives(strip: Strip) -> str:
    return wording.listed(
        f"{wording.spelled(cut.number)}{wording.NBSP}{cut.letter}" for cut in strip.cuts
    )


def _webs(known: Evidence) -> Iterator[str]:
    """Where the shapes are traced on fusible web, row by row."""
    system = known.quilt.system
    for plan in known.cutting.webs.values():
        rows = "; ".join(
            f"{wording.counted(row.times, 'row')} {wording.length(row.down, system)} long with "
            f"{wording.listed(_number(letter, count) for letter, count in row.shapes)}"
            f"{' each' if row.times > 1 else ''}"
            for row in plan.rows
        )
        turned = dict.fromkeys(box.letter for box in plan.boxes if box.turned)
        lying = f" Trace {wording.listed(turned)} lying on its side." if turned else ""
        yield (
            f"Trace the shapes on {plan.fabric.replace('-', ' ')} in rows across it, each with "
            f"{wording.length(plan.margin, system)} more all round: {rows}; "
            f"{wording.length(plan.length, system)} in all.{lying}"
        )


def _number(letter: str, count: int) -> str:
    return f"{wording.spelled(count)}{wording.NBSP}{letter}"


def _joined(known: Evidence) -> Iterator[str]:
    """Pieces longer than the fabric is wide."""
    pieces = known.quilt.pieces
    found = [
        f"{letter} ({pieces[letter].join})"
        for letter, cut in known.cutting.letters.items()
        if cut.joined and not pieces[letter].is_strip
    ]
    if found:
        yield f"Join end to end first: {', '.join(found)}."


def _diagonal(known: Evidence) -> Iterator[str]:
    for letter, cut in known.cutting.letters.items():
        if cut.each > 1:
            twice = "once" if cut.each == 2 else "twice"
            yield (
                f"{letter}: cut each square {twice} on the diagonal, into "
                f"{wording.counted(cut.each, 'triangle')}: {cut.yields} in all."
            )


def _folded(known: Evidence) -> Iterator[str]:
    """What the ruler does not reach across: cut at half the length from a fold, or, where one
    fold is not enough, measured with a tape."""
    halves: dict[str, Fraction] = {}
    longer: list[str] = []
    told: list[str] = []
    for step in _on_a_fold(known):
        letter, half = step.letters[0], (step.length or 0) / Fraction(2)
        if step.measure == half and on_the_ruler(half, known.quilt.system):
            halves[letter] = half
        else:
            longer.append(letter)
    if halves:
        each = ", ".join(
            f"{letter}{wording.NBSP}at{wording.NBSP}{wording.length(half, known.quilt.system)}"
            for letter, half in halves.items()
        )
        told.append(f"Measure from a fold: {each}.")
    if longer:
        told.append(f"With a tape: {', '.join(longer)}.")
    if told:
        yield " ".join(told)


def _on_a_fold(known: Evidence) -> Iterator[CutStep]:
    for plan in known.cutting.fabrics.values():
        for step in plan.steps:
            piece = known.quilt.pieces.get(step.letters[0]) if step.letters else None
            if step.kind == "subcut" and step.on_fold and piece and not piece.is_strip:
                yield step
