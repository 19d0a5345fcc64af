"""The author's own figures of strips, squares and pieces to a strip, against what is needed."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.cutting import sums
from patternbook.cutting.asked import PATCHES_A_CUT, Asked, least_cuts
from patternbook.cutting.groups import Group
from patternbook.cutting.told import Told, long, number, spare_severity, times
from patternbook.notice import Notice, Severity
from patternbook.quilt.records import Piece, Quilt


def stated_notices(quilt: Quilt, group: Group) -> Iterator[Notice]:
    """What is to be told of the figures that she states for one letter and its guests."""
    for member in group.members:
        yield from _squares(quilt, member.piece)
        yield from _per_strip(quilt, group, member)
    if group.host and group.own:
        yield from _guests(quilt, group, group.host)
        yield from _strips(quilt, group, group.host)


def of_piece(piece: Piece, code: str, rule: str | None, key: str, hint: str | None = None) -> Told:
    """A notice about one figure of a letter."""
    return Told(code, rule, piece.key_places.get(key), piece.place, hint)


def _squares(quilt: Quilt, piece: Piece) -> Iterator[Notice]:
    stated, least = piece.stated_squares, least_cuts(piece)
    if stated is None or stated == least or piece.is_strip:
        return
    each = PATCHES_A_CUT[piece.diagonal]
    of_each = f", {each} from each," if each > 1 else ""
    patches = times(piece.count + piece.spare, "patch", "patches")
    reckoned = f"{piece.letter}: {patches}{of_each} need {times(least, 'square')}"
    figures = (str(stated), str(least))
    if stated > least:
        message = f"{reckoned}; {stated} are stated, {stated - least} spare."
        yield of_piece(piece, "spare-squares", "R3", "squares").notice(
            quilt, spare_severity(stated, least), message, *figures
        )
        return
    short = times(least - stated, "square")
    message = f"{reckoned}; the {stated} stated give {stated * each}, short by {short}."
    yield of_piece(piece, "squares-short", "R3", "squares").notice(
        quilt, "error", message, *figures, mend=True
    )


def _per_strip(quilt: Quilt, group: Group, member: Asked) -> Iterator[Notice]:
    """Not more than fit; fewer is her plan and is obeyed."""
    piece, lies, system = member.piece, member.laid, quilt.system
    stated, fits = piece.stated_per_strip, lies.fits(group.cloth.run)
    if stated is None or stated == fits or piece.is_strip:
        return
    figures = (str(stated), str(fits))
    about = of_piece(piece, "per-strip", "R6", "per-strip")
    if stated < fits:
        message = f"{piece.letter}: {fits} fit in a strip; {stated} are cut, as stated."
        yield about.notice(quilt, "advice", message, *figures)
        return
    columns = -(-stated // lies.lanes)
    message = (
        f"{piece.letter}: {columns} × {number(lies.along, system)} = "
        f"{long(columns * lies.along, system)} do not fit in a strip of "
        f"{long(group.cloth.run, system)}; {times(fits, 'fits', 'fit')}."
    )
    yield about.notice(quilt, "error", message, *figures, mend=fits > 0)


def _guests(quilt: Quilt, group: Group, host: Piece) -> Iterator[Notice]:
    for guest in group.members[1:]:
        stated = guest.piece.stated_strips
        if stated is not None:
            letter = guest.piece.letter
            message = (
                f"{letter} is cut from the strips of {host.letter}, which count both; its own "
                "number of strips is not used."
            )
            hint = f"State the strips at {host.letter}, for both."
            yield of_piece(guest.piece, "guest-strips", "R6", "strips", hint).notice(
                quilt, "warning", message, str(stated)
            )


def _strips(quilt: Quilt, group: Group, piece: Piece) -> Iterator[Notice]:
    stated = piece.stated_strips
    if stated is None or stated == group.own:
        return
    letters = " and ".join(member.piece.letter for member in group.members)
    reckoned = f"{letters}: {sums.need(group, quilt.system)}"
    figures = (str(stated), str(group.own))
    if stated > group.own:
        message = f"{reckoned}; {stated} are stated, {stated - group.own} spare."
        yield of_piece(piece, "spare-strips", "R5", "strips").notice(
            quilt, spare_severity(stated, group.own), message, *figures
        )
        return
    message = f"{reckoned}; {sums.given(group, stated, quilt.system)}."
    hint = f"Cut {times(group.own, 'strip')}."
    # Strips that letters share are reckoned anew by the planned cutting: no fault there.
    severity: Severity = "error" if quilt.settings.cutting == "plain" else "advice"
    yield of_piece(piece, "strips-short", "R5", "strips", hint).notice(
        quilt, severity, message, *figures, mend=severity == "error"
    )
