"""Finished and raw are never mixed: raw is finished and two seams, of everything that is sewn."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.inch import triangle_allowance
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import place_of, recounted, shown
from patternbook.quilt.records import LayoutMade, Piece, Quilt, Sides, StripSetMade, Unit


def measures(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a raw size is not the finished one and two seams."""
    quilt = evidence.quilt
    for piece in quilt.pieces.values():
        yield from _piece(quilt, piece)
    for unit in quilt.units.values():
        yield from _raw(quilt, unit, f"'{unit.name}'", unit.finished, unit.measure)
        if isinstance(unit.made, LayoutMade):
            yield from _layout(quilt, unit, unit.made)
        elif isinstance(unit.made, StripSetMade):
            yield from _strip_set(quilt, unit, unit.made)


def _raw(quilt: Quilt, unit: Unit, what: str, finished: Sides, measure: Sides) -> Iterator[Notice]:
    for word, done, raw in zip(("wide", "long"), finished, measure, strict=True):
        if done + 2 * quilt.seam != raw:
            sums = f"{shown(done, quilt)} + 2 seams = {shown(done + 2 * quilt.seam, quilt)}"
            message = f"{what} finishes {sums} {word} from raw edge to raw edge, not "
            message += f"{shown(raw, quilt)}."
            yield recounted(quilt, "raw-size", "R12", message, unit.place)


def _piece(quilt: Quilt, piece: Piece) -> Iterator[Notice]:
    """A cut is rounded up to the ruler's next mark at most, and never down. What a template is
    laid on may be larger."""
    for side, done, cut in zip(("across", "down"), piece.finished, piece.cut, strict=True):
        if cut is None:
            continue
        over = cut - done - _loss(quilt, piece)
        if piece.template is not None and over >= 0:
            continue
        if over != 0 and not 0 < over < quilt.system.step:
            sums = f"{shown(done, quilt)} + 2 seams = {shown(done + 2 * quilt.seam, quilt)}"
            message = f"{piece.letter} finishes {sums} to cut, not {shown(cut, quilt)}."
            at = place_of(quilt, "pieces", piece.letter, "cut", side) or piece.place
            yield recounted(quilt, "raw-size", "R12", message, at, piece.place)


def _loss(quilt: Quilt, piece: Piece) -> Fraction | int:
    """What a side loses to its seams; a square that is cut on the diagonal loses more, a shape
    that is laid on nothing."""
    if piece.template is not None and piece.template.laid_on:
        return 0
    if piece.diagonal is None:
        return 2 * quilt.seam
    return triangle_allowance(quilt.seam, 1 if piece.diagonal == "once" else 2, quilt.system)


def _layout(quilt: Quilt, unit: Unit, made: LayoutMade) -> Iterator[Notice]:
    inside = _core(made)
    if made.lines:
        yield from _raw(quilt, unit, f"'{unit.name}' without borders", inside, made.before_borders)
    for border in made.borders:
        side = next((part for part in border.parts if part.part == border.side), None)
        end = next((p for p in border.parts[2:] if p.part == border.end), None)
        if side is None or end is None:
            continue
        inside = Sides(inside.across + 2 * side.across, inside.down + 2 * end.down)
        what = f"'{unit.name}' with border {border.number}"
        yield from _raw(quilt, unit, what, inside, border.after)


def _core(made: LayoutMade) -> Sides:
    """The lines put together, from their parts."""
    if made.setting != "straight":
        return _around(made)
    columns = made.by == "columns"
    along, over = Exact(0), Exact(0)
    for part in made.lines[0].parts if made.lines else ():
        along = along + (part.down if columns else part.across)
    for line in made.lines:
        over = over + (line.parts[0].across if columns else line.parts[0].down)
    return Sides(over, along) if columns else Sides(along, over)


def _around(made: LayoutMade) -> Sides:
    """How far the parts reach, from the left to the right and from the top to the bottom."""
    parts = [*(part for line in made.lines for part in line.parts), *made.corners]
    left, top = min(part.x for part in parts), min(part.y for part in parts)
    right = max(part.x + part.across for part in parts)
    return Sides(right - left, max(part.y + part.down for part in parts) - top)


def _strip_set(quilt: Quilt, unit: Unit, made: StripSetMade) -> Iterator[Notice]:
    across = sum((part.across for part in unit.placed), Exact(0))
    finished = Sides(across, unit.finished.down)
    raw = Sides(made.set_width, Exact(made.segment))
    yield from _raw(quilt, unit, f"the set of '{unit.name}'", finished, raw)
