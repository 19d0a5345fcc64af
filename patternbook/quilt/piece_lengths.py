"""Pieces whose length nothing fixes, or that come to nothing, or to what no ruler shows."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.exact import Exact
from patternbook.inch import on_the_ruler
from patternbook.methods.world import here
from patternbook.notice import Mark, Notice, Place
from patternbook.quilt.read_out import shown, typed, written_out
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.templates import fixed


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
            elif fitted(letter, side, resolver) and letter not in resolver.rounded_up:
                yield from _off_ruler(letter, side, value, place, resolver)


def fitted(letter: str, side: str, resolver: Resolver) -> bool:
    """Whether a side of the piece is cut to fit its place."""
    return _cut_side(letter, side, resolver) == "fit" and resolver.pieces[letter].finished is None


def _cut_side(letter: str, side: str, resolver: Resolver) -> str:
    cut = here(resolver.pieces[letter].cut, resolver.size)
    value = getattr(cut, side) if cut is not None else "fit"
    return value if isinstance(value, str) else typed(value, resolver)


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
