"""What a stated size would have to be for a piece that fits in it to come out on the ruler."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import on_the_ruler, ruler_up
from patternbook.notice import Edit, Mark, Notice
from patternbook.quilt.checks import Stated
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.written_at import edit, measures

SIDES: Final = ("across", "down")


def with_sizes(notice: Notice, resolver: Resolver) -> Notice:
    """The notice of a piece that fits at no mark of the ruler, with the stated sizes that would
    bring it to the next one up or down."""
    if notice.code != "off-ruler":
        return notice
    edits, places = [], {}
    for letter, piece in resolver.pieces.items():
        cut = piece.cut.at(resolver.size) if piece.cut is not None else None
        if cut is None or cut.place != notice.marks[0].place:
            continue
        for stated, wanted in _sizes(letter, resolver):
            written = measures(resolver.written).get(stated.place)
            if written is not None:
                side = stated.key[-1] if stated.key[-1] in SIDES else ""
                places[stated.place] = Mark(stated.place, "rests on this")
                edits.append(edit(written, {side: wanted}, resolver.system, sure=False))
    if not edits:
        return notice
    found: tuple[Edit, ...] = tuple(dict.fromkeys(edits))
    return replace(notice, marks=(*notice.marks, *places.values()), edits=found)


def _sizes(letter: str, resolver: Resolver) -> Iterator[tuple[Stated, Exact]]:
    """Each stated size that the piece's own rests on, and what it would have to be."""
    step = resolver.system.step
    seams = resolver.length(resolver.seam) * 2
    for form in resolver.sum_of(letter):
        reduced = resolver.equations.reduced(form)
        value = reduced.value()
        if value is None or on_the_ruler(value + seams, resolver.system):
            continue
        raw = value + seams
        for mark in (Exact(ruler_up(raw, resolver.system)), Exact(raw.down(step))):
            for stated in resolver.on_trust.values():
                times = reduced.terms.get(stated.symbol)
                number = stated.symbol.value
                if times is None or number is None:
                    continue
                wanted = number + (mark - raw) / times
                if wanted > 0 and on_the_ruler(wanted, resolver.system):
                    yield stated, wanted
