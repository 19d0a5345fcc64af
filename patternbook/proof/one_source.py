"""The cutting chart, the strips and the cutting steps say one and the same of a letter."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from patternbook.cutting.records import BINDING, FabricPlan, LetterPlan
from patternbook.notice import Notice
from patternbook.proof.double_entry import EACH
from patternbook.proof.evidence import Evidence
from patternbook.proof.fits import BOLTS
from patternbook.proof.recounted import recounted
from patternbook.quilt.records import Piece, Quilt, StripSetMade


def one_source(evidence: Evidence) -> Iterator[Notice]:
    """Errors where two records of one letter differ."""
    quilt, cutting = evidence.quilt, evidence.cutting
    for plan in cutting.fabrics.values():
        given = _given(plan)
        yield from _steps(quilt, plan, given)
        for letter, cuts in given.items():
            chart, piece = cutting.letters.get(letter), quilt.pieces.get(letter)
            if chart is None or piece is None:
                continue
            each = EACH[piece.diagonal]
            told = (cutting.yields.get(letter), plan.yields.get(letter))
            if told != (cuts * each, cuts * each):
                message = f"{letter}: its strips give {cuts * each}, the chart says {told[0]}."
                yield recounted(quilt, "one-source", "R20", message, piece.place)
            yield from _chart(quilt, piece, chart, cuts)


def _given(plan: FabricPlan) -> Counter[str]:
    """Pieces off the strips, by letter."""
    given: Counter[str] = Counter()
    for strip in plan.strips:
        for letter in strip.letters:
            given[letter] += strip.pieces(letter)
    return given


def _chart(quilt: Quilt, piece: Piece, chart: LetterPlan, cuts: int) -> Iterator[Notice]:
    needed = piece.count + piece.spare
    if piece.is_strip:
        needed = sum(run.number for run in piece.runs)
    if (chart.size, chart.cuts, chart.needed) != (piece.cut, cuts, needed):
        message = (
            f"{piece.letter}: the chart has {chart.cuts} cuts for {chart.needed} pieces; its "
            f"strips give {cuts}, {needed} are needed."
        )
        yield recounted(quilt, "one-source", "R20", message, piece.place)


def _steps(quilt: Quilt, plan: FabricPlan, given: Counter[str]) -> Iterator[Notice]:
    """The steps cut every strip and every piece, once; pre-cuts may be used as they are."""
    done: Counter[str] = Counter()
    strips = 0
    for step in plan.steps:
        if step.kind == "subcut":
            for letter in step.letters:
                done[letter] += step.total
        elif step.kind == "strip":
            strips += step.times
    for letter, number in given.items():
        sets, full = _uncut(quilt, plan, letter)
        as_it_is = plan.form not in BOLTS and not done[letter]
        right = number - sets - full <= done[letter] <= number - sets
        if not right and letter != BINDING and not as_it_is:
            message = f"the steps cut {done[letter]} {letter}, the strips give {number - sets}."
            piece = quilt.pieces.get(letter)
            yield recounted(quilt, "one-source", "R20", message, piece.place if piece else None)
    laid = sum(strip.times for strip in plan.strips)
    if plan.form in BOLTS and strips != laid:
        message = f"{plan.fabric}: the steps cut {strips} strips, {laid} are laid out."
        yield recounted(quilt, "one-source", "R20", message)


def _uncut(quilt: Quilt, plan: FabricPlan, letter: str) -> tuple[int, int]:
    """Lengths that go into strip sets whole; and those as long as the strip, which may be."""
    sets = {name for name, unit in quilt.units.items() if isinstance(unit.made, StripSetMade)}
    whole = full = 0
    for strip in plan.strips:
        for cut in (one for column in strip.cuts for one in column.stacked):
            if cut.letter != letter or strip.join:
                continue
            if cut.use in sets:
                whole += cut.number * strip.times
            elif cut.along == strip.length:
                full += cut.number * strip.times
    return whole, full
