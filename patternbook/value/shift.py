"""A line of the quilting that is shifted: which, how far and which way."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from patternbook.notice import Place
from patternbook.value.measure import parse_length
from patternbook.value.text import NOWHERE, Text, ValueFault, quoted

_SHIFT: Final = re.compile(r"(?P<line>.+?) by (?P<far>.+) (?P<way>left|right|up|down)")


@dataclass(frozen=True)
class ShiftValue:
    """`cut 2 by 1 1/2 left`: how far, positive to the right and downward."""

    line: str
    number: Fraction
    text: str
    place: Place = NOWHERE


def parse_shift(text: Text, cm: bool = False) -> ShiftValue:
    """A line's name, how far it is shifted, and which way."""
    found = _SHIFT.fullmatch(text.strip())
    if found is None:
        raise ValueFault(
            "wrong-shift",
            f"{quoted(text)} does not say which line is shifted, how far and which way",
            "Write cut 2 by 1 1/2 left (or right, up, down).",
        )
    far = parse_length(Text(found["far"], text.place), cm, zero=False).number
    sign = -1 if found["way"] in {"left", "up"} else 1
    return ShiftValue(found["line"], sign * far, str(text), text.place)
