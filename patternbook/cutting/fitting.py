"""Cuts that the cloth does not allow, or only just: too wide, too long, joined, nothing over."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternbook.cutting import sums
from patternbook.cutting.asked import Asked
from patternbook.cutting.groups import Group
from patternbook.cutting.letters import exact, set_of
from patternbook.cutting.records import LetterPlan, Strip
from patternbook.cutting.stated import of_piece
from patternbook.cutting.told import long, number, sized, times
from patternbook.notice import Notice
from patternbook.quilt.records import Piece, Quilt


def fitting_notices(quilt: Quilt, group: Group, plans: Sequence[LetterPlan]) -> Iterator[Notice]:
    """What is to be told of how one letter's pieces, and those of its guests, fit the cloth."""
    yield from (_unlaid(quilt, group, piece) for piece in group.unlaid)
    yield from (_too_long(quilt, group, member) for member in group.too_long)
    yield from _joined(quilt, group)
    fits = next((strip for strip in group.strips if exact(quilt, group, strip)), None)
    if fits:
        yield _exact_fit(quilt, group, fits)
    for plan, member in zip(plans, group.members, strict=True):
        if plan.exact_count:
            message = (
                f"{plan.letter}: {times(plan.own, 'strip')} of {plan.per_strip} "
                f"{'gives' if plan.own == 1 else 'give'} exactly the "
                f"{plan.cuts} that are needed. There is none to spare."
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
    message = f"{cut} is wider than the cloth ({long(cloth.run, system)}) both ways."
    hint = "Sew it from two pieces, or take wider cloth."
    return of_piece(piece, "too-wide", "R6", "cut", hint).notice(quilt, "error", message)


def _too_long(quilt: Quilt, group: Group, member: Asked) -> Notice:
    piece, run, system = member.piece, group.cloth.run, quilt.system
    longest = max(item.along for item in member.longer_than(run))
    hint = f"Cut it `along: length`, or take cloth {long(longest, system)} wide."
    why = "a piece that is cut on the diagonal cannot be joined"
    if member.each == 1:
        hint = f"Say `join: diagonal` or `join: straight`. {hint}"
        why = "`join: none` allows no join"
    message = (
        f"{piece.letter} must be {long(longest, system)} long, a strip is {long(run, system)}: "
        f"short by {long(longest - run, system)}, and {why}."
    )
    return of_piece(piece, "too-long", "R7", "join", hint).notice(quilt, "error", message)


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
