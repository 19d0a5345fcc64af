"""Where the author wants marked lines to lie from where they would."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final, Literal

from patternbook.quilting.records import Wishes

Movable = Literal["corner", "channel", "cut"]
NAMED: Final = re.compile(r"(corner|channel|cut) ([0-9]+)")


def moves(wishes: Wishes, kind: Movable) -> dict[int, float]:
    """How far each numbered line of one kind is to be moved. Other names are not of lines."""
    found: dict[int, float] = {}
    for wish in wishes.areas:
        for name, shift in (wish.move or {}).items():
            named = NAMED.fullmatch(name.strip().lower())
            if named and named[1] == kind and shift:
                found[int(named[2])] = float(shift)
    return found


def unmoved(kind: Movable, number: int, there: int) -> str:
    """What to say of a line that cannot be moved, where `there` are so many of its kind."""
    if number > there:
        only = f"there are only {there}" if there > 1 else ("there is one" if there else "none")
        return f"{kind} {number} cannot be moved: this size has no such line ({only} of the kind)"
    return (
        f"{kind} {number} stays where it is: moved so far it would leave the open ground or come "
        "too near something else"
    )


def missing(kind: Movable, asked: Mapping[int, float], there: int) -> tuple[str, ...]:
    """What to say of those that are not there at all."""
    return tuple(unmoved(kind, number, there) for number in sorted(asked) if number > there)
