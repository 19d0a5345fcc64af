"""Stated counts set against what is sewn, and what was written but serves nothing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from patternbook.methods.made import StripSetMade
from patternbook.methods.strip_set import WrittenStripSet
from patternbook.methods.world import here
from patternbook.notice import Edit, Mark, Notice
from patternbook.quilt.counts import Counted, count_rule
from patternbook.quilt.parts import TOP
from patternbook.quilt.resolve import Resolver
from patternbook.value import CountValue


def stated_counts(resolver: Resolver, counted: Counted) -> Iterator[Notice]:
    """Errors for stated counts that differ from what is sewn."""
    for letter, piece in resolver.pieces.items():
        value = here(piece.count, resolver.size)
        stated = resolver.number(piece.count, f"{letter}: count")
        if stated is None or value is None:
            continue
        if not counted.uses[letter] and TOP not in resolver.units:
            continue
        sewn = counted.number(letter)
        if stated != sewn:
            notice = _differs(f"count of {letter}", value, sewn, counted.sum_of(letter), resolver)
            rule = count_rule(letter, counted, resolver)
            marks = (*notice.marks, Mark(piece.place, "the piece"))
            yield replace(notice, rule=rule, marks=marks)
    yield from _mirrored(resolver, counted)
    yield from _sets(resolver, counted)
    yield from _all_pieces(resolver, counted)


def _mirrored(resolver: Resolver, counted: Counted) -> Iterator[Notice]:
    """Errors for a stated number of the other hand that is not what the cells come to."""
    for letter, piece in resolver.pieces.items():
        value = here(piece.mirrored, resolver.size)
        stated = resolver.number(piece.mirrored, f"{letter}: mirrored")
        sewn = counted.other_hand[letter]
        # In a fragment that turns none over, those that are may lie in what was not typed.
        if stated is None or value is None or (TOP not in resolver.units and not sewn):
            continue
        if stated != sewn:
            message = (
                f"{letter}: {stated} of the other hand stated; the cells with /mirror come to "
                f"{sewn} of {counted.number(letter)}."
            )
            hint = f"Write mirrored: {sewn}, or check the cells."
            notice = resolver.fault("mirrored", "R18", message, value.place, hint)
            yield _figure(notice, value, sewn)


def _sets(resolver: Resolver, counted: Counted) -> Iterator[Notice]:
    for name, unit in resolver.units.items():
        if not isinstance(unit, WrittenStripSet) or name in resolver.broken:
            continue
        value = here(unit.sets, resolver.size)
        stated = resolver.number(unit.sets, f"{name}: sets")
        made = resolver.work(name).make(name, unit, resolver, counted.make[name]).made
        if value is not None and stated is not None and isinstance(made, StripSetMade):
            yield from _sets_told(name, value, stated, made.per_set, resolver, counted)


def _sets_told(
    name: str, value: CountValue, stated: int, per_set: int, resolver: Resolver, counted: Counted
) -> Iterator[Notice]:
    slices = counted.make[name]
    needed = -(-slices // per_set)
    words = f"{slices} slices, {per_set} a set"
    if stated < needed:
        message = f"{stated} sets of '{name}' stated, {needed} are needed: {words}."
        hint = f"Write sets: {needed}, or leave it out."
        notice = resolver.fault("sets-short", "R5", message, value.place, hint)
        yield _figure(notice, value, needed)
    elif stated > needed:
        spare = stated - needed
        message = f"{stated} sets of '{name}' stated, {needed} would do: {words}; {spare} to spare."
        notice = resolver.fault("spare-sets", "R5", message, value.place)
        yield replace(notice, severity="advice", stated=str(stated), needed=str(needed))


def _all_pieces(resolver: Resolver, counted: Counted) -> Iterator[Notice]:
    value = resolver.goal.pieces
    stated = resolver.whole(value, "pieces")
    if value is None or stated is None:
        return
    counts = {letter: counted.number(letter) for letter in resolver.pieces}
    if stated != sum(counts.values()):
        terms = " + ".join(f"{number} {letter}" for letter, number in counts.items())
        yield _differs("pieces", value, sum(counts.values()), terms, resolver)


def unused(resolver: Resolver, counted: Counted) -> Iterator[Notice]:
    """Pieces never sewn, and numbers of the size that nothing uses."""
    for letter in resolver.pieces:
        if not counted.uses[letter] and letter not in resolver.broken:
            yield from _never_sewn(letter, resolver)
    for name, number in resolver.goal.numbers.items():
        if not resolver.used_names[name]:
            message = f"the size's number '{name}' ({number}) is used nowhere."
            hint = "Leave it out, or use its name in a count."
            notice = resolver.fault("unused-number", "R19", message, number.place, hint)
            yield replace(notice, severity="advice")


def _never_sewn(letter: str, resolver: Resolver) -> Iterator[Notice]:
    place = resolver.pieces[letter].place
    if TOP in resolver.units:
        message = f"{letter} is cut but never sewn."
        hint = "Place it in a unit, or leave the piece out."
        yield resolver.fault("never-sewn", "R3", message, place, hint)
    elif not (resolver.is_strip(letter) or _stated_count(letter, resolver)):
        message = f"nothing says how many {letter} are needed."
        hint = "State its count, or place it in a unit."
        notice = resolver.fault("no-count", "R10", message, place, hint)
        yield replace(notice, severity="warning")
    elif resolver.units:
        message = f"{letter} is in no unit of this fragment: its stated count is the need."
        hint = "Place it in a unit, or check that none is missing."
        notice = resolver.fault("need-assumed", "R3", message, place, hint)
        yield replace(notice, severity="advice")


def _stated_count(letter: str, resolver: Resolver) -> int:
    piece = resolver.pieces[letter]
    counts = (piece.count, "count"), (piece.squares, "squares"), (piece.spare, "spare")
    return sum(resolver.number(value, f"{letter}: {word}") or 0 for value, word in counts)


def _differs(what: str, value: CountValue, sewn: int, terms: str, resolver: Resolver) -> Notice:
    stated = resolver.whole(value, what)
    message = f"{what}: {stated} stated, {sewn} sewn: {terms} = {sewn}."
    hint = f"Write {sewn}, or leave it out and it is counted."
    notice = resolver.fault("count", "R3", message, value.place, hint)
    return _figure(notice, value, sewn)


def _figure(notice: Notice, value: CountValue, needed: int) -> Notice:
    """The notice with the number that stands there, and the one that would mend it."""
    edit = Edit(value.place, value.text, str(needed))
    return replace(notice, stated=value.text, needed=str(needed), edits=(edit,))
