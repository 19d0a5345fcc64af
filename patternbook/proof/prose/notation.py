"""How a number is written: a count never beside a size, one unit a number, marks of the ruler."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import ruler_near
from patternbook.notice import Notice
from patternbook.proof.prose.measuring import is_length
from patternbook.proof.prose.noun import NOUN
from patternbook.proof.prose.numbers import FILLED, SQUARES, Figure
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Speech
from patternbook.proof.prose.told import told, typed

Found = Iterator[tuple[Notice | None, tuple[int, int]]]
FINEST: Final = 64
_FILL_BEFORE: Final = re.compile(rf"{FILLED}+ $")
# A share of something is no length.
SHARE: Final = re.compile(r" (?:more|less|of|as much|extra|the way)\b")
_SUM: Final = re.compile(r" ?[-+=/*]| needles?\b")


def notation(speech: Speech, known: Sequence[Facts]) -> Found:
    """Faults of form, whatever the size."""
    found = speech.figures
    for one, other in pairwise(found):
        if fault := _side_by_side(speech, one, other, known):
            yield fault, (one.start, other.close)
    for figure in found:
        if fault := _count_times_size(speech, figure, known) or _after_fill(speech, figure):
            yield fault, (figure.start, figure.close)
        if len(set(figure.marks)) > 1:
            yield _two_units(speech, figure, known), (figure.start, figure.close)
        elif fault := _off_ruler(speech, figure, known):
            yield fault, (figure.start, figure.close)


def _side_by_side(
    speech: Speech, count: Figure, size: Figure, known: Sequence[Facts]
) -> Notice | None:
    """`4 2 1/2 squares`, `2-4 inch strips`: is it four of them, or from two to four?"""
    between = speech.text[count.close : size.start]
    if not count.whole or between not in (" ", "-", " - "):
        return None
    noun = NOUN.match(speech.text.replace("-", " "), size.close)
    if between != " " and noun is None:
        return None
    end = noun.end() if noun else size.close
    # `square` behind a number makes a size of it, and names what is counted as well.
    word = noun[0].strip() if noun else "squares" if size.square else "pieces"
    return _apart(speech, (count.start, end), count.text, word, _each(size, word, known))


def _count_times_size(speech: Speech, figure: Figure, known: Sequence[Facts]) -> Notice | None:
    """`4 x 2 1/2 squares`: no square has two sides, so the first number counts."""
    squares = SQUARES.match(speech.text, figure.close)
    if squares is None or figure.down is None or figure.down.denominator == 1:
        return None
    if figure.value == figure.down or figure.value.denominator != 1:
        return None
    each = typed(figure.down, known[0].known.quilt) if known else str(figure.down)
    span = (figure.start, squares.end())
    return _apart(speech, span, str(figure.value), "squares", each)


def _after_fill(speech: Speech, figure: Figure) -> Notice | None:
    """A number that is filled in, right before a size."""
    fill = _FILL_BEFORE.search(speech.text, 0, figure.start)
    noun = NOUN.match(speech.text, figure.close)
    if fill is None or noun is None:
        return None
    count = speech.written(fill.start(), fill.end()).strip()
    each = speech.written(figure.start, figure.end)
    return _apart(speech, (fill.start(), noun.end()), count, noun[0].strip(), each)


def _apart(speech: Speech, span: tuple[int, int], count: str, noun: str, each: str) -> Notice:
    stated = speech.written(*span)
    message = f"{stated}: a count and a size stand side by side and can be read in two ways."
    return told(
        "count-beside-size", "R23", speech, span, message, needed=f"{count} {noun}, each {each}"
    )


def _each(size: Figure, noun: str, known: Sequence[Facts]) -> str:
    """The size alone; of strips that are pieces, both sides."""
    if size.down is None and noun.rstrip("s").endswith("strip"):
        cuts = {
            piece.cut
            for facts in known
            for piece in facts.known.quilt.pieces.values()
            if piece.cut.down not in (None, piece.cut.across) and size.value in piece.cut
        }
        if len(cuts) == 1:
            across, down = cuts.pop()
            quilt = known[0].known.quilt
            return f"{typed(across, quilt)} x {typed(down or across, quilt)}"
    return size.text.replace("-", " ")


def _two_units(speech: Speech, figure: Figure, known: Sequence[Facts]) -> Notice:
    unit = _unit_meant(figure, known)
    word = {"yd": "yard", "in": "in"}.get(unit, unit)
    if unit == "yd" and figure.value > 1:
        word = "yards"
    stated = speech.written(figure.start, figure.close)
    return told(
        "two-units",
        "R23",
        speech,
        (figure.start, figure.close),
        f"{stated}: one number has two marks.",
        needed=f"{figure.text} {word}",
    )


def _unit_meant(figure: Figure, known: Sequence[Facts]) -> str:
    """The mark that the model bears out, else the word that comes last."""
    bought = {
        side for facts in known for f in facts.lengths if f.kind == "bought" for side in f.sides
    }
    if "yd" in figure.marks and figure.value in bought:
        return "yd"
    return figure.marks[-1]


def _off_ruler(speech: Speech, figure: Figure, known: Sequence[Facts]) -> Notice | None:
    """Thirds of an inch, and inches with a decimal point."""
    if (
        not known
        or known[0].known.quilt.system.unit == "cm"
        or figure.unit in ("yd", "m", "cm", "mm")
    ):
        return None
    decimal = "." in figure.text and (figure.unit == "in" or is_length(speech, figure))
    parts = any(FINEST % value.denominator for value in figure.values)
    fraction = parts and (figure.unit == "in" or is_length(speech, figure))
    if figure.unit is None and SHARE.match(speech.text, figure.close):
        return None
    if (decimal or "/" in figure.text) and _SUM.match(speech.text, figure.close):
        return None
    if not (decimal and _has_noun(speech, figure)) and not (fraction and "." not in figure.text):
        return None
    quilt = known[0].known.quilt
    near = [typed(_near(value, known), quilt) for value in figure.values]
    needed = near[0] if figure.square or len(near) == 1 else " x ".join(near)
    why = "inches are read in halves, quarters and eighths" if decimal else "no ruler shows it"
    stated = speech.written(figure.start, figure.end)
    span = (figure.start, figure.end)
    return told("said-off-ruler", "R23", speech, span, f"{stated}: {why}.", needed=needed)


def _has_noun(speech: Speech, figure: Figure) -> bool:
    noun = NOUN.match(speech.text, figure.close)
    return figure.unit == "in" or figure.down is not None or noun is not None


def _near(value: Fraction, known: Sequence[Facts]) -> Fraction:
    """The nearest length of the model within an eighth, else the nearest mark."""
    system = known[0].known.quilt.system
    near = [side for side in known[0].values if abs(side - value) < system.step]
    on_it = [side for side in near if side % system.step == 0]
    if on_it:
        return min(on_it, key=lambda side: (abs(side - value), side))
    return max(ruler_near(Exact.of(value), system), system.step)
