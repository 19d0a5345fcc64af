"""Squares from a length of cloth, as a card in a sentence tells them: so many across, so many
down."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.prose.equation import Equation
from patternbook.proof.prose.numbers import SQUARES, Figure
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Speech
from patternbook.proof.prose.told import told, typed

_HALF: Final = re.compile(r"\bhalf(?:[ -]| a )yard\b", re.IGNORECASE)
_QUARTER: Final = re.compile(r"\bquarter(?:[ -]| of a )yard\b", re.IGNORECASE)
_ONE: Final = re.compile(r"\b(?:one|a) yard\b", re.IGNORECASE)
_GIVEN: Final = re.compile(
    r"(?::|\bgives?|\bmakes?|\bget|\byields?|\bare|\bsquares) (?=[0-9]+(?!\w|[ ]?/))"
)
_GET_STRIPS: Final = re.compile(
    r"\bfrom [^.;]*?yards?\b[^.;0-9]*\b(?:get|gives?|makes?|yields?) (?P<count>[0-9]+) strips\b",
    re.IGNORECASE,
)
_OF_STRIPS: Final = 3
YARD: Final = 36


def table_fault(speech: Speech, equation: Equation, known: Sequence[Facts]) -> Notice | None:
    """What is wrong with `112 = 16 across x 8 down`: a factor that the cloth does not give."""
    side, result = equation.reckoned, equation.result
    if not side.product or result is None:
        return None
    quilt = known[0].known.quilt
    cloth = _cloth(speech, quilt.width)
    size = _square(speech)
    if cloth is None or size is None or quilt.system.unit == "cm":
        return None
    fit = tuple(Fraction(length // size.value) for length in cloth)
    for figure, right, length in zip(side.figures, fit, cloth, strict=True):
        if figure.value != right:
            return _fault(speech, figure, right, f"{typed(length, quilt)} / {size.text}", known[0])
    if result.value != fit[0] * fit[1]:
        return _fault(speech, result, fit[0] * fit[1], f"{fit[0]} x {fit[1]}", known[0])
    return None


def cards(
    speech: Speech, known: Sequence[Facts]
) -> Iterator[tuple[Notice | None, tuple[int, int]]]:
    """`8 in squares from 1 yd: 25`: whole squares across times whole squares down."""
    yield from _strips(speech, known)
    size = _square(speech)
    if size is None or not known:
        return
    quilt = known[0].known.quilt
    cloth, found = _cloth(speech, quilt.width), _GIVEN.search(speech.text, size.close)
    if cloth is None or quilt.system.unit == "cm" or not size.value:
        return
    if "=" in speech.text:
        yield None, speech.sentence(size.start)
        return
    figure = next((one for one in speech.figures if found and one.start == found.end()), None)
    if figure is None or not figure.whole:
        return
    across, down = (Fraction(length // size.value) for length in cloth)
    wrong = figure.value != across * down
    yield (
        _fault(speech, figure, across * down, f"{across} x {down}", known[0]) if wrong else None,
        speech.sentence(size.start),
    )


def _strips(
    speech: Speech, known: Sequence[Facts]
) -> Iterator[tuple[Notice | None, tuple[int, int]]]:
    """`From 1/2 yard you get 7 strips 2 1/2 wide`: as many as lie on it, whole."""
    for found in _GET_STRIPS.finditer(speech.text):
        here = [one for one in speech.figures if found.start() <= one.start]
        cloth, count, wide = here[:_OF_STRIPS] if len(here) >= _OF_STRIPS else (None,) * _OF_STRIPS
        if cloth is None or count is None or wide is None or not (known and wide.value):
            continue
        if cloth.unit != "yd" or count.start != found.start("count") or wide.down is not None:
            continue
        right = Fraction(cloth.value * YARD // wide.value)
        shown = f"{typed(cloth.value * YARD, known[0].known.quilt)} / {wide.text}"
        wrong = None
        if count.value != right:
            message = f"{shown} gives {right} whole strips, not {count.text}."
            span = (count.start, count.end)
            wrong = told("sum-wrong", "R9", speech, span, message, needed=str(right))
        yield wrong, (cloth.start, count.close)


def _fault(speech: Speech, figure: Figure, right: Fraction, shown: str, facts: Facts) -> Notice:
    needed = typed(right, facts.known.quilt)
    message = f"{shown} gives {needed} whole squares, not {figure.text}."
    return told("sum-wrong", "R9", speech, (figure.start, figure.end), message, needed=needed)


def _cloth(speech: Speech, width: Fraction) -> tuple[Fraction, Fraction] | None:
    """Width and length of the cloth that is spoken of."""
    for words, yards in ((_HALF, Fraction(1, 2)), (_QUARTER, Fraction(1, 4)), (_ONE, Fraction(1))):
        if words.search(speech.text):
            return width, yards * YARD
    yards_said = next((one for one in speech.figures if one.unit == "yd"), None)
    return (width, yards_said.value * YARD) if yards_said else None


def _square(speech: Speech) -> Figure | None:
    return next((one for one in speech.figures if SQUARES.match(speech.text, one.close)), None)
