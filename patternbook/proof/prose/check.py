"""All checks of one pattern's sentences, in order: how a number is written, then what it says."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.prose.bought import bought_fault, is_bought
from patternbook.proof.prose.counts import count_fault
from patternbook.proof.prose.equivalents import equivalents
from patternbook.proof.prose.labels import labels
from patternbook.proof.prose.lengths import length_fault
from patternbook.proof.prose.measuring import is_length
from patternbook.proof.prose.notation import SHARE, notation
from patternbook.proof.prose.noun import counted, spelled
from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.references import references
from patternbook.proof.prose.sayings import Saying
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Mention, Speech, mentions, sizes_at
from patternbook.proof.prose.sums import sums
from patternbook.proof.prose.table import cards
from patternbook.proof.prose.terms import terms

Span = tuple[int, int]
_HOLDS_NUMBERS: Final = re.compile(r"[0-9½¼¾⅛⅜⅝⅞⅓⅔]")
_NO_FIGURE: Final = re.compile(
    r"[ -]*(?:minutes?|hours?|days?|weeks?|months?|years?|degrees?|°|%|percent|o'clock|am\b|pm\b"
    r"|mm\b|(?:weight|wt)\b|needles?|stitch|tog|rulers?\b|x [0-9]+(?: inch)? rulers?)",
    re.IGNORECASE,
)
_TOOL: Final = re.compile(r"\b(?:rulers?|mats?|labels?|hoops?) (?:of|measuring) $", re.IGNORECASE)
_BEFORE: Final = re.compile(
    r"(?:needles?(?: size)?|thread|nr\.?|no\.?|number|step|page|figure|fig\.|version|since"
    r"|revision)\s*$"
)


def checked(
    said: Sequence[Saying], lines: Sequence[str], known: Sequence[Evidence]
) -> Iterator[Notice]:
    """The notices of all texts."""
    facts = tuple(Facts(one) for one in known)
    for saying in said:
        speech = Speech(saying, lines)
        yield from terms(speech, known)
        if _HOLDS_NUMBERS.search(saying.text) or spelled(speech):
            yield from _with_numbers(speech, facts)


def _with_numbers(speech: Speech, known: Sequence[Facts]) -> Iterator[Notice]:
    taken: list[Span] = []
    for check in (notation, sums, cards, equivalents, references, labels):
        for notice, span in check(speech, known):
            taken.append(span)
            if notice is not None:
                yield notice
    free = [
        one for one in _all(speech) if not any(a < one.close and one.start < b for a, b in taken)
    ]
    named = [mentions(speech.text, facts) for facts in known] if free else []
    for figure in free:
        yield from _figure(speech, figure, known, named)


def _all(speech: Speech) -> list[Figure]:
    return sorted((*speech.figures, *spelled(speech)), key=lambda figure: figure.start)


def _figure(
    speech: Speech, figure: Figure, known: Sequence[Facts], named: Sequence[Sequence[Mention]]
) -> Iterator[Notice]:
    if _is_other(speech, figure):
        return
    names = tuple(facts.known.quilt.size for facts in known)
    meant = sizes_at(speech, figure, names)
    found = [
        notice
        for facts, parts in zip(known, named, strict=True)
        if facts.known.sound and facts.known.quilt.size in meant
        if (notice := _in_size(speech, figure, facts, parts))
    ]
    yield from _together(found)


def _together(found: Sequence[Notice]) -> Iterator[Notice]:
    """One number cannot be mended for sizes that need different ones."""
    by_needed: dict[str | None, list[Notice]] = {}
    for notice in found:
        by_needed.setdefault(notice.needed, []).append(notice)
    for alike in by_needed.values():
        sizes = tuple(size for notice in alike for size in notice.sizes)
        whole = replace(alike[0], sizes=sizes)
        if len(by_needed) > 1:
            hint = "The sizes differ: name the size, or let it be filled in, as {{ strips.A }} is."
            whole = replace(whole, edits=(), hint=hint)
        yield whole


def _is_other(speech: Speech, figure: Figure) -> bool:
    """A time, a heat, a needle: no figure of the quilt."""
    if _NO_FIGURE.match(speech.text, figure.close) or figure.unit == "mm":
        return True
    if figure.unit is None and figure.value < 1 and SHARE.match(speech.text, figure.close):
        return True
    if _TOOL.search(speech.text, 0, figure.start):
        return True
    year = figure.whole and 1900 <= figure.value <= 2100
    return year or bool(_BEFORE.search(speech.text[: figure.start]) and figure.whole)


def _in_size(
    speech: Speech, figure: Figure, facts: Facts, named: Sequence[Mention]
) -> Notice | None:
    if not figure.text[0].isalpha():
        if figure.unit in ("in", "cm") and figure.unit != facts.known.quilt.system.unit:
            return None  # held against what stands beside it in the other unit
        if is_bought(figure):
            return bought_fault(speech, figure, facts, named)
        if is_length(speech, figure):
            return length_fault(speech, figure, facts, named)
        return count_fault(speech, figure, facts, named)
    if counted(speech, figure.close, facts):
        return count_fault(speech, figure, facts, named)
    return None
