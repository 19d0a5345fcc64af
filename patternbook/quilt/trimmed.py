"""Units that may be trimmed: what their pieces give at most, set against what their place wants."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES, plain, ruler_up, triangle_allowance
from patternbook.linear import Sum
from patternbook.methods.world import Tally, here
from patternbook.notice import Notice
from patternbook.quilt.believe import written_out
from patternbook.quilt.read_out import shown, typed
from patternbook.quilt.resolve import Bound, Resolver, Room


def trimmed(resolver: Resolver) -> Iterator[Notice]:
    """An error where a unit must be larger than its pieces give, a warning where much is cut
    away; a unit whose size nothing fixes."""
    seen: set[tuple[str, str]] = set()
    for bound in resolver.bounds:
        if bound.name in resolver.broken:
            continue
        size, most = resolver.known(bound.size), _most(bound, resolver)
        if size is None:
            if (bound.name, "open") not in seen and most is None:
                seen.add((bound.name, "open"))
                yield _open(bound, resolver)
        elif most is not None and size > most:
            yield _scant(bound, size, resolver) or _short(bound, size, most, resolver)
        elif most is not None and most - size > bound.trimmed:
            tell = _blunted if bound.points else _wasteful
            yield tell(bound, size, most, resolver)
    for room in resolver.rooms:
        yield from _crowded(room, resolver)


def _open(bound: Bound, resolver: Resolver) -> Notice:
    message = f"nothing fixes the size of '{bound.name}'."
    hint = "State what it measures, or how large its pieces are cut."
    return resolver.fault("not-fixed", "R10", message, bound.place, hint)


def _short(bound: Bound, size: Exact, most: Exact, resolver: Resolver) -> Notice:
    short = size - most
    message = (
        f"'{bound.name}' must finish {_read(size, resolver)}; {bound.most.what} gives "
        f"{_read(most, resolver)} at most: "
        f"{written_out(bound.most, resolver)}; short by {_read(short, resolver)}."
    )
    better = _cut(bound.most, short, resolver)
    hint = f"Cut {better}." if better else "Cut its pieces larger, or make it smaller."
    notice = resolver.fault("pieces-small", "R2", message, bound.place, hint)
    return replace(notice, stated=_read(size, resolver), needed=_read(most, resolver))


# What the trade's allowances of 2.5 and 3.5 cm fall short of the exact 2.56 and 3.62 at most.
SCANT: Final = Fraction(1, 8)


def _scant(bound: Bound, size: Exact, resolver: Resolver) -> Notice | None:
    """A warning where centimetres were cut by the trade's rule, which rounds the allowance of a
    triangle down: too little for the ruler, and yet less than anyone can cut by."""
    lost = -bound.most.sum().constant
    seam = resolver.length(resolver.seam).fraction
    exact = {
        triangle_allowance(seam, diagonals, resolver.system): Exact(2 * seam, diagonals * seam)
        for diagonals in (1, 2)
    }
    cut = resolver.known(bound.most.sum() + lost)
    if resolver.system is not CENTIMETRES or not lost.rational or lost.fraction not in exact:
        return None
    allowance = exact[lost.fraction]
    short = size - ((cut or Exact(0)) - allowance)
    if short > SCANT:
        return None
    tenths = plain((short * 10 + Fraction(1, 20)).down(Fraction(1, 10)), decimals=True)
    message = (
        f"'{bound.name}' finishes {_read(size, resolver)}; {bound.most.what} gives "
        f"{_read(size - short, resolver)}, for the diagonal takes {float(allowance):.2f}: short by "
        f"{tenths} mm. The usual allowance of {plain(lost.down(Fraction(1, 2)), decimals=True)} cm "
        "is rounded down."
    )
    better = _cut(bound.most, short, resolver)
    hint = f"Cut {better}, and trim." if better else "Cut its pieces larger, and trim."
    notice = resolver.fault("scant-allowance", "R2", message, bound.place, hint)
    return replace(notice, severity="warning")


def _cut(tally: Tally, more: Exact, resolver: Resolver) -> str | None:
    """`A at least 5 1/2 square`: the cut with which the sum is so much more, where it rests on
    one."""
    for symbol, times in tally.sum().terms.items():
        if symbol.key[0] == "pieces" and symbol.value is not None and times > 0:
            better = ruler_up(symbol.value + more / times, resolver.system)
            letter = symbol.key[1]
            return f"{letter} at least {typed(better, resolver)}{_square(letter, resolver)}"
    return None


def _smaller(tally: Tally, less: Exact, resolver: Resolver) -> str | None:
    """`K at most 4 1/2 square`: all cuts that the sum rests on, each as much smaller."""
    cuts = [
        (symbol.key[1], symbol.value, times)
        for symbol, times in tally.sum().terms.items()
        if symbol.key[0] == "pieces" and symbol.value is not None and times > 0
    ]
    share = sum((times for _, _, times in cuts), Exact(0))
    sizes = [
        f"{letter} at most {typed((cut - less / share).down(resolver.system.step), resolver)}"
        f"{_square(letter, resolver)}"
        for letter, cut, _ in cuts
        if cut > less / share
    ]
    return " and ".join(sizes) or None


def _square(letter: str, resolver: Resolver) -> str:
    cut = here(resolver.pieces[letter].cut, resolver.size)
    return " square" if cut is not None and cut.across == cut.down else ""


def _wasteful(bound: Bound, size: Exact, most: Exact, resolver: Resolver) -> Notice:
    message = (
        f"'{bound.name}' finishes {_read(size, resolver)}; {bound.most.what} gives "
        f"{_read(most, resolver)}: {written_out(bound.most, resolver)}; "
        f"{_read(most - size, resolver)} would be trimmed away."
    )
    hint = "Cut its pieces smaller, or check what it should finish."
    notice = resolver.fault("much-to-trim", "R2", message, bound.place, hint)
    return replace(notice, severity="warning")


def _most(bound: Bound, resolver: Resolver) -> Exact | None:
    """What its pieces give; a piece whose size was left open is cut at the ruler's next mark."""
    most = resolver.known(bound.most.sum())
    if most is None or not bound.points:
        return most
    for symbol, times in bound.most.sum().terms.items():
        open_ = resolver.known(Sum.symbol(symbol)) if symbol.value is None else None
        if open_ is not None:
            raw = open_ + resolver.length(resolver.seam) * 2
            most = most + (ruler_up(raw, resolver.system) - raw) * times
    return most


def _blunted(bound: Bound, size: Exact, most: Exact, resolver: Resolver) -> Notice:
    step = resolver.system.step
    letter, times = next(
        (symbol.key[1], times)
        for symbol, times in bound.most.sum().terms.items()
        if symbol.key[0] == "pieces"
    )
    smaller = most - times * step
    message = (
        f"'{bound.name}' comes to {_read(most, resolver)} by what {letter} is cut; trimmed to "
        f"{_read(size, resolver)} it would lose {_read(most - size, resolver)}, and its points "
        "with it."
    )
    less, more = (typed(Exact(size.down(step)), resolver) for size in (smaller, most))
    hint = f"Let it finish {less} or {more}."
    better = _cut(bound.most, size - most, resolver) if size <= smaller else None
    if better is not None:
        hint = f"Cut {better}, or let it finish {more}."
    return resolver.fault("points-lost", "R2", message, bound.place, hint)


def _crowded(room: Room, resolver: Resolver) -> Iterator[Notice]:
    one, most = (resolver.known(tally.sum()) for tally in (room.one, room.room))
    labels = {term.label for tally in (room.one, room.room) for term in tally.terms}
    if one is None or most is None or one <= most or labels & resolver.broken:
        return
    message = (
        f"{room.one.what} take {_read(one, resolver)}: {written_out(room.one, resolver)}; "
        f"{room.room.what} is {_read(most, resolver)}; {_read(one - most, resolver)} too much."
    )
    over = one - most
    cuts = (_smaller(room.one, over, resolver), _cut(room.room, over, resolver))
    cut = ", or ".join(cut for cut in cuts if cut)
    hint = f"Cut {cut}." if cut else room.rule.hint
    notice = resolver.fault(room.rule.code, room.rule.rule, message, room.one.place, hint)
    yield replace(notice, stated=_read(most, resolver), needed=_read(one, resolver))


def _read(value: Exact, resolver: Resolver) -> str:
    """The number as it can be read: `about 5.66` where a root is left in it."""
    if not value.rational:
        return f"about {float(value):.2f}"
    return shown(value, resolver)
