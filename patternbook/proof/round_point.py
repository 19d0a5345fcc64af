"""Points that meet in one place fill the whole turn: so many times the angle is 360 degrees."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from patternbook.inch import plain, printed
from patternbook.methods.made import Outline
from patternbook.notice import Edit, Notice, Place
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import mended_by_figure, recounted
from patternbook.quilt.records import Piece, Quilt

WHOLE_TURN: Final = Fraction(360)
THREE_QUARTERS: Final = 270
HALF_A_DEGREE: Final = 0.5


def round_point(evidence: Evidence) -> Iterator[Notice]:
    """An error where the angles of a piece leave a gap round their point, or overlap."""
    for piece in evidence.quilt.pieces.values():
        angle, key = piece.stated_angle, "angle"
        if angle is None:
            angle, key = _drawn(piece), "outline"
        if angle is not None and piece.around is not None and not _otherwise_drawn(piece, angle):
            yield from _met(piece, angle, piece.around, key, evidence.quilt)


def _met(piece: Piece, angle: Fraction, around: int, key: str, quilt: Quilt) -> Iterator[Notice]:
    turn = WHOLE_TURN if angle * around >= THREE_QUARTERS else WHOLE_TURN / 2
    needed, off = turn / around, turn - angle * around
    if not off or (key == "outline" and abs(needed - angle) <= HALF_A_DEGREE):
        return
    word, where = "a gap" if off > 0 else "an overlap", "round a point, and a whole turn"
    if turn != WHOLE_TURN:
        where = "side by side on a straight line, and that"
    message = (
        f"{piece.letter}: {around} × {printed(angle)} = {printed(angle * around)} degrees "
        f"{where} is {turn}: {word} of {printed(abs(off))}."
    )
    figures = (plain(angle), plain(needed))
    place, beside = piece.key_places.get(key, piece.place), piece.key_places.get("around")
    hint = f"{around} points want {figures[1]} degrees each."
    told = recounted(
        quilt, "round-point", "R13", message, place, beside, figures=figures, hint=hint
    )
    told = mended_by_figure(told) if key == "angle" else told
    yield _or_other_number(told, turn / angle, around, beside)


def _or_other_number(told: Notice, needed: Fraction, around: int, at: Place | None) -> Notice:
    """Where so many points more or fewer of the same angle would fill the turn, that as well."""
    if at is None or needed.denominator != 1:
        return told
    edit = Edit(at, str(around), str(needed), sure=not told.edits)
    hint = f"{told.hint} Of this angle {needed} meet."
    return replace(told, edits=(*told.edits, edit), hint=hint)


def _drawn(piece: Piece) -> Fraction | None:
    """The corner of its outline that comes nearest to filling the turn, in half degrees."""
    if piece.around is None or piece.template is None or piece.template.kind != "outline":
        return None
    wanted = float(WHOLE_TURN) / piece.around
    nearest = min(_angles(piece.template.sew), key=lambda angle: abs(angle - wanted))
    return Fraction(round(nearest * 2), 2)


def _otherwise_drawn(piece: Piece, angle: Fraction) -> bool:
    """Whether no corner of its outline has this angle, which is told of its template."""
    if piece.template is None or piece.template.kind != "outline":
        return False
    return all(abs(drawn - angle) > HALF_A_DEGREE for drawn in _angles(piece.template.sew))


def _angles(outline: Outline) -> Iterator[float]:
    """The angle at each corner, in degrees."""
    spots = [(float(x), float(y)) for x, y in outline.corners]
    for before, at, after in zip(
        spots[-1:] + spots[:-1], spots, spots[1:] + spots[:1], strict=True
    ):
        one = math.atan2(before[1] - at[1], before[0] - at[0])
        other = math.atan2(after[1] - at[1], after[0] - at[0])
        yield abs(math.degrees(one - other)) % 360
