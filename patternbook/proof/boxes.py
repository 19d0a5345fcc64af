"""Oblongs in whole numbers of one small length, so that edges compare quickly and exactly."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import lcm
from typing import Final, NamedTuple

from patternbook.exact import Exact

NOUGHT: Final = Exact(0)


class Box(NamedTuple):
    """The four sides of an oblong."""

    left: int
    top: int
    right: int
    bottom: int


class Whole(NamedTuple):
    """Boxes in order. Where a root is left in a length the numbers are ranks: they compare as
    the lengths do, but no area can be had from them (`scale` is None)."""

    boxes: tuple[Box, ...]
    scale: int | None


def whole(oblongs: Iterable[Sequence[Exact]]) -> Whole:
    """Oblongs (left, top, width, length) as boxes."""
    rows = list(oblongs)
    lengths = [length for row in rows for length in row]
    if any(length.roots for length in lengths):
        return Whole(_ranked(rows), None)
    scale = lcm(*{length.denominator for length in lengths})
    numbers = iter([n.numerator * (scale // n.denominator) for n in lengths])
    four = zip(numbers, numbers, numbers, numbers, strict=True)
    return Whole(tuple(Box(x, y, x + wide, y + high) for x, y, wide, high in four), scale)


def _ranked(rows: Sequence[Sequence[Exact]]) -> tuple[Box, ...]:
    sides = [(x, y, x + wide, y + high) for x, y, wide, high in rows]
    values = sorted({value for four in sides for value in four})
    rank = {value: number for number, value in enumerate(values)}
    return tuple(Box(*(rank[value] for value in four)) for four in sides)
