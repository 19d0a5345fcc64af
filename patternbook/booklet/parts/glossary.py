"""The terms that this booklet uses, and no others, in plain words."""

from __future__ import annotations

import re
from dataclasses import dataclass

from patternbook.booklet.terms import TERMS, Term


@dataclass(frozen=True)
class Glossary:
    """Terms and what they mean."""

    title: str
    terms: tuple[Term, ...]


def glossary(text: str) -> Glossary:
    """Those terms that stand in the text of the other parts."""
    used = tuple(
        term for term in TERMS if re.search(rf"\b(?:{term.pattern})\b", text, re.IGNORECASE)
    )
    return Glossary("Words used in this booklet", used)
