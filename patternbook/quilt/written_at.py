"""Every length and size that the author wrote, by the place where it stands, and the same value
with other numbers in its own notation."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import System, plain
from patternbook.notice import Edit, Place
from patternbook.source.words import held
from patternbook.value import NOWHERE, CutValue, LengthValue, SizeValue

Measure = LengthValue | SizeValue | CutValue
SIDES: Final = ("across", "down")
NUMBER: Final = re.compile(r"[0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+\.[0-9]+|[0-9]+")
SQUARE: Final = " square"


def measures(node: object) -> Mapping[Place, Measure]:
    """All of them, below this part of the source."""
    found: Iterator[Measure] = held(node, LengthValue, SizeValue, CutValue)
    return {value.place: value for value in found if value.place != NOWHERE}


def is_square(value: Measure) -> bool:
    """Whether it was written with the word: one number for both sides."""
    return value.text.endswith(SQUARE)


def rewritten(value: Measure, numbers: Mapping[str, Exact], system: System) -> str:
    """The value with another length, or another number for one or both of its sides; marks,
    `about`, `fit` and `WOF` are kept."""
    cm = system.unit == "cm"
    if isinstance(value, LengthValue):
        return NUMBER.sub(plain(next(iter(numbers.values())), cm), value.text, count=1)
    if is_square(value):
        side = value.text.removesuffix(SQUARE)
        new = [_side(side, numbers.get(name), cm) for name in SIDES]
        if new[0] == new[1]:
            return new[0] + SQUARE
        return f"{new[0]} x {new[1].removeprefix('about ')}"
    sides = re.split(r" ?(?<![a-z])[xX](?![a-z]) ?", value.text)
    new = [_side(text, numbers.get(name), cm) for text, name in zip(sides, SIDES, strict=True)]
    return " x ".join(new)


def _side(text: str, number: Exact | None, cm: bool) -> str:
    return text if number is None else NUMBER.sub(plain(number, cm), text, count=1)


def edit(value: Measure, numbers: Mapping[str, Exact], system: System, *, sure: bool) -> Edit:
    """The change of the source that writes these numbers in its place."""
    return Edit(value.place, value.text, rewritten(value, numbers, system), sure)
