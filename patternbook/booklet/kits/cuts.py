"""The cutting plan for all kits together: strips by width, and what each of them gives."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Align, Row, Table
from patternbook.booklet.chart_strips import length_of
from patternbook.booklet.kits.bag import how_large, how_many
from patternbook.booklet.kits.book import KitBook, called, cloth_of
from patternbook.cutting.cloth import form_of
from patternbook.cutting.records import Cut, FabricPlan, Sheet, Strip
from patternbook.inch import System

HEAD = ("Width of strip", "Strips", "Each strip gives", "In all")
ALIGN: tuple[Align, ...] = ("number", "words", "words")


@dataclass(frozen=True)
class Cuts:
    """How to cut, a table for each fabric, and the pieces counted."""

    title: str
    how: tuple[str, ...]
    fabrics: tuple[Table, ...]
    sheets: tuple[str, ...]
    totals: Table


def cuts(kits: KitBook) -> Cuts:
    """The plan of every fabric that is cut."""
    cut = [plan for plan in kits.all.fabrics.values() if plan.strips]
    together = "all kits together" if kits.number > 1 else "one kit"
    return Cuts(
        f"Cutting plan for {together}",
        tuple(_how(kits)),
        tuple(_table(kits, plan) for plan in cut),
        tuple(line for plan in cut for line in _sheets(kits, plan)),
        _totals(kits),
    )


def _how(kits: KitBook) -> Iterator[str]:
    steps = [step for plan in kits.all.fabrics.values() for step in plan.steps]
    edge = next((step.width for step in steps if step.kind == "straighten" and step.width), None)
    if edge is not None:
        length = wording.length(edge, kits.system)
        yield f"Straighten the edge of each length of cloth: about {length} comes off."
    yield "Cut the strips across the cloth, in the order of the tables: the widest come first."
    layers = max((step.layers for step in steps if step.kind in ("trim", "subcut")), default=1)
    if layers > 1:
        yield (
            f"Stack strips of one width in up to {wording.spelled(layers)} layers, trim off the "
            "selvedge ends, and cut the pieces."
        )
    diagonal = [line.letter for line in kits.bag if line.diagonal]
    if diagonal:
        yield f"Cut {wording.listed(diagonal)} on the diagonal last; the booklet shows how."
    pieces = kits.quilt.pieces.values()
    trimmed = [piece.letter for piece in pieces if piece.template and piece.template.trims]
    if trimmed:
        their = "its template" if len(trimmed) == 1 else "their templates"
        yield f"Cut {wording.listed(trimmed)} by {their}, which the booklet has at its end."
    yield "Pile each letter apart with its label, and count the piles before you fill the bags."


def _table(kits: KitBook, plan: FabricPlan) -> Table:
    name = f"From {plan.fabric.replace('-', ' ')}" if plan.fabric else "From one fabric"
    rows = tuple(_row(kits.system, strip) for strip in plan.strips)
    length = wording.length(plan.length, kits.system)
    caption = f"{name}: {length} of cloth"
    if plan.buy.number is not None:
        caption = name
    return Table(caption, HEAD, rows, ALIGN)


def _row(system: System, strip: Strip) -> Row:
    width = wording.length(strip.width, system)
    if strip.along == "length":
        width += " along the selvedge"
    elif strip.beside:
        width += " beside those lengths"
    return Row(width, (str(strip.times), gives(system, strip), _all(system, strip)))


def gives(system: System, strip: Strip) -> str:
    """`eight A, two B`; a strip that is bagged whole says so."""
    if not strip.cuts:
        return "to spare"
    if strip.join:
        what = wording.listed(called(letter) for letter in strip.letters)
        return f"{what}, once they are joined"
    if all(cut.whole for cut in strip.cuts):
        return f"{called(strip.cuts[0].letter)}, whole"
    stacked = (one for cut in strip.cuts for one in cut.stacked)
    return wording.listed(_told(system, strip, one, wording.spelled(one.number)) for one in stacked)


def _told(system: System, strip: Strip, cut: Cut, number: str) -> str:
    """`eight A`; lengths of a strip letter by their length."""
    told = f"{number}{wording.NBSP}{called(cut.letter)}"
    return f"{told} of {wording.length(length_of(strip, cut), system)}" if cut.use else told


def _all(system: System, strip: Strip) -> str:
    if not strip.cuts or strip.join:
        return wording.NONE
    if all(cut.whole for cut in strip.cuts):
        return f"{wording.counted(strip.times, 'strip')} of {called(strip.cuts[0].letter)}"
    stacked = [one for cut in strip.cuts for one in cut.stacked]
    if any(one.use and not one.whole for one in stacked):
        return ", ".join(
            _told(system, strip, one, str(one.number * strip.times)) for one in stacked
        )
    return ", ".join(
        f"{strip.pieces(letter)}{wording.NBSP}{called(letter)}" for letter in strip.letters
    )


def _sheets(kits: KitBook, plan: FabricPlan) -> Iterator[str]:
    """How strips lie in pre-cut squares, quarters and panels."""
    fabric = kits.quilt.fabrics.get(plan.fabric)
    if fabric is None:
        return
    for sheet in plan.sheets:
        word = wording.counted(sheet.times, form_of(fabric).one)
        each = " each" if sheet.times > 1 else ""
        way = " along its length" if sheet.turned else ""
        yield f"{cloth_of(plan.fabric)}: {word}{each}{way}: {_lie(kits.system, plan, sheet)}."


def _lie(system: System, plan: FabricPlan, sheet: Sheet) -> str:
    return wording.listed(
        f"{wording.spelled(row.times)} {'strip' if row.times == 1 else 'strips'} "
        f"{wording.length(plan.strips[row.strip].width, system)} wide for "
        f"{wording.listed(map(called, plan.strips[row.strip].letters)) or 'spare'}"
        for row in sheet.rows
    )


def _totals(kits: KitBook) -> Table:
    rows = tuple(
        Row(
            called(line.letter),
            (
                how_many(line, kits.number),
                how_many(line, 1),
                cloth_of(line.fabric),
                how_large(kits.system, line),
            ),
        )
        for line in kits.bag
    )
    head = ("Letter", "In all", "In each bag", "Fabric", "Cut size")
    return Table("Pieces counted", head, rows, ("number", "number", "words", "words"))
