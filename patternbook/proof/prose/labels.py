"""Finished or from raw edge to raw edge: said of every size that could be either."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from patternbook.exact import Exact
from patternbook.notice import Notice
from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Speech
from patternbook.proof.prose.told import told, typed

Found = Iterator[tuple[Notice | None, tuple[int, int]]]
_MEASURES: Final = re.compile(r"\b(?:measures?|unfinished|raw)\b[^.;0-9]*$", re.IGNORECASE)
_FINISHES: Final = re.compile(r"\b(?:finish(?:es)?)\b(?: (?:at|to))?[^.;0-9]{0,12}$", re.IGNORECASE)
_BLOCK: Final = re.compile(r"[ -](?P<noun>blocks?|units?)\b", re.IGNORECASE)
_SAID: Final = re.compile(r"finish|unfinished|\braw\b|measure|\btrim", re.IGNORECASE)
_MAKE: Final = re.compile(r"\b(?:make|makes|give|gives|for|=)\s+(?:a |an )?$", re.IGNORECASE)


def labels(speech: Speech, known: Sequence[Facts]) -> Found:
    """Pairs that do not differ by two seams, sizes of blocks without a word, and cut sizes that
    were counted as finished ones."""
    sound = [facts for facts in known if facts.known.sound]
    yield from _pairs(speech, sound)
    for figure in speech.figures:
        if notice := _unsaid(speech, figure, sound):
            yield notice, (figure.start, figure.close)
    yield from _cut_as_finished(speech, sound)


def _pairs(speech: Speech, known: Sequence[Facts]) -> Found:
    """`measures 8 1/2 and finishes at 9`."""
    found = [figure for figure in speech.figures if figure.down is None]
    for raw, done in pairwise(found):
        if not known or speech.sentence(raw.start) != speech.sentence(done.start):
            continue
        between = speech.text[raw.close : done.start]
        if not _MEASURES.search(speech.text[: raw.start]) or not _FINISHES.search(between):
            continue
        quilt = known[0].known.quilt
        seams = 2 * quilt.seam
        if raw.value - done.value == seams:
            continue
        model = {Exact.of(v) for facts in known for v in facts.values}
        blame_raw = raw.value not in model and done.value in model
        wrong, right = (raw, done.value + seams) if blame_raw else (done, raw.value - seams)
        message = (
            f"measured {typed(raw.value, quilt)} it finishes at {typed(raw.value - seams, quilt)}: "
            f"two seams, {typed(seams, quilt)}, lie between, not {typed(done.value, quilt)}."
        )
        notice = told(
            "said-unlabelled",
            "R12",
            speech,
            (wrong.start, wrong.end),
            message,
            needed=typed(right, quilt),
        )
        yield notice, (wrong.start, wrong.close)


def _unsaid(speech: Speech, figure: Figure, known: Sequence[Facts]) -> Notice | None:
    """`a 9 inch block`: finished, or as it is measured?"""
    block = _BLOCK.match(speech.text, figure.close)
    if block is None or (
        figure.unit is None and figure.value.denominator == 1 and figure.down is None
    ):
        return None
    if _SAID.search(speech.text, *speech.clause(figure.start)):
        return None
    label = _label(figure, known)
    if label is None:
        return None
    span = (figure.start, block.end())
    stated = speech.written(*span)
    noun = block["noun"]
    return told(
        "said-unlabelled",
        "R12",
        speech,
        span,
        f"{stated}: this is the {label} size; nothing says so.",
        needed=f"{stated.removesuffix(noun).rstrip(' -')} {label} {noun}",
        severity="warning",
    )


def _label(figure: Figure, known: Sequence[Facts]) -> str | None:
    """Which of the two it is, where it is only one of them."""
    for facts in known:
        blocks = [facts.known.quilt.units[name] for name in facts.known.quilt.units]
        done = any(figure.value == unit.finished.across for unit in blocks)
        raw = any(figure.value == unit.measure.across for unit in blocks)
        if done != raw:
            return "finished" if done else "unfinished"
    return None


def _cut_as_finished(speech: Speech, known: Sequence[Facts]) -> Found:
    """`12 x 12 squares cut 4 make 48 x 48`."""
    found = speech.figures
    for at, whole in enumerate(found):
        if whole.down is None or not known or not _MAKE.search(speech.text[: whole.start]):
            continue
        grid = next((one for one in found[:at] if one.down is not None and not one.square), None)
        cut = next((one for one in found[:at] if one.down is None or one.square), None)
        if grid is None or cut is None or grid.down is None:
            continue
        if (whole.value, whole.down) != (grid.value * cut.value, grid.down * cut.value):
            continue
        quilt = known[0].known.quilt
        done = cut.value - 2 * quilt.seam
        sides = [typed(grid.value * done, quilt), typed(grid.down * done, quilt)]
        needed = sides[0] if whole.square else " x ".join(sides)
        message = (
            f"{typed(grid.value, quilt)} squares cut {typed(cut.value, quilt)} finish "
            f"{typed(grid.value, quilt)} x {typed(done, quilt)} = {sides[0]}: the cut size was "
            "counted as the finished one."
        )
        span = (whole.start, whole.end)
        yield told("said-unlabelled", "R12", speech, span, message, needed=needed), span
