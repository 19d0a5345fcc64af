"""The author's own sentences with their figures filled in, and what is wrong in them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches
from typing import Final, NamedTuple

from patternbook.booklet import wording
from patternbook.booklet.named import NAMED, STEP, said
from patternbook.booklet.order import number_of
from patternbook.notice import Mark, Notice, Place, gathered
from patternbook.proof.evidence import Evidence
from patternbook.quilt.heading import Heading
from patternbook.quilt.records import LayoutMade
from patternbook.value import NOWHERE, Text

# `{{ cut.A }}`; whatever else stands between two braces is a slip.
_FILL: Final = re.compile(r"\{\{(.*?)\}\}", re.DOTALL)
_NAMED: Final = re.compile(r"\s*([a-z]+)\.([A-Za-z0-9-]+)\s*")
_FREE: Final = re.compile(r"\[\[(.*?)\]\]", re.DOTALL)


class Said(NamedTuple):
    """One text of the author's: its words and where they stand."""

    words: str
    place: Place | None


def fill(text: str, sizes: Sequence[Evidence]) -> tuple[str, tuple[Notice, ...]]:
    """The text for a reader of these sizes, and the fills that name nothing.

    A figure that is not the same in all of them is given size by size: `crib 6, throw 9`.
    """
    told: list[Notice] = []
    place = text.place if isinstance(text, Text) and text.place != NOWHERE else None

    def figure(found: re.Match[str]) -> str:
        named = _NAMED.fullmatch(found.group(1))
        values = _values(named.group(1), named.group(2), sizes) if named else {}
        missing = [one.quilt.size for one in sizes if one.quilt.size not in values]
        if missing:
            told.append(_unknown(found.group(0), named, missing, place))
        return wording.by_size(values) if values else found.group(1).strip()

    filled = _FILL.sub(figure, str(text))
    return _FREE.sub(lambda free: free.group(1).strip(), filled), tuple(told)


def _values(word: str, name: str, sizes: Sequence[Evidence]) -> Mapping[str, str]:
    if word == STEP and (number := number_of(name, sizes)) is not None:
        return {known.quilt.size: str(number) for known in sizes}
    found = {known.quilt.size: said(word, name, known) for known in sizes}
    return {size: value for size, value in found.items() if value is not None}


def _unknown(
    written: str, named: re.Match[str] | None, sizes: Sequence[str], place: Place | None
) -> Notice:
    """The fill that names nothing, and the nearest thing that would."""
    words = ", ".join(NAMED)
    if named is None:
        message = f"{written} cannot be filled in: a word, a full stop and a name are wanted."
        hint = "Write it as {{ cut.A }}."
    elif named.group(1) not in NAMED:
        message = f"{written} cannot be filled in: {named.group(1)} is not one of {words}."
        near = get_close_matches(named.group(1), NAMED, 1)
        hint = f"Did you mean {near[0]}?" if near else "Use one of those words."
    else:
        of, _ = NAMED[named.group(1)]
        message = f"{written} cannot be filled in: {named.group(2)} is not {of}."
        hint = "Name a part, a fabric or a number that this size has."
    marks = (Mark(place, "here"),) if place else ()
    return Notice(
        "unknown-fill", "error", "booklet", message, marks, "R19", tuple(sizes), hint=hint
    )


def author_texts(known: Evidence) -> Iterator[Said]:
    """Every sentence of the author's that is printed for one size."""
    quilt = known.quilt
    for words in quilt.words.values():
        yield Said(words, None)
    for fabric in quilt.fabrics.values():
        yield from _note(fabric.note, fabric.place)
    for piece in quilt.pieces.values():
        yield from _note(piece.note, piece.place)
    for unit in quilt.units.values():
        yield from _note(unit.note, unit.place)
        if isinstance(unit.made, LayoutMade):
            for border in unit.made.borders:
                yield from _note(border.note, border.place)
    for whole in (quilt.backing, quilt.batting, quilt.binding):
        if whole is not None:
            yield from _note(whole.note, whole.places.get("note"))
    for design in quilt.quilting:
        yield from _note(design.note, design.place)


def _note(note: str | None, place: Place | None) -> Iterator[Said]:
    if note:
        yield Said(note, place)


def told(
    heading: Heading, sizes: Mapping[str, Evidence], written: Iterable[Text] = ()
) -> tuple[Notice, ...]:
    """What is wrong in the author's sentences, in any size, as `check` tells it; `written` are
    the words of the source, whose places are told."""
    places = {str(words): words.place for words in written if words.place != NOWHERE}
    found: list[Notice] = []
    for known in sizes.values():
        for said_here in author_texts(known):
            place = places.get(said_here.words, said_here.place)
            found += _placed(fill(said_here.words, (known,))[1], place)
    revisions = (
        words
        for entry in heading.revisions
        for words in (entry.why, entry.if_cut, entry.if_sewn)
        if words
    )
    for words in (heading.summary or "", *revisions):
        found += _placed(fill(words, tuple(sizes.values()))[1], places.get(words))
    return gathered(found)


def _placed(notices: Sequence[Notice], place: Place | None) -> Iterator[Notice]:
    for notice in notices:
        if notice.marks or place is None:
            yield notice
        else:
            marks = (Mark(place, "the sentence stands here"),)
            yield replace(notice, marks=marks)
