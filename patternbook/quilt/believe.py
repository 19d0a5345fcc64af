"""What the equations say once all is solved: contradictions with both sums written out, lengths
that nothing fixes, figures taken on trust, and how far each number can be believed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import on_the_ruler
from patternbook.linear import Key, Sum
from patternbook.methods.world import Tally, Term, here
from patternbook.notice import Mark, Notice, Place
from patternbook.quilt.read_out import shown, typed
from patternbook.quilt.records import Standing
from patternbook.quilt.resolve import TOP, Check, Resolver, Stated, abs_of
from patternbook.quilt.templates import fixed

SIDE_WORDS: Final = {"across": "wide", "down": "long"}


def written_out(tally: Tally, resolver: Resolver) -> str:
    """The sum with its numbers: `D 18 1/2 + 12 A 24 + 2 seams 1/2`."""
    return " + ".join(_term(term, resolver) for term in tally.terms) or "nothing"


def _term(term: Term, resolver: Resolver) -> str:
    value = resolver.known(term.each)
    comes_to = "?" if value is None else shown(value * term.times, resolver)
    label = "seams" if term.label == "seam" and term.times > 1 else term.label
    return " ".join(
        word for word in (str(term.times) if term.times > 1 else "", label, comes_to) if word
    )


def contradictions(resolver: Resolver) -> Iterator[Notice]:
    """An error for every equation whose sides differ."""
    for check in resolver.checks:
        off = check.off()
        if off != 0 and not _follows(check, resolver):
            yield _differs(check, off, resolver)


def _follows(check: Check, resolver: Resolver) -> bool:
    """Whether the fault only follows from a part that has been told to be broken."""
    labels = {term.label for tally in (check.one, check.other) for term in tally.terms}
    if check.stated is not None:
        labels.add(check.stated.key[1] if check.stated.key[0] == "units" else TOP)
    return bool(labels & resolver.broken)


def _differs(check: Check, off: Exact, resolver: Resolver) -> Notice:
    stated = check.stated
    hint = (None if check.always else _repair(check, off, resolver)) or check.rule.hint
    if stated is not None:
        return _stated_differs(stated, off, hint, resolver)
    one, other = (resolver.known(tally.sum()) for tally in (check.one, check.other))
    amount = shown(abs_of(off), resolver)
    way = "short by" if off < 0 else "too long by"
    message = (
        f"{check.one.what} comes to {shown(one, resolver)}: {written_out(check.one, resolver)}; "
        f"{check.other.what} to {shown(other, resolver)}: {written_out(check.other, resolver)}; "
        f"{way} {amount}."
    )
    if one is None or other is None:
        message = (
            f"{check.one.what} is always {amount} {'shorter' if off < 0 else 'longer'} than "
            f"{check.other.what}, whatever is fitted: {written_out(check.one, resolver)} "
            f"against {written_out(check.other, resolver)}."
        )
    places = ((check.one.place, "the odd one"), (check.other.place, "what it must equal"))
    marks = tuple(Mark(place, role) for place, role in places if place is not None)
    hint = hint or _fit_hint(check, resolver) or "Change the parts so that both come to the same."
    return Notice(
        check.rule.code,
        "error",
        "quilt",
        message,
        marks,
        check.rule.rule,
        (resolver.size,),
        None if one is None else typed(one, resolver),
        None if other is None else typed(other, resolver),
        hint,
    )


def _stated_differs(stated: Stated, off: Exact, repair: str | None, resolver: Resolver) -> Notice:
    value = resolver.known(stated.worked_out.sum())
    number = stated.symbol.value or Exact(0)
    word = SIDE_WORDS.get(stated.key[-1], "long")
    way = "too little" if off > 0 else "too much"
    message = (
        f"{stated.worked_out.what} is {shown(value, resolver)} {word}: "
        f"{written_out(stated.worked_out, resolver)}; "
        f"{shown(number, resolver)} is stated, {shown(abs_of(off), resolver)} {way}."
    )
    hint = f"Write {typed(value, resolver)}, or leave it out and it is worked out."
    if repair:
        hint = f"Write {typed(value, resolver)}; or {repair[0].lower()}{repair[1:]}"
    marks = [Mark(stated.place, "stated here")]
    if stated.worked_out.place is not None:
        marks.append(Mark(stated.worked_out.place, "worked out from here"))
    return Notice(
        stated.rule.code,
        "error",
        "quilt",
        message,
        tuple(marks),
        stated.rule.rule,
        (resolver.size,),
        typed(number, resolver),
        typed(value, resolver),
        hint,
    )


def _repair(check: Check, off: Exact, resolver: Resolver) -> str | None:
    """The one cut that alone would mend it: in no other check, and on the ruler."""
    uses = Counter(symbol for other in resolver.checks for symbol in other.rest.terms)
    for symbol, times in check.rest.terms.items():
        if symbol.key[0] != "pieces" or symbol.key[2] != "cut" or uses[symbol] > 1:
            continue
        better = (symbol.value or Exact(0)) - off / times
        if better > 0 and on_the_ruler(better, resolver.system):
            sides = [_cut_side(symbol.key[1], side, resolver) for side in ("across", "down")]
            sides[("across", "down").index(symbol.key[3])] = typed(better, resolver)
            return f"Try {symbol.key[1]} cut {' x '.join(sides)}."
    return None


def _cut_side(letter: str, side: str, resolver: Resolver) -> str:
    cut = here(resolver.pieces[letter].cut, resolver.size)
    value = getattr(cut, side) if cut is not None else "fit"
    return value if isinstance(value, str) else typed(value, resolver)


def _fit_hint(check: Check, resolver: Resolver) -> str | None:
    """One letter has one size: a fit letter in two places may be the cause."""
    for label in (term.label for tally in (check.one, check.other) for term in tally.terms):
        if label in resolver.pieces and any(_fitted(label, side, resolver) for side in SIDE_WORDS):
            return f"{label} has one size everywhere: use another letter for one of its places."
    return None


def lengths_found(resolver: Resolver) -> Iterator[Notice]:
    """Errors for pieces whose length nothing fixes, or comes to nothing or less."""
    for letter, piece in resolver.pieces.items():
        if letter in resolver.broken or resolver.is_strip(letter) or fixed(piece):
            continue
        if resolver.reached is not None and letter not in resolver.reached:
            continue
        span = resolver.sum_of(letter)
        for side, form in (("across", span.across), ("down", span.down)):
            value = resolver.known(form)
            place = _cut_place(letter, resolver) or piece.place
            if value is None:
                yield _not_fixed(letter, side, place, resolver)
            elif value <= 0:
                resolver.broken.add(letter)
                yield _too_small(letter, side, value, place, resolver)
            elif _fitted(letter, side, resolver) and letter not in resolver.rounded_up:
                yield from _off_ruler(letter, side, value, place, resolver)


def _fitted(letter: str, side: str, resolver: Resolver) -> bool:
    return _cut_side(letter, side, resolver) == "fit" and resolver.pieces[letter].finished is None


def _cut_place(letter: str, resolver: Resolver) -> Place | None:
    cut = here(resolver.pieces[letter].cut, resolver.size)
    return cut.place if cut is not None else None


def _not_fixed(letter: str, side: str, place: Place, resolver: Resolver) -> Notice:
    word = "width" if side == "across" else "length"
    message = f"nothing fixes the {word} of {letter}."
    cut = resolver.pieces[letter].cut
    if cut is not None and here(cut, resolver.size) is None:
        message = f"{letter}'s cut is stated for other sizes, and nothing fixes its {word} in this."
    hint = f"State {letter}'s cut, or what the unit it is sewn into finishes."
    return _error("not-fixed", "R10", message, place, resolver, hint)


def _too_small(letter: str, side: str, value: Exact, place: Place, resolver: Resolver) -> Notice:
    word = "width" if side == "across" else "length"
    cut = _cut_side(letter, side, resolver)
    if cut != "fit":
        seams = shown(resolver.length(resolver.seam) * 2, resolver)
        message = (
            f"{letter}, cut {cut}, finishes {shown(value, resolver)} in {word}: two seams take "
            f"{seams}."
        )
        return _error(
            "no-room", "R1", message, place, resolver, "Cut it larger, or check the seam."
        )
    message = (
        f"{letter} would have to finish {shown(value, resolver)} in {word}: its place is too "
        f"small for it{_place_sum(letter, side, resolver)}."
    )
    hint = "One letter has one size everywhere: use another letter, or make its neighbours shorter."
    return _error("no-room", "R1", message, place, resolver, hint)


def _place_sum(letter: str, side: str, resolver: Resolver) -> str:
    """The sum that leaves the letter no room: `; novels is 46 = D -4 + 20 A 40 + E 10`."""
    for name, tallies in resolver.tallies.items():
        tally = tallies[("across", "down").index(side)]
        if any(term.label == letter for term in tally.terms):
            whole = typed(resolver.known(tally.sum()), resolver)
            return f"; {name} is {whole} = {written_out(tally, resolver)}"
    return ""


def _off_ruler(
    letter: str, side: str, value: Exact, place: Place, resolver: Resolver
) -> Iterator[Notice]:
    cut = value + resolver.length(resolver.seam) * 2
    if on_the_ruler(cut, resolver.system):
        return
    step = resolver.system.step
    down, up = typed(cut.down(step), resolver), typed(cut.up(step), resolver)
    word = "width" if side == "across" else "length"
    message = f"{letter} fits at a {word} of {shown(cut, resolver)}, which no ruler shows."
    hint = f"Change a size beside it so that it comes out at {down} or {up}."
    yield _error("off-ruler", "R23", message, place, resolver, hint)


def _error(
    code: str, rule: str, message: str, place: Place, resolver: Resolver, hint: str
) -> Notice:
    marks = (Mark(place, "here"),)
    return Notice(code, "error", "quilt", message, marks, rule, (resolver.size,), hint=hint)


def trust(resolver: Resolver) -> Iterator[Notice]:
    """Advice for every figure that nothing checks because the equations needed it."""
    checked = _checked(resolver)
    for key, stated in resolver.on_trust.items():
        if checked[key]:
            continue
        value = stated.symbol.value or Exact(0)
        word = SIDE_WORDS.get(stated.key[-1], "long")
        what = f"{stated.worked_out.what} {shown(value, resolver)} {word}"
        message = f"taken on trust: {what}; nothing else fixes it."
        marks = (Mark(stated.place, "stated here"),)
        hint = "Check it against your own drawing."
        yield Notice(
            "on-trust",
            "advice",
            "quilt",
            message,
            marks,
            "R20",
            (resolver.size,),
            typed(value, resolver),
            hint=hint,
        )


def standings(resolver: Resolver) -> dict[Key, Standing]:
    """How far each number of lengths can be believed."""
    checked = _checked(resolver)
    found: dict[Key, Standing] = {}
    for key in resolver.symbols:
        ways = checked[key]
        status, kind = ("agrees", "exact") if ways else ("given", "free")
        found[key] = Standing(status, kind, ways + 1, resolver.places.get(key))  # type: ignore[arg-type]
    for check in resolver.checks:
        if check.stated is not None:
            found[check.stated.key] = Standing("agrees", "exact", 2, check.stated.place)
    for key, stated in resolver.on_trust.items():
        ways = checked[key]
        status, kind = ("agrees", "exact") if ways else ("on trust", "free")
        found[key] = Standing(status, kind, ways + 1, stated.place)  # type: ignore[arg-type]
    return found


def _checked(resolver: Resolver) -> Counter[Key]:
    """How many equations check each figure."""
    return Counter(symbol.key for check in resolver.checks for symbol in check.rest.terms)


def depends_on(form: Sum) -> frozenset[Key]:
    """The figures that a solved sum rests on."""
    return frozenset(symbol.key for symbol in form.terms)
