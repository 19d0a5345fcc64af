"""How a fault of a sentence is told: at the number itself, with the edit that would mend it."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TypedDict, Unpack

from patternbook.exact import Exact
from patternbook.inch import plain, ruler_near
from patternbook.notice import Edit, Mark, Notice, Severity
from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.speech import Speech
from patternbook.quilt.records import Quilt


class More(TypedDict, total=False):
    """What a notice may say besides: `mends` is whether `needed`, put in its place, is all."""

    needed: str | None
    hint: str | None
    sizes: Sequence[str]
    severity: Severity
    mends: bool


def told(
    code: str,
    rule: str,
    speech: Speech,
    span: tuple[int, int],
    message: str,
    **more: Unpack[More],
) -> Notice:
    """A notice at text[start:end]; `needed` takes their place where that alone mends it."""
    stated, place, needed = speech.written(*span), speech.place(*span), more.get("needed")
    proven = place != speech.saying.text.place
    mends = needed is not None and more.get("mends", True) and proven
    return Notice(
        code,
        more.get("severity", "error"),
        "proof",
        message,
        (Mark(place, "written here"),),
        rule,
        tuple(more.get("sizes", ())),
        stated,
        needed,
        more.get("hint") or (f"Write {needed}." if needed else None),
        (Edit(place, stated, needed),) if mends and needed else (),
    )


def typed(value: Exact | Fraction | int, quilt: Quilt) -> str:
    """A length as the author would type it, on the ruler where no fraction tells it."""
    exact = Exact.of(value)
    if not exact.rational or exact.fraction.denominator > 64:
        exact = Exact.of(ruler_near(exact, quilt.system))
    return plain(exact, quilt.system.unit == "cm")


def as_written(figure: Figure, sides: Sequence[Exact | Fraction], quilt: Quilt) -> str:
    """A size in the notation of the one that stands there."""
    words = [typed(side, quilt) for side in sides]
    if len(words) == 1 or (figure.square and words[0] == words[1]):
        return words[0]
    return " x ".join(words)
