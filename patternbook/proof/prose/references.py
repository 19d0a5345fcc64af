"""Steps, pages and pictures that a sentence refers to by a number typed by hand."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Speech, sizes_at
from patternbook.proof.prose.told import told

_REFERENCE: Final = re.compile(
    r"\b(?P<what>steps?|pages?|figures?|figs?\.?|diagrams?|pictures?) (?:no\.? )?(?P<number>[0-9]+)"
    r"(?![0-9/]|[½¼¾⅛⅜⅝⅞]| [0-9]+/)(?! (?:inch|in|times)\b)",
    re.IGNORECASE,
)


def references(
    speech: Speech, known: Sequence[Facts]
) -> Iterator[tuple[Notice | None, tuple[int, int]]]:
    """Every reference, each judged by what it refers to."""
    for found in _REFERENCE.finditer(speech.text):
        what = found["what"].lower().rstrip("s.")
        if what == "step":
            yield from ((notice, found.span()) for notice in _step(speech, found, known))
        else:
            yield _unnumbered(speech, found, what), found.span()


def _step(speech: Speech, found: re.Match[str], known: Sequence[Facts]) -> Iterator[Notice]:
    number = int(found["number"])
    sizes = [facts.known.quilt.size for facts in known]
    here = Figure(found.start("number"), found.end(), found.end(), number, found["number"])  # type: ignore[arg-type]
    meant = sizes_at(speech, here, sizes)
    least = min((len(facts.known.sewing.steps) for facts in known), default=number)
    without = [
        facts.known.quilt.size
        for facts in known
        if facts.known.quilt.size in meant and number > len(facts.known.sewing.steps)
    ]
    if without:
        yield told(
            "no-such-step",
            "R19",
            speech,
            found.span(),
            f"step {number} is named; there are {least} steps.",
            hint="Write {{ step.NAME }} with the unit's name: the number is then filled in.",
            sizes=without,
        )
        return
    yield told(
        "typed-step",
        "R19",
        speech,
        found.span(),
        f"step {number} is typed by hand, and steps are numbered anew when the pattern grows.",
        hint="Write {{ step.NAME }} with the unit's name.",
        severity="advice",
    )


def _unnumbered(speech: Speech, found: re.Match[str], what: str) -> Notice:
    page = what == "page"
    stated = speech.written(*found.span())
    why = (
        "pages differ from paper to paper and from edition to edition"
        if page
        else "the booklet's pictures carry no numbers"
    )
    return told(
        "typed-page" if page else "no-such-figure",
        "R19",
        speech,
        found.span(),
        f"{stated} is named; {why}.",
        hint="Name the part that is meant instead.",
        severity="warning" if page else "error",
    )
