"""Sums written out in a sentence, reckoned again exactly."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import ruler_up, triangle_allowance
from patternbook.notice import Notice
from patternbook.proof.prose.equation import Equation, Side, equations
from patternbook.proof.prose.noun import NOUN
from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Speech
from patternbook.proof.prose.table import table_fault
from patternbook.proof.prose.told import told, typed

Found = Iterator[tuple[Notice | None, tuple[int, int]]]
# A number of these is rounded up: half a strip cannot be cut, half a pack not bought.
_UP: Final = frozenset(("strips", "packs", "panels", "sets", "rows"))


def sums(speech: Speech, known: Sequence[Facts]) -> Found:
    """Each equation; its numbers are spoken for, but for a count that the model knows too."""
    for equation in equations(speech):
        sound = [facts for facts in known if facts.known.sound]
        notice = _fault(speech, equation, sound, known)
        result = equation.result
        fraction = result is not None and result.value.denominator != 1 and "." not in result.text
        noun = result is not None and _noun(speech, result) is not None
        counts = notice is None and (noun or fraction)
        end = result.start if result is not None and counts else equation.end
        yield notice, (equation.start, end)


def _fault(
    speech: Speech, equation: Equation, sound: Sequence[Facts], known: Sequence[Facts]
) -> Notice | None:
    result, side = equation.result, equation.reckoned
    if result is None or not known:
        return None
    return (
        (_allowance(speech, side, result, sound[0]) if sound else None)
        or table_fault(speech, equation, known)
        or (_binding(speech, side, result, sound) if sound else None)
        or _arithmetic(speech, side, result, known[0])
    )


def _noun(speech: Speech, figure: Figure) -> str | None:
    found = NOUN.match(speech.text, figure.close)
    return found.lastgroup if found else None


def _arithmetic(speech: Speech, side: Side, result: Figure, facts: Facts) -> Notice | None:
    exact, quilt = side.value, facts.known.quilt
    if exact is None or _near(result, exact, side, facts, _noun(speech, result)):
        return None
    noun = _noun(speech, result)
    needed = _whole(side, exact, noun)
    if side.decimal and not side.divides and "." not in result.text:
        needed = ruler_up(Exact.of(exact), quilt.system)
    shown = speech.written(side.start, side.end)
    rule = "R5" if side.divides else "R9" if side.product else "R24"
    word = typed(needed, quilt) if "." not in result.text else _decimal(needed, result)
    return told(
        "sum-wrong",
        rule,
        speech,
        (result.start, result.end),
        f"{shown} = {word}, not {speech.written(result.start, result.end)}.",
        needed=word,
    )


def _decimal(value: Fraction, result: Figure) -> str:
    digits = len(result.text.partition(".")[2])
    return f"{float(round(value, digits)):.{digits}f}"


def _whole(side: Side, exact: Fraction, noun: str | None) -> Fraction:
    """Strips are rounded up, what a strip gives is rounded down."""
    if not side.divides or exact.denominator == 1:
        return exact
    return Fraction(-(-exact // 1)) if noun in _UP or noun is None else Fraction(exact // 1)


def _near(result: Figure, exact: Fraction, side: Side, facts: Facts, noun: str | None) -> bool:
    """Whether the result is right, rounded as it must be or as it is printed."""
    if result.value == exact:
        return True
    if side.divides and result.value.denominator == 1:
        down, up = Fraction(exact // 1), Fraction(-(-exact // 1))
        return result.value in ((up,) if noun in _UP else (down,) if noun else (down, up))
    if "." in result.text:
        return abs(result.value - exact) <= Fraction(
            1, 2 * 10 ** len(result.text.partition(".")[2])
        )
    return side.decimal and result.value == ruler_up(Exact.of(exact), facts.known.quilt.system)


def _binding(speech: Speech, side: Side, result: Figure, sound: Sequence[Facts]) -> Notice | None:
    """`252 / 42 = 6 strips`: the joins, the corners and the overlap want cloth too."""
    if _noun(speech, result) != "strips" or not side.divides or side.first is None:
        return None
    for facts in sound:
        plan, quilt = facts.known.cutting.binding, facts.known.quilt
        if plan is None or side.first not in (plan.perimeter, plan.length):
            continue
        if result.value == plan.strips:
            return None
        message = (
            f"the binding needs {typed(plan.length, quilt)} in strips of "
            f"{typed(plan.strip_length, quilt)}, joined: {plan.strips}, not {result.text}."
        )
        span = (result.start, result.end)
        needed = str(plan.strips)
        return told("sum-wrong", "R14", speech, span, message, needed=needed, sizes=(quilt.size,))
    return None


def _other_allowance(
    speech: Speech,
    pair: tuple[Fraction, Fraction],
    allowances: Sequence[Fraction],
    result: Figure,
    facts: Facts,
) -> Notice | None:
    """`5 + 7/8` where the square is cut on both diagonals, which takes 1 1/4."""
    done, more = pair
    cut = {s for f in facts.lengths if f.kind == "cut" for s in f.sides}
    right = [done + other for other in allowances if other != more and done + other in cut]
    if result.value in cut or result.value != done + more or not right:
        return None
    quilt = facts.known.quilt
    needed = typed(right[0], quilt)
    message = (
        f"{typed(more, quilt)} is the allowance of another triangle: here it is "
        f"{typed(done, quilt)} + {typed(right[0] - done, quilt)} = {needed}."
    )
    span = (result.start, result.end)
    return told("sum-wrong", "R2", speech, span, message, needed=needed, mends=False)


def _allowance(speech: Speech, side: Side, result: Figure, facts: Facts) -> Notice | None:
    """`6 1/2 + 7/8`: the allowance of a triangle goes onto the finished size."""
    quilt = facts.known.quilt
    pair = side.pair
    allowances = [triangle_allowance(quilt.seam, number, quilt.system) for number in (1, 2)]
    if pair is None or pair[1] not in allowances:
        return None
    raw, more = pair
    if notice := _other_allowance(speech, pair, allowances, result, facts):
        return notice
    done = raw - 2 * quilt.seam
    finished = {s for f in facts.lengths if f.kind == "finished" for s in f.sides}
    cut = {s for f in facts.lengths if f.kind in ("cut", "measure") for s in f.sides}
    if raw in finished or raw not in cut or done not in finished:
        return None
    needed = typed(done + more, quilt)
    message = (
        f"{typed(more, quilt)} is added to the finished size: {typed(done, quilt)} + "
        f"{typed(more, quilt)} = {needed}; {typed(raw, quilt)} is the size with its seams."
    )
    span = (result.start, result.end)
    return told("sum-wrong", "R24", speech, span, message, needed=needed, mends=False)
