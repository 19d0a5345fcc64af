"""Counts that are written as words, read back."""

from __future__ import annotations

import re
from collections import Counter
from typing import Final

WORDS: Final = (
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)
_GIVES: Final = re.compile(r"(\w+) ([A-Z]{1,2}\d?)\b")


def count(word: str) -> int | None:
    """`Three` or `14`; None where it is no count."""
    if word.isdecimal():
        return int(word)
    return WORDS.index(word.lower()) + 1 if word.lower() in WORDS else None


def given(text: str) -> Counter[str]:
    """The letters of `four A and one C`, counted."""
    found: Counter[str] = Counter()
    for word, letter in _GIVES.findall(text):
        found[letter] += count(word) or 0
    return found
