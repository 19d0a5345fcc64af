"""The cutting chart of one size: for each fabric its strips and what is cut from them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Align, Row, Table
from patternbook.booklet.chart_strips import by_strips, letters, strips
from patternbook.cutting.records import BINDING, BindingPlan, FabricPlan, LetterPlan
from patternbook.inch import System
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Piece, PiecedMade

HEAD: Final = ("Pieces", "Cut size", "Strips", "Wide")
ALIGN: Final[tuple[Align, ...]] = ("number", "number", "number", "number")
TO_MEASURE: Final = "to your measure"
WHOLE: Final = "whole strips"
AS_BELOW: Final = "lengths below"


def charts(known: Evidence) -> tuple[Table, ...]:
    """The tables of each fabric that pieces or binding are cut from."""
    plans = known.cutting.fabrics.items()
    return tuple(table for name, plan in plans if plan.strips for table in _tables(known, name))


def _tables(known: Evidence, name: str) -> Iterator[Table]:
    """One that says the strips of each letter; where letters share strips of several widths, one
    of the letters and one of the strips."""
    plan, head = known.cutting.fabrics[name], called(name)
    rows = tuple(_row(known, letter) for letter in order(plan))
    if not by_strips(plan):
        yield Table("", (head, *HEAD), rows, ALIGN)
        return
    yield letters(head, rows)
    yield strips(known, plan)


def called(fabric: str) -> str:
    """`From books`."""
    return f"From {fabric.replace('-', ' ')}" if fabric else "From one fabric"


def order(plan: FabricPlan) -> tuple[str, ...]:
    """The letters in the order of cutting: widest strips first, longest pieces first."""
    return tuple(dict.fromkeys(letter for strip in plan.strips for letter in strip.letters))


def _row(known: Evidence, letter: str) -> Row:
    if letter == BINDING and known.cutting.binding:
        return _binding(known.cutting.binding, known.quilt.system)
    piece, cut = known.quilt.pieces[letter], known.cutting.letters[letter]
    number, size = _pieces(known, piece, cut)
    taken, wide = _strips(known, cut)
    return Row(letter, (number, size, taken, wide))


def _pieces(known: Evidence, piece: Piece, cut: LetterPlan) -> tuple[str, str]:
    """How many, and what size: squares, where they are cut again on the diagonal."""
    if piece.is_strip:
        whole = all(run.whole for run in piece.runs)
        if whole:
            return wording.NONE, WHOLE
        if cut_to_length(known, piece.letter):
            return str(sum(run.number for run in piece.runs)), AS_BELOW
        if piece.along == "length":
            return wording.NONE, AS_BELOW
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
    if letter == BINDING:
        return True
    piece = known.quilt.pieces[letter]
    return piece.is_strip and piece.along == "width"


def cut_to_length(known: Evidence, letter: str) -> bool:
    """Whether a strip's lengths are cut beforehand: the logs of a block, and not a border's."""
    units = known.quilt.units
    piece = known.quilt.pieces.get(letter)
    runs = [run for run in piece.runs if not run.whole] if piece else []
    return bool(runs) and all(
        run.use in units and isinstance(units[run.use].made, PiecedMade) for run in runs
    )
