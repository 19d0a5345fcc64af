"""One term for one thing, and no abbreviation that is not explained."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

from patternbook.notice import Notice, Severity
from patternbook.proof.evidence import Evidence
from patternbook.proof.prose.speech import Speech
from patternbook.proof.prose.told import told

ABBREVIATION: Final = re.compile(r"(?<![\w-])[A-Z][A-Z0-9]{1,4}(?:s)?(?![\w-])")
MEANT: Final = {
    "WOF": "width of fabric",
    "LOF": "length of fabric",
    "HST": "half-square triangle",
    "QST": "quarter-square triangle",
    "HRT": "half-rectangle triangle",
    "RST": "right sides together",
    "WST": "wrong sides together",
    "FQ": "fat quarter",
    "FE": "fat eighth",
    "SA": "seam allowance",
    "EPP": "English paper piecing",
    "FPP": "foundation paper piecing",
    "FG": "flying geese",
}
# Known to every reader, or a word in capitals for weight.
_KNOWN: Final = """
    UK US USA EU OK TV DIY PDF A4 A5 NOT DO NO ALL ONE TWO NEVER ALWAYS ONLY BOTH IS IT AND OR
    BEFORE AFTER FIRST LAST NOW STOP LEFT RIGHT UP DOWN THE TO OF IN ON BE II III IV VI"""
ALLOWED: Final = frozenset(_KNOWN.split())


class Other(NamedTuple):
    """Another word for what the booklet calls `ours`."""

    found: re.Pattern[str]
    ours: str
    severity: Severity = "warning"


def _other(words: str, ours: str, severity: Severity = "warning") -> Other:
    return Other(re.compile(rf"\b(?:{words})\b", re.IGNORECASE), ours, severity)


OTHERS: Final = (
    _other("wadding", "batting"),
    _other("selvages", "selvedges"),
    _other("selvage", "selvedge"),
    _other("tacking", "basting"),
    _other("strata|strip-?pieced panels?|strip units?", "strip set"),
    _other("(?:corner|sashing) posts?|setting squares?", "cornerstone"),
    _other("seam widths?", "seam allowance"),
    _other("half[ -]square blocks?|triangle squares?", "half-square triangle", "advice"),
    _other("sub-?strips?|crosscuts?|cross-cuts?", "slice"),
    _other("lining|backing cloth|quilt back", "backing", "advice"),
    _other("background(?: fabric)?", "ground", "advice"),
)


def terms(speech: Speech, known: Sequence[Evidence]) -> Iterator[Notice]:
    """Abbreviations first, then other words for the booklet's own."""
    yield from _abbreviations(speech, known)
    for other in OTHERS:
        if found := other.found.search(speech.text):
            stated = speech.written(*found.span())
            yield told(
                "other-word",
                "R10",
                speech,
                found.span(),
                f"`{stated}` is what the booklet calls {other.ours}: one word for one thing.",
                needed=other.ours,
                severity=other.severity,
            )


def _abbreviations(speech: Speech, known: Sequence[Evidence]) -> Iterator[Notice]:
    letters = {letter for one in known for letter in one.quilt.pieces}
    seen: set[str] = set()
    for found in ABBREVIATION.finditer(speech.text):
        short = found[0].removesuffix("s")
        if short in seen | letters | ALLOWED or _shouted(speech.text, found):
            continue
        seen.add(short)
        if _explained(speech.text, found):
            continue
        needed = MEANT.get(short)
        yield told(
            "unknown-abbreviation",
            "R10",
            speech,
            found.span(),
            f"{found[0]} is not explained; a beginner cannot look it up in the booklet.",
            needed=f"{needed}s" if needed and found[0].endswith("s") else needed,
            hint=None if needed else f"Write it out, or explain it: {short} (what it means).",
            severity="warning",
        )


def _explained(text: str, found: re.Match[str]) -> bool:
    """In brackets behind it, or itself in brackets behind the words."""
    behind = re.match(r" ?\((?=[a-z])", text[found.end() :])
    inside = re.search(r"[a-z] \($", text[: found.start()])
    return bool(behind or inside)


def _shouted(text: str, found: re.Match[str]) -> bool:
    """One word of several in capitals: a heading or a warning."""
    return bool(re.match(r" [A-Z]{2,}\b", text[found.end() :])) or bool(
        re.search(r"\b[A-Z]{2,} $", text[: found.start()])
    )
