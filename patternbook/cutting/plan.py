"""Plain cutting: every letter from its own strips, and all cloth of one fabric bought together."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from patternbook.cutting.backing import backing_plan
from patternbook.cutting.backing_told import backing_notices
from patternbook.cutting.batting import batting_notices, batting_plan
from patternbook.cutting.binding import goes_round
from patternbook.cutting.binding_told import binding_notices
from patternbook.cutting.cloth import cloth_named, form_of
from patternbook.cutting.fabric import FabricCut, Wanted, cut_fabric
from patternbook.cutting.label import label_notices, label_plan
from patternbook.cutting.let_in import spares, with_strip
from patternbook.cutting.records import UNNAMED, BackingPlan, CuttingPlan, FabricPlan
from patternbook.cutting.stated import of_piece
from patternbook.cutting.web import web_plans
from patternbook.notice import Notice
from patternbook.quilt.records import Piece, Quilt


def plan(quilt: Quilt, *, full: bool = False) -> tuple[CuttingPlan, tuple[Notice, ...]]:
    """All that is cut and bought for one size, and what there is to tell of it.

    `full`: in the style that the settings ask for, proven, with what other styles and other
    cloth would come to. Without it all is cut plainly, which takes no planner.
    """
    backing, batting = backing_plan(quilt), batting_plan(quilt)
    cut = [_cut(quilt, wanted, full=full) for wanted in _wanted(quilt, backing)]
    if backing and quilt.backing and quilt.backing.pieced:
        backing = with_strip(quilt, backing, spares(quilt, _plans(cut), backing.fabric))
        wanted_now = {one.fabric.name: one for one in _wanted(quilt, backing)}
        cut = [
            _cut(quilt, wanted_now[one.plan.fabric], full=full)
            if one.plan.fabric == backing.fabric
            else one
            for one in cut
        ]
    binding = next((one.binding for one in cut if one.binding), None)
    letters = {letter.letter: letter for one in cut for letter in one.letters}
    notices = [*_strange_hosts(quilt), *(notice for one in cut for notice in one.notices)]
    notices += backing_notices(quilt, backing, _plans(cut))
    if batting:
        notices += batting_notices(quilt, batting)
    if binding:
        notices += binding_notices(quilt, binding)
    label = label_plan(quilt, backing, _plans(cut))
    if label:
        notices += label_notices(quilt, label)
    webs, more = web_plans(quilt)
    made = CuttingPlan(
        quilt.size,
        _plans(cut),
        {letter: letters[letter] for letter in quilt.pieces if letter in letters},
        _yields(cut),
        backing,
        batting,
        binding,
        webs,
        label,
    )
    return made, (*notices, *more)


def _cut(quilt: Quilt, wanted: Wanted, *, full: bool) -> FabricCut:
    plain = cut_fabric(quilt, wanted)
    if full:
        from patternbook.cutting.full import in_full  # the planner takes its time to load

        return in_full(quilt, wanted, plain)
    if quilt.settings.cutting == "plain":
        return plain
    told = tuple(_reckoned_plainly(quilt, notice) for notice in plain.of_purchase)
    return replace(plain, of_purchase=told)


def _reckoned_plainly(quilt: Quilt, notice: Notice) -> Notice:
    """A purchase too small for plain cutting may do for the style that is asked for."""
    if notice.severity != "error":
        return notice
    hint = f"`check --full` reckons the {quilt.settings.cutting} cutting that the settings ask for."
    return replace(notice, severity="advice", hint=hint, edits=())


def _plans(cut: list[FabricCut]) -> dict[str, FabricPlan]:
    return {one.plan.fabric: one.plan for one in cut}


def _yields(cut: list[FabricCut]) -> dict[str, int]:
    return {letter: count for one in cut for letter, count in one.plan.yields.items()}


def _wanted(quilt: Quilt, backing: BackingPlan | None) -> Iterator[Wanted]:
    """What is cut from each fabric, in the order in which the fabrics stand."""
    names = dict.fromkeys(quilt.fabrics)
    names |= dict.fromkeys(piece.fabric or UNNAMED for piece in quilt.pieces.values())
    bound = quilt.binding.fabric if quilt.binding and goes_round(quilt) else None
    if bound is not None:
        names[bound] = None
    for name in names:
        hosts = tuple(_hosts(quilt, name))
        fabric = cloth_named(quilt, name)
        backs = backing is not None and backing.fabric == name and not form_of(fabric).pieces
        if fabric.width <= 0:
            continue
        if hosts or name == bound or backs:
            yield Wanted(fabric, hosts, name == bound, backing if backs else None)


def _hosts(quilt: Quilt, fabric: str) -> Iterator[tuple[Piece, tuple[Piece, ...]]]:
    mine = [
        piece
        for piece in quilt.pieces.values()
        if (piece.fabric or UNNAMED) == fabric and _is_cut(piece)
    ]
    for piece in mine:
        if host_of(quilt, piece) is piece:
            others = (one for one in mine if one is not piece)
            yield piece, tuple(one for one in others if host_of(quilt, one) is piece)


def _is_cut(piece: Piece) -> bool:
    """Whether there is something to cut: none of it may be needed, or it has no size (told)."""
    if not piece.is_strip and not piece.count + piece.spare:
        return False
    return all(side is None or side > 0 for side in piece.cut)


def host_of(quilt: Quilt, piece: Piece) -> Piece:
    """The letter whose strips the piece is cut from; itself where it has its own."""
    seen, host = {piece.letter}, piece
    while host.host and host.host in quilt.pieces and host.host not in seen:
        seen.add(host.host)
        host = quilt.pieces[host.host]
    across = host.along == piece.along == "width"
    return host if host.fabric == piece.fabric and across and not host.host else piece


def _strange_hosts(quilt: Quilt) -> Iterator[Notice]:
    for piece in quilt.pieces.values():
        if piece.host and host_of(quilt, piece) is piece:
            message = (
                f"{piece.letter} cannot share the strips of {piece.host}: they are not cut from "
                "the same fabric, or one lies along its length, or each waits for the other. "
                "It has strips of its own."
            )
            yield of_piece(piece, "host-fabric", "R6", "with").notice(quilt, "error", message)
