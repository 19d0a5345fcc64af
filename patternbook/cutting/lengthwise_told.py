"""Long borders cut along the selvedge: told where that is less to buy, or spares the joins."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from patternbook.cutting.either_way import lengthwise
from patternbook.cutting.fabric import FabricCut, Wanted
from patternbook.cutting.stated import of_piece
from patternbook.cutting.told import long, typed
from patternbook.forms import by_length
from patternbook.notice import Notice
from patternbook.quilt.records import Piece, Quilt

Cutter = Callable[[Wanted], FabricCut]


def lengthwise_notices(
    quilt: Quilt, wanted: Wanted, now: FabricCut, cut: Cutter
) -> Iterator[Notice]:
    """Advice where the joined strips of a fabric could be cut along its length for no more cloth.

    `cut` plans a fabric in the style of the pattern.
    """
    joined = _joined(wanted, now)
    if not joined or now.plan.buy.amount is None:
        return
    letters = frozenset(piece.letter for piece in joined)
    turned = cut(lengthwise(wanted, letters))
    then = turned.plan.buy.amount
    fits = all(not group.faults for group in turned.laid.groups if group.host)
    if then is None or then > now.plan.buy.amount or not fits:
        return
    first, system = joined[0], quilt.system
    less = (
        f"{typed(then, system)} {system.bolt_unit} would do instead of "
        f"{typed(now.plan.buy.amount, system)}"
        if then < now.plan.buy.amount
        else f"the purchase stays {typed(then, system)} {system.bolt_unit}"
    )
    message = (
        f"{' and '.join(sorted(letters))}: strips joined across the cloth take "
        f"{long(now.plan.length, system)} with all else; cut along the length they need no join, "
        f"all takes {long(turned.plan.length, system)}, and {less}."
    )
    hint = "Say `along: length`."
    yield of_piece(first, "lengthwise", None, "along", hint).notice(
        quilt, "advice", message, needed="length"
    )


def _joined(wanted: Wanted, now: FabricCut) -> list[Piece]:
    """The letters sewn of joined strips of which she has not said how they lie."""
    if not by_length(wanted.fabric.form) or wanted.fabric.one_way:
        return []
    joined = {letter for strip in now.plan.strips if strip.join for letter in strip.letters}
    return [
        host
        for host, guests in wanted.hosts
        if host.letter in joined and not guests and "along" not in host.key_places
    ]
