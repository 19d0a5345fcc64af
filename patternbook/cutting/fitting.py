"""Cuts that the cloth does not allow, or only just: too wide, too long, joined, nothing over."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from patternbook.cutting import sums
from patternbook.cutting.asked import Asked
from patternbook.cutting.cloth import form_of
from patternbook.cutting.groups import Group, strips_joined
from patternbook.cutting.letters import exact, set_of
from patternbook.cutting.records import LetterPlan, Strip
from patternbook.cutting.stated import of_piece
from patternbook.cutting.told import Told, long, number, resized, sized, times, typed, typed_size
from patternbook.notice import Notice, Severity
from patternbook.quilt.records import Piece, Quilt


def fitting_notices(quilt: Quilt, group: Group, plans: Sequence[LetterPlan]) -> Iterator[Notice]:
    """What is to be told of how one letter's pieces, and those of its guests, fit the cloth."""
    yield from (_unlaid(quilt, group, piece) for piece in group.unlaid)
    yield from (_too_long(quilt, group, member) for member in group.too_long)
    yield from _joined(quilt, group)
    fits = next((strip for strip in group.strips if exact(quilt, group, strip)), None)
    if fits:
        yield _scant_strips(quilt, group) or _exact_fit(quilt, group, fits)
    for plan, member in zip(plans, group.members, strict=True):
        if plan.exact_count:
            message = (
                f"{plan.letter}: {times(plan.own, 'strip')} of {plan.per_strip} "
                f"{'gives' if plan.own == 1 else 'give'} exactly {plan.cuts}. "
                "There is none to spare."
            )
            yield of_piece(member.piece, "exact-count", "R5", "cut").notice(
                quilt, "advice", message
            )


def _unlaid(quilt: Quilt, group: Group, piece: Piece) -> Notice:
    system, cloth = quilt.system, group.cloth
    cut = f"{piece.letter}, cut {sized(piece.cut, system)},"
    if group.host and piece is not group.host:
        wide = f"the strips of {group.host.letter}, {long(group.wide, system)} wide"
        hint = f"Take `with` out, or let {group.host.letter} have wider strips."
        about = of_piece(piece, "strip-narrow", "R6", "with", hint)
        return about.notice(quilt, "error", f"{cut} does not lie in {wide}.")
    shorter = min(piece.cut.across, piece.cut.down or piece.cut.across)
    narrow = piece.strip_width or cloth.roll
    if narrow and shorter <= cloth.run:
        hint = f"Cut it from strips at least {long(shorter, system)} wide."
        about = of_piece(piece, "strip-narrow", "R6", "strip-width", hint)
        message = f"{cut} does not lie in a strip {long(narrow, system)} wide."
        return about.notice(quilt, "error", message)
    if form_of(cloth.fabric).pieces and cloth.fabric.size is not None:
        return _larger_sheet(quilt, group, piece)
    message = f"{cut} is wider than the cloth ({long(cloth.run, system)}) both ways."
    hint = "Sew it from two pieces, or take wider cloth."
    # In a fragment without cloths a large piece stands for something that is sewn.
    severity: Severity = "error" if piece.fabric or quilt.fabrics else "advice"
    return of_piece(piece, "too-wide", "R6", "cut", hint).notice(quilt, severity, message)


def _larger_sheet(quilt: Quilt, group: Group, piece: Piece) -> Notice:
    """A pre-cut piece as it is sold is smaller than what is to be cut from it."""
    fabric, system = group.cloth.fabric, quilt.system
    size = fabric.size or piece.cut
    message = (
        f"{piece.letter} is cut {sized(piece.cut, system)}, and '{fabric.name}' is sold "
        f"{sized(size, system)}: two places of the pattern differ, or the pre-cut is too small."
    )
    needed = typed_size(piece.cut, system)
    hint = f"State it as sold {needed}, or cut {piece.letter} no larger than it is."
    at, cut_at = fabric.key_places.get("size"), piece.key_places.get("cut")
    square = piece.cut.across == piece.cut.down
    bare = typed(piece.cut.across, system) if square else needed
    told = Told("pre-cut-small", "R20", at, cut_at, hint).notice(
        quilt, "error", message, typed_size(size, system), bare
    )
    either = resized(at, size, piece.cut, system), resized(cut_at, piece.cut, size, system)
    return replace(told, edits=(*either[0], *either[1]))


def _too_long(quilt: Quilt, group: Group, member: Asked) -> Notice:
    piece, run, system = member.piece, group.cloth.run, quilt.system
    longest = max(item.along for item in member.longer_than(run))
    hint = f"Cut it `along: length`, or take cloth {long(longest, system)} wide."
    why, needed = "a piece that is cut on the diagonal cannot be joined", None
    if member.each == 1:
        needed = _join_that_does(quilt, group, piece)
        hint = f"Say `join: {needed}`. {hint}"
        why = "`join: none` allows no join"
    message = (
        f"{piece.letter} must be {long(longest, system)} long, a strip is {long(run, system)}: "
        f"short by {long(longest - run, system)}, and {why}."
    )
    return of_piece(piece, "too-long", "R7", "join", hint).notice(
        quilt, "error", message, "none" if needed else None, needed, mend=needed is not None
    )


def _join_that_does(quilt: Quilt, group: Group, piece: Piece) -> str:
    """A diagonal join shows least; a straight one takes less, where the stated strips want it."""
    stated = piece.stated_strips
    diagonal = strips_joined(quilt, group, piece, "diagonal")
    straight = strips_joined(quilt, group, piece, "straight")
    return "straight" if stated and straight <= stated < diagonal else "diagonal"


def _joined(quilt: Quilt, group: Group) -> Iterator[Notice]:
    """A patch that must be joined is told: cloth a little wider would spare the joins."""
    system, run = quilt.system, group.cloth.run
    for member in group.members:
        piece, long_one = member.piece, long(member.laid.along, system)
        known = "join" in piece.key_places  # she says how, so she knows that it must be
        if known or piece.is_strip or member in group.too_long or not member.longer_than(run):
            continue
        message = (
            f"{piece.letter} is {long_one} long, a strip {long(run, system)}: its strips are "
            f"joined. Cloth {long_one} wide needs no join."
        )
        yield of_piece(piece, "joined-pieces", "R5", "join").notice(quilt, "advice", message)


def _scant_strips(quilt: Quilt, group: Group) -> Notice | None:
    """Strips that are stated, of one letter that fits them exactly: cloth a little narrower gives
    one piece fewer a strip, and then they are too few (R5). Where the pattern counts on no more
    than the width that all cloth has, there is none narrower."""
    if len(group.members) > 1 or group.host is None:
        return None
    piece, lies, run = group.host, group.members[0].laid, group.cloth.run
    stated, each = piece.stated_strips, lies.fits(run) - lies.lanes
    safe_width = run <= quilt.system.width
    if piece.is_strip or not stated or each <= 0 or piece.stated_per_strip or safe_width:
        return None
    cuts, system = group.members[0].cuts, quilt.system
    safe = -(-cuts // each)
    if stated >= safe:
        return None
    columns = lies.fits(run) // lies.lanes
    message = (
        f"{piece.letter}: {columns} × {number(lies.along, system)} take "
        f"{long(columns * lies.along, system)} of a strip of {long(run, system)}. Where the cloth "
        f"is a little narrower {each} fit, and the "
        f"{times(stated, 'strip')} give {stated * each} of {cuts}."
    )
    hint = f"Cut {times(safe, 'strip')}, or state `per-strip` to say that the cloth is wide enough."
    return of_piece(piece, "scant-strips", "R5", "strips", hint).notice(
        quilt, "warning", message, str(stated), str(safe), mend=True
    )


def _exact_fit(quilt: Quilt, group: Group, strip: Strip) -> Notice:
    letter, system = strip.cuts[0].letter, quilt.system
    used = long(strip.run - strip.left, system)
    piece = next(one.piece for one in group.members if one.piece.letter == letter)
    made = set_of(quilt, strip.cuts[0])
    slices = f"{made.per_set} × {number(made.segment, system)} = {used}" if made else ""
    message = (
        f"{' and '.join(strip.letters)}: {slices or sums.lengths(strip.cuts, system)} of a strip "
        f"{long(strip.run, system)} long. A strip shorter than {used} would not do."
    )
    return of_piece(piece, "exact-fit", "R5", "cut").notice(quilt, "advice", message)
