"""The terms that this booklet uses, and no others, in plain words."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import NamedTuple

from patternbook.booklet import wording
from patternbook.booklet.halves import halves
from patternbook.booklet.terms import TERMS


class Meaning(NamedTuple):
    """A term and what it means."""

    head: str
    words: str


@dataclass(frozen=True)
class Glossary:
    """Terms and what they mean, in two columns."""

    title: str
    terms: tuple[tuple[Meaning, ...], ...]


def glossary(text: str) -> Glossary:
    """Those terms that stand in the text of the other parts."""
    used = tuple(
        Meaning(wording.capital(term.name), wording.sentence(term.means))
        for term in TERMS
        if re.search(rf"\b(?:{term.pattern})\b", text, re.IGNORECASE)
    )
    return Glossary("Words used in this booklet", halves(used))
