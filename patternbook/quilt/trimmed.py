"""Units that may be trimmed: what their pieces give at most, set against what their place wants."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES, plain, ruler_up, triangle_allowance
from patternbook.linear import Sum, Symbol
from patternbook.methods.world import Tally, here
from patternbook.notice import Notice
from patternbook.quilt.checks import Bound, Room
from patternbook.quilt.read_out import read, typed, written_out
from patternbook.quilt.recut import Misfit, at_the_cut, letter_of, recut, resized
from patternbook.quilt.resolve import Resolver


def trimmed(resolver: Resolver) -> Iterator[Notice]:
    """An error where a unit must be larger than its pieces give, a warning where much is cut
    away; a unit whose size nothing fixes."""
    open_: set[str] = set()
    short: dict[tuple[str, str | None], list[Misfit]] = {}
    large: dict[tuple[str, str | None], list[Misfit]] = {}
    for bound in resolver.bounds:
        if bound.name in resolver.broken:
            continue
        size, most = resolver.known(bound.size), _most(bound, resolver)
        if size is None:
            if bound.name not in open_ and most is None:
                open_.add(bound.name)
                yield _open(bound, resolver)
        elif most is not None and size > most:
            scant = _scant(bound, size, resolver)
            if scant:
                yield scant
            else:
                short.setdefault((bound.name, letter_of(bound)), []).append(
                    Misfit(bound, size, most)
                )
        elif most is not None and most - size > bound.trimmed:
            if bound.points:
                yield _blunted(bound, size, most, resolver)
            else:
                large.setdefault((bound.name, letter_of(bound)), []).append(
                    Misfit(bound, size, most)
                )
    yield from (_short(misfits, resolver) for misfits in short.values())
    yield from (_wasteful(misfits, resolver) for misfits in large.values())
    for room in resolver.rooms:
        yield from _crowded(room, resolver)


def _open(bound: Bound, resolver: Resolver) -> Notice:
    message = f"nothing fixes the size of '{bound.name}'."
    hint = "State what it measures, or how large its pieces are cut."
    return resolver.fault("not-fixed", "R10", message, bound.place, hint)


def _short(misfits: Sequence[Misfit], resolver: Resolver) -> Notice:
    bound, size, most = misfits[0]
    told = [
        f"'{bound.name}' must finish {read(size, resolver)}; {bound.most.what} gives "
        f"{read(most, resolver)} at most: {written_out(bound.most, resolver)}; short by "
        f"{read(size - most, resolver)}."
        for bound, size, most in misfits
    ]
    better = recut(misfits, resolver)
    words = f"{letter_of(bound)} at least {better.new}" if better else None
    words = words or _cut(bound.most, size - most, resolver)
    hint = f"Cut {words}." if words else "Cut its pieces larger, or make it smaller."
    notice = resolver.fault("pieces-small", "R2", " ".join(told), bound.place, hint)
    notice = replace(notice, stated=read(size, resolver), needed=read(most, resolver))
    to = min(most for _, _, most in misfits).down(resolver.system.step)
    return at_the_cut(notice, better, resized(bound.name, size, Exact(to), resolver))


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
        f"'{bound.name}' finishes {read(size, resolver)}; {bound.most.what} gives "
        f"{read(size - short, resolver)}, for the diagonal takes {float(allowance):.2f}: short by "
        f"{tenths} mm. The usual allowance of {plain(lost.down(Fraction(1, 2)), decimals=True)} cm "
        "is rounded down."
    )
    better = _cut(bound.most, short, resolver)
    hint = f"Cut {better}, and trim." if better else "Cut its pieces larger, and trim."
    notice = resolver.fault("scant-allowance", "R2", message, bound.place, hint)
    better_cut = recut([Misfit(bound, size, size - short)], resolver)
    return replace(at_the_cut(notice, better_cut, []), severity="warning")


def _cut(tally: Tally, more: Exact, resolver: Resolver) -> str | None:
    """`A at least 5 1/2 square`: the cut with which the sum is so much more, where it rests on
    one."""
    for symbol, cut, times in _cuts(tally):
        better = ruler_up(cut + more / times, resolver.system)
        letter = symbol.key[1]
        return f"{letter} at least {typed(better, resolver)}{_square(letter, resolver)}"
    return None


def _cuts(tally: Tally) -> Iterator[tuple[Symbol, Exact, Exact]]:
    """Each stated cut that the sum grows with, and how often it counts in it."""
    for symbol, times in tally.sum().terms.items():
        if symbol.key[0] == "pieces" and symbol.value is not None and times > 0:
            yield symbol, symbol.value, times


def _smaller(tally: Tally, less: Exact, resolver: Resolver) -> str | None:
    """`K at most 4 1/2 square`: all cuts that the sum rests on, each as much smaller."""
    sizes = [
        f"{symbol.key[1]} at most {typed(cut, resolver)}{_square(symbol.key[1], resolver)}"
        for symbol, cut in _cuts_less(tally, less, resolver)
    ]
    return " and ".join(sizes) or None


def _cuts_less(tally: Tally, less: Exact, resolver: Resolver) -> list[tuple[Symbol, Exact]]:
    cuts = list(_cuts(tally))
    share = sum((times for _, _, times in cuts), Exact(0))
    step = resolver.system.step
    return [
        (symbol, Exact((cut - less / share).down(step)))
        for symbol, cut, _ in cuts
        if cut > less / share
    ]


def _square(letter: str, resolver: Resolver) -> str:
    cut = here(resolver.pieces[letter].cut, resolver.size)
    return " square" if cut is not None and cut.across == cut.down else ""


def _wasteful(misfits: Sequence[Misfit], resolver: Resolver) -> Notice:
    bound, size, most = misfits[0]
    told = [
        f"'{bound.name}' finishes {read(size, resolver)}; {bound.most.what} gives "
        f"{read(most, resolver)}: {written_out(bound.most, resolver)}; "
        f"{read(most - size, resolver)} would be trimmed away."
        for bound, size, most in misfits
    ]
    better = recut(misfits, resolver)
    hint = "Cut its pieces smaller, or check what it should finish."
    if better:
        hint = f"Cut {letter_of(bound)} {better.new}, or check what it should finish."
    notice = resolver.fault("much-to-trim", "R2", " ".join(told), bound.place, hint)
    to = most.down(resolver.system.step)
    told_at = at_the_cut(notice, better, resized(bound.name, size, Exact(to), resolver))
    return replace(told_at, severity="warning")


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
        f"'{bound.name}' comes to {read(most, resolver)} by what {letter} is cut; trimmed to "
        f"{read(size, resolver)} it would lose {read(most - size, resolver)}, and its points "
        "with it."
    )
    less, more = (Exact(side.down(step)) for side in (smaller, most))
    sizes = [typed(side, resolver) for side in (less, more)]
    hint, recuts = f"Let it finish {' or '.join(sizes)}.", None
    if size <= smaller:
        recuts = recut([Misfit(bound, size, most)], resolver)
        better = _cut(bound.most, size - most, resolver)
        hint = f"Cut {better}, or let it finish {sizes[1]}." if better else hint
    notice = resolver.fault("points-lost", "R2", message, bound.place, hint)
    others = [edit for to in (more, less) for edit in resized(bound.name, size, to, resolver)]
    if size > smaller:  # the next smaller cut would not do: it is cut as it must be
        notice = replace(notice, severity="advice")
    return at_the_cut(notice, recuts, others[:1] if recuts else others)


def _crowded(room: Room, resolver: Resolver) -> Iterator[Notice]:
    one, most = (resolver.known(tally.sum()) for tally in (room.one, room.room))
    labels = {term.label for tally in (room.one, room.room) for term in tally.terms}
    if one is None or most is None or one <= most or labels & resolver.broken:
        return
    message = (
        f"{room.one.what} take {read(one, resolver)}: {written_out(room.one, resolver)}; "
        f"{room.room.what} is {read(most, resolver)}; {read(one - most, resolver)} too much."
    )
    over = one - most
    cuts = (_smaller(room.one, over, resolver), _cut(room.room, over, resolver))
    cut = ", or ".join(cut for cut in cuts if cut)
    hint = f"Cut {cut}." if cut else room.rule.hint
    notice = resolver.fault(room.rule.code, room.rule.rule, message, room.one.place, hint)
    notice = replace(notice, stated=read(most, resolver), needed=read(one, resolver))
    at = room.one.place
    larger = Misfit(Bound("", Sum.of(one), room.room, Fraction(0), at), one, most)
    smaller = Misfit(Bound("", Sum.of(most), room.one, Fraction(0), at), most, one)
    single = len(_cuts_less(room.one, over, resolver)) == 1
    ways = [recut([smaller], resolver, up=False) if single else None, recut([larger], resolver)]
    edits = [way for way in ways if way is not None]
    yield at_the_cut(notice, edits[0], edits[1:]) if edits else notice
