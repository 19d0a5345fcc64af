"""Counts in sentences: each is one that the size has, and that of the part it is said of."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.prose.fact_counts import Number
from patternbook.proof.prose.noun import rule_of
from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.per_one import is_per_one, per_one
from patternbook.proof.prose.said_count import Count, anywhere, count_at, values
from patternbook.proof.prose.size_facts import QUILT, Facts
from patternbook.proof.prose.speech import Mention, Speech
from patternbook.proof.prose.told import told

_OF_BLOCKS: Final = re.compile(r" of [0-9]+(?: blocks| units)?\b")
_OF_A_PACK: Final = re.compile(r"\b(?:rolls?|pack(?:et)?s?) (?:of|with) $", re.IGNORECASE)
_ENOUGH: Final = re.compile(r"\b(?:enough|sufficient|suffices?|will do)\b", re.IGNORECASE)


def count_fault(
    speech: Speech, figure: Figure, facts: Facts, named: Sequence[Mention]
) -> Notice | None:
    """What is wrong with one count in one size."""
    if figure.value.denominator != 1 or figure.value == 0:
        return None
    if _OF_A_PACK.search(speech.text, 0, figure.start) and figure.value in _packs(facts):
        return None
    count = count_at(speech, figure, facts, named)
    if count is None:
        known = anywhere(int(figure.value), facts)
        return None if known else _unknown(speech, figure, facts)
    if told_of_one := per_one(count):
        return told_of_one
    return None if is_per_one(count) or _of_no_top(count) else _judged(count)


def _packs(facts: Facts) -> frozenset[int]:
    """How many are in one pack of each cloth."""
    return frozenset(one.pack for one in facts.known.quilt.fabrics.values() if one.pack)


def _of_no_top(count: Count) -> bool:
    """`5 rows of 6 blocks` in a fragment: the rows of a top that was not typed."""
    if count.what.noun not in ("rows", "columns") or QUILT in count.facts.known.quilt.units:
        return False
    return _OF_BLOCKS.match(count.speech.text, count.what.end) is not None


def _judged(count: Count) -> Notice | None:
    """Against the facts of its part where that is clear, else against all of its noun."""
    number, totals = count.number, values(count.own, only_totals=True)
    if number in totals or (count.own and count.some and _meant(count)):
        return None
    if not count.asked and not count.figure.text.isdigit() and count.what.noun != "packs":
        return None
    clear = totals and not count.some and (count.alike or (count.part and count.asked))
    named = count.how != "standing" or count.alike
    if clear and (named or number not in values(count.own, only_totals=False)):
        return _wrong(count, count.own, sure=True)
    return _among_all(count)


def _among_all(count: Count) -> Notice | None:
    """A count whose part is not clear: any number of its noun will do."""
    if count.number in values(count.every, only_totals=False):
        return None
    spelled = not count.figure.text.isdigit()
    if spelled and count.number in count.facts.counted and not _enough(count):
        return None
    if count.what.noun == "borders" or (count.some and _by_chance(count)):
        return None
    if not count.every:
        return None if count.anywhere else _unknown(count.speech, count.figure, count.facts)
    held = count.own or count.every
    alone = len(values(held, only_totals=True)) == 1 and count.what.noun != "pieces"
    return _wrong(count, held, sure=alone and (count.asked or count.what.noun == "packs"))


def _enough(count: Count) -> bool:
    """`one pack is enough`."""
    start, end = count.speech.sentence(count.figure.start)
    said = _ENOUGH.search(count.speech.text, start, end)
    return count.what.noun == "packs" and (count.asked or said is not None)


def _meant(count: Count) -> bool:
    return count.number in values(count.own, only_totals=False) or _by_chance(count)


def _by_chance(count: Count) -> bool:
    """Whether the size has the number as something else; of panels there is but one number."""
    return count.anywhere and count.what.noun != "panels"


def _wrong(count: Count, held: Sequence[Number], *, sure: bool) -> Notice:
    what, figure = count.what, count.figure
    totals = [one for one in held if one.total] or list(held)
    right = min(totals, key=lambda one: (abs(one.value - count.number), one.value))
    sure = sure and len({one.value for one in totals}) == 1
    whom = f" of {right.part}" if right.part and right.part != what.word else ""
    stated = count.speech.written(figure.start, what.end)
    return told(
        "said-count",
        rule_of(what.noun, count.part),
        count.speech,
        (figure.start, figure.end),
        f"the sentence says {stated}; it is {right.value}{whom}.",
        needed=str(right.value),
        sizes=(count.facts.known.quilt.size,),
        severity="error" if sure else "warning",
        mends=sure,
    )


def _unknown(speech: Speech, figure: Figure, facts: Facts) -> Notice | None:
    if not figure.text.isdigit():
        return None
    stated = speech.written(figure.start, figure.end)
    return told(
        "said-number",
        "R20",
        speech,
        (figure.start, figure.end),
        f"the sentence says {stated}; nothing in this size is {stated}.",
        hint=f"If it is no figure of the quilt, write [[{stated}]].",
        sizes=(facts.known.quilt.size,),
        severity="warning",
    )
