"""Whether a number in a sentence measures something, rather than counts it."""

from __future__ import annotations

import re
from typing import Final

from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.speech import Speech

_LENGTH_BEFORE: Final = re.compile(
    r"\b(?:measures?|finish(?:es)?|(?:cut|finish(?:es)?|trim(?:med)?) (?:at|to)|squares|strips"
    r"|rectangles|, each|unfinished|squares of|strips of|is now|to the nearest)\s+$",
    re.IGNORECASE,
)
_LENGTH_BEHIND: Final = re.compile(
    r" (?:wide|long|deep|high|tall|finished|unfinished|each way|apart)\b"
)


def is_length(speech: Speech, figure: Figure) -> bool:
    """Whether a number measures something: it has a mark or a fraction, two sides, or stands as
    only a measurement can."""
    if figure.unit in ("in", "cm", "ft") or figure.down is not None:
        return True
    if figure.unit is not None:
        return False
    if figure.value.denominator != 1:
        return True
    before = speech.text[: figure.start]
    behind = speech.text[figure.close :]
    return bool(_LENGTH_BEFORE.search(before) or _LENGTH_BEHIND.match(behind))
