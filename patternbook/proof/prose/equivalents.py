"""The same length in two units: yards and inches, inches and centimetres, yards and metres."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import INCHES, plain
from patternbook.notice import Notice
from patternbook.proof.prose.numbers import BY, Figure
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Speech
from patternbook.proof.prose.told import told

# How many millimetres one of each is; exact since 1959.
MILLIMETRES: Final = {
    "in": Fraction(254, 10),
    "yd": Fraction(9144, 10),
    "ft": Fraction(3048, 10),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "mm": Fraction(1),
}
_BETWEEN: Final = re.compile(
    r"(?: squares?| strips?| wide| long| each)? ?"
    r"(?:=|\(|/|is|are|or|equals?|that is,?|,? which is) ?\(?(?:about )?"
)
_SHARES: Final = {"half": 2, "third": 3, "quarter": 4, "eighth": 8}
_SHARE_OF_A_YARD: Final = re.compile(
    r"\b(?:half(?: a|-)? ?yard|a half[ -]yard|an? (?:third|quarter|eighth)(?: of a)?[ -]yard)\b",
    re.IGNORECASE,
)
_METRIC: Final = frozenset(("cm", "m", "mm"))
_WORDS: Final = {"in": "in", "yd": "yd", "m": "m", "cm": "cm", "mm": "mm", "ft": "ft"}


def equivalents(
    speech: Speech, _known: Sequence[Facts]
) -> Iterator[tuple[Notice | None, tuple[int, int]]]:
    """Every pair of neighbours in two units; the second is held against the first."""
    found = speech.figures
    yield from _in_words(speech)
    for one, other in pairwise(found):
        units = {one.unit, other.unit}
        if None in units or len(units) == 1 or (one.down is None) != (other.down is None):
            continue
        between = _BETWEEN.fullmatch(speech.text[one.close : other.start])
        if between is None and not _both(speech, one, other):
            continue
        # What was typed in inches is what was reckoned with.
        swapped = one.unit in _METRIC and other.unit not in _METRIC
        yield _pair(speech, *((other, one) if swapped else (one, other)))


def _in_words(speech: Speech) -> Iterator[tuple[Notice | None, tuple[int, int]]]:
    """`half a yard is 18 inches`."""
    for said in _SHARE_OF_A_YARD.finditer(speech.text):
        share = Fraction(1, next(n for word, n in _SHARES.items() if word in said[0].lower()))
        behind = _BETWEEN.match(speech.text, said.end())
        other = next((f for f in speech.figures if behind and f.start == behind.end()), None)
        if other is not None and other.unit in ("in", "cm", "m") and other.down is None:
            one = Figure(said.start(), said.end(), said.end(), share, said[0], ("yd",))
            yield _pair(speech, one, other)


def _both(speech: Speech, one: Figure, other: Figure) -> bool:
    """`(1 3/4 yards, 63 inches)`."""
    text = speech.text
    return (
        text[one.start - 1 : one.start] == "("
        and text[one.close : other.start] == ", "
        and text[other.close : other.close + 1] == ")"
    )


def _pair(speech: Speech, one: Figure, other: Figure) -> tuple[Notice | None, tuple[int, int]]:
    factor = MILLIMETRES[one.unit or ""] / MILLIMETRES[other.unit or ""]
    if one.down is not None and other.down is not None:
        return _sizes(speech, one, other, factor), (other.start, other.close)
    right = one.value * factor
    wrong = None if _agrees(other, right, one) else _wrong(speech, one, other, right)
    return wrong, (other.start, other.close)


def _sizes(speech: Speech, one: Figure, other: Figure, factor: Fraction) -> Notice | None:
    """`36 x 48 inches (91 x 122 cm)`, side by side."""
    texts = BY.split(other.text) if not other.square else [other.text]
    sides = [
        (replace(other, value=said, text=text), value * factor)
        for text, said, value in zip(texts, other.values, one.values, strict=False)
    ]
    if all(_agrees(side, right, one) for side, right in sides):
        return None
    needed = " x ".join(
        side.text if _agrees(side, right, one) else _printed(side, right) for side, right in sides
    )
    stated = speech.written(other.start, other.end)
    message = f"{speech.written(one.start, one.close)} is {needed} {other.unit}, not {stated}."
    span = (other.start, other.end)
    return told("said-equivalent", "R17", speech, span, message, needed=needed)


def _agrees(figure: Figure, right: Fraction, one: Figure) -> bool:
    """Rounded as it is printed; a length that one can use is never rounded up."""
    if figure.unit in _METRIC:
        step = Fraction(1, 10 ** _decimals(figure))
        bought = one.unit == "yd" and figure.unit == "m"
        return abs(figure.value - right) <= step / 2 or (
            bought and 0 <= figure.value - right < step
        )
    return figure.value in (right, Exact.of(right).down(INCHES.step))


def _decimals(figure: Figure) -> int:
    return len(figure.text.partition(".")[2])


def _wrong(speech: Speech, one: Figure, other: Figure, right: Fraction) -> Notice:
    needed = _printed(other, right)
    factor = MILLIMETRES[one.unit or ""] / MILLIMETRES[other.unit or ""]
    times = plain(factor, decimals=other.unit in _METRIC or factor.denominator > 64)
    message = (
        f"{speech.written(one.start, one.close)} x {times} = {needed} {other.unit}, "
        f"not {speech.written(other.start, other.end)}."
    )
    span = (other.start, other.end)
    return told("said-equivalent", "R17", speech, span, message, needed=needed)


def _printed(figure: Figure, right: Fraction) -> str:
    if figure.unit in _METRIC:
        # Two decimals of a centimetre come from multiplying, not from a ruler.
        digits = min(_decimals(figure), 1) if figure.unit == "cm" else max(_decimals(figure), 1)
        return f"{float(round(right, digits)):.{digits}f}"
    return plain(Exact.of(right).down(INCHES.step))
