"""What the chart of one size cannot say in its columns."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.booklet import wording
from patternbook.booklet.chart import cut_to_length
from patternbook.booklet.chart_strips import by_strips, gives
from patternbook.cutting.records import CutStep, FabricPlan, Strip
from patternbook.inch import on_the_ruler
from patternbook.proof.evidence import Evidence


def remarks(known: Evidence, *, shared: bool) -> Iterator[str]:
    """What is told below the chart; with `shared` also which strip gives what, where no lay is
    drawn that shows it."""
    if shared:
        for plan in known.cutting.fabrics.values():
            yield from _shared(known, plan)
    yield from sorted_lengths(known)
    yield from webs(known)
    yield from _joined(known)
    yield from _diagonal(known)
    yield from _folded(known)


def sorted_lengths(known: Evidence) -> Iterator[str]:
    """What becomes of the lengths in the tables below the chart."""
    if any(cut_to_length(known, letter) for letter in known.cutting.letters):
        yield "Sort the lengths and label each pile with its letter and length."


def _shared(known: Evidence, plan: FabricPlan) -> Iterator[str]:
    """Which strip gives what, where letters share strips."""
    guests = {letter for letter, cut in known.cutting.letters.items() if cut.host}
    shared = [strip for strip in plan.strips if guests.intersection(strip.letters)]
    if not shared or by_strips(plan):
        return
    width = shared[0].width
    group = [strip for strip in plan.strips if strip.width == width and strip.cuts]
    lays = "; ".join(
        f"{_times(strip)} {gives(known, strip)}{' each' if strip.times > 1 else ''}"
        for strip in group
    )
    yield f"Cut the {wording.length(width, known.quilt.system)} strips like this: {lays}."


def _times(strip: Strip) -> str:
    verb = "gives" if strip.times == 1 else "give"
    return f"{wording.counted(strip.times, 'strip')} {verb}"


def webs(known: Evidence) -> Iterator[str]:
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
        letter = step.letters[0]
        half = from_a_fold(known, step)
        if half is not None:
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
        told.append(f"With a tape: {', '.join(dict.fromkeys(longer))}.")
    if told:
        yield " ".join(told)


def from_a_fold(known: Evidence, step: CutStep) -> Fraction | None:
    """Half of a piece that is cut from one fold; None where a tape is needed."""
    half = (step.length or 0) / Fraction(2)
    return half if step.measure == half and on_the_ruler(half, known.quilt.system) else None


def _on_a_fold(known: Evidence) -> Iterator[CutStep]:
    for plan in known.cutting.fabrics.values():
        for step in plan.steps:
            piece = known.quilt.pieces.get(step.letters[0]) if step.letters else None
            if step.kind == "subcut" and step.on_fold and piece and not piece.is_strip:
                yield step
