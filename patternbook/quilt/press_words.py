"""What the words of pressing mean: the way of each seam of one row, column or strip set."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from itertools import pairwise
from typing import Final, Literal, NamedTuple

from patternbook.quilt.records import Quilt

Way = Literal["left", "right", "up", "down", "open"]

ALTERNATE: Final = "rows alternate"
ONE_WAY: Final = "all one way"
DARKER: Final = "toward the darker strip"
SASHING: Final = "toward the sashing"
TOWARD: Final = "toward "
BACK: Final[Mapping[Way, Way]] = {
    "left": "right",
    "right": "left",
    "up": "down",
    "down": "up",
    "open": "open",
}


class Row(NamedTuple):
    """One line of a unit, as the words look at it: its number from 0, its parts, and the way
    `on` that it is read."""

    number: int
    parts: tuple[str, ...]
    on: Way


Decide = Callable[[Row], tuple[Way, ...]]


def decide(word: str, quilt: Quilt) -> Decide:
    """What a word makes of a row."""
    if word.startswith(TOWARD):
        return partial(_toward, word.removeprefix(TOWARD), quilt)
    return WORDS.get(word, _one_way)


def toward_greater(weights: Sequence[int], row: Row) -> tuple[Way, ...]:
    """Each seam toward the part with the greater weight; between equals rows alternate."""
    return tuple(
        _turn_about(row) if one == other else row.on if other > one else BACK[row.on]
        for one, other in pairwise(weights)
    )


def holds(name: str, part: str, quilt: Quilt) -> bool:
    """Whether a part is the one named, or a unit that holds it."""
    if name == part:
        return True
    unit = quilt.units.get(name)
    return unit is not None and any(
        holds(inner, part, quilt) for inner in dict.fromkeys(p.part for p in unit.placed)
    )


def _toward(part: str, quilt: Quilt, row: Row) -> tuple[Way, ...]:
    """Also a seam that the part has no share in goes the way to the nearest one."""
    holding = [at for at, name in enumerate(row.parts) if holds(name, part, quilt)]
    far = [min((abs(at - one) for one in holding), default=0) for at in range(len(row.parts))]
    return toward_greater([-distance for distance in far], row)


def _one_way(row: Row) -> tuple[Way, ...]:
    return _fixed(row.on, row)


def _alternate(row: Row) -> tuple[Way, ...]:
    return _fixed(_turn_about(row), row)


def _turn_about(row: Row) -> Way:
    return BACK[row.on] if row.number % 2 else row.on


def _out(row: Row) -> tuple[Way, ...]:
    """Away from the middle; a seam that lies there goes onward."""
    seams = len(row.parts) - 1
    return tuple(BACK[row.on] if 2 * i + 1 < seams else row.on for i in range(seams))


def _in(row: Row) -> tuple[Way, ...]:
    return tuple(BACK[way] for way in _out(row))


def _fixed(way: Way, row: Row) -> tuple[Way, ...]:
    return (way,) * (len(row.parts) - 1)


WORDS: Final[Mapping[str, Decide]] = {
    ONE_WAY: _one_way,
    ALTERNATE: _alternate,
    "out": _out,
    "in": _in,
    "open": partial(_fixed, "open"),
    "left": partial(_fixed, "left"),
    "right": partial(_fixed, "right"),
    "up": partial(_fixed, "up"),
    "down": partial(_fixed, "down"),
}
