"""The cutting chart, read back: every letter's number, cut size, strips and their width."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Final

from patternbook.booklet.readback.reading import Differs, Table, compared, title
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.records import BINDING, LetterPlan
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Piece, PiecedMade

HEAD: Final = ("Pieces", "Cut size", "Strips", "Wide")
# Where letters share strips of several widths: these have a table of their own.
SHORT: Final = HEAD[:2]


def chart(found: Sequence[Table], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """Every letter of every size, and no letter more; a size alone is told in sentences."""
    charts = [table for table in found if table.head[1:] in {HEAD, SHORT}]
    for size, known in sizes.items() if len(sizes) > 1 else ():
        own = [table for table in charts if is_of(table, size, len(sizes))]
        rows = {row.cells[0]: (row, table.head[1:]) for table in own for row in table.rows}
        cut = {letter for plan in known.cutting.fabrics.values() for letter in _letters(plan)}
        for letter in sorted(cut):
            label = "Binding" if letter == BINDING else letter
            row, head = rows.pop(label, (None, HEAD))
            yield from _compared(letter, size, known, row, head)
        for label, (row, _) in rows.items():
            yield Differs(f"a row {label} of the cutting chart", size, row.page, label, "nothing")


def is_of(table: Table, size: str, sizes: int) -> bool:
    """Whether a table stands in the chart of this size."""
    return sizes == 1 or table.under.startswith(f"{title(size)},")


def _letters(plan: object) -> Iterator[str]:
    for strip in getattr(plan, "strips", ()):
        yield from strip.letters


def _compared(
    letter: str, size: str, known: Evidence, row: Line | None, head: Sequence[str]
) -> Iterator[Differs]:
    columns = _binding(known) if letter == BINDING else _piece(letter, known)
    for at, (word, right) in enumerate(zip(head, columns, strict=False), 1):
        if right is None:
            continue
        what = f"{word.lower()} of {letter} in the cutting chart"
        yield from compared(what, size, row, at, right)


Columns = tuple[tuple[Fraction | None, ...] | None, ...]


def _binding(known: Evidence) -> Columns:
    plan = known.cutting.binding
    if plan is None or plan.square is not None:
        return None, None, None, None
    return (), (), (Fraction(plan.strips),), (plan.cut,)


def _piece(letter: str, known: Evidence) -> Columns:
    piece, plan = known.quilt.pieces[letter], known.cutting.letters[letter]
    wide: tuple[Fraction, ...] = () if plan.host else (plan.strip_width,)
    strips: tuple[Fraction, ...] = () if plan.host else (Fraction(plan.strips),)
    if piece.is_strip:
        return _lengths(piece, known), (), strips, wide
    return (Fraction(_squares(piece, plan)),), _sides(piece), strips, wide


def _sides(piece: Piece) -> tuple[Fraction | None, ...]:
    return piece.cut.across, piece.cut.down


def _squares(piece: Piece, plan: LetterPlan) -> int:
    """Squares, where they are cut again on the diagonal: two triangles of each, or four."""
    each = {None: 1, "once": 2, "twice": 4}[piece.diagonal]
    needed = piece.count + piece.spare
    return plan.cuts if plan.cuts * each >= needed else needed


def _lengths(piece: Piece, known: Evidence) -> tuple[Fraction, ...]:
    """How many lengths, where they are cut beforehand."""
    number = Fraction(sum(run.number for run in piece.runs))
    return (number,) if logs(piece, known) and not all(run.whole for run in piece.runs) else ()


def logs(piece: Piece, known: Evidence) -> bool:
    """Whether a strip is cut beforehand into lengths: the logs of a block."""
    units, runs = known.quilt.units, [run for run in piece.runs if not run.whole]
    return bool(runs) and all(
        run.use in units and isinstance(units[run.use].made, PiecedMade) for run in runs
    )
