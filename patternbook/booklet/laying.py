"""How the parts of a row lie, in words: `D, the A pieces, E`, or `S and cup in turn`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Final

from patternbook.booklet import wording
from patternbook.quilt.records import Turn
from patternbook.sewing.records import Laid

AS_MADE: Final = Turn()
_TURNS: Final = (
    "",
    "turned a quarter to the right",
    "turned half round",
    "turned a quarter to the left",
)
_FEWEST_IN_TURN: Final = 5  # fewer are named one by one


def part(name: str, turn: Turn = AS_MADE) -> str:
    """A part as it lies. A turned rectangle of cloth only lies sideways."""
    if name[0].isupper():
        lies = "lying sideways" if turn.sideways else ""
    else:
        lies = ", ".join(filter(None, ("mirrored" if turn.mirrored else "", _TURNS[turn.quarters])))
    return f"{name} ({lies})" if lies else name


def words(sequence: Sequence[Laid]) -> str:
    """The order without counts, so that sizes which differ only in those say the same."""
    if _in_turn(sequence):
        first, second = (part(laid.part, laid.turn) for laid in sequence[:2])
        last = part(sequence[-1].part, sequence[-1].turn)
        ends = (
            "beginning and ending with"
            if last == first
            else f"beginning with {first} and ending with"
        )
        return f"{first} and {second} in turn, {ends} {last}"
    return ", then ".join(_piled(laid) for laid in sequence)


def _piled(laid: Laid) -> str:
    named = part(laid.part, laid.turn)
    return f"all the {named}" if laid.times > 1 else named


def full(sequence: Sequence[Laid]) -> str:
    """The order with counts: `D, fifteen A, E`."""
    if _in_turn(sequence):
        counts = Counter(laid.part for laid in sequence)
        each = " and ".join(f"{wording.spelled(number)} {name}" for name, number in counts.items())
        return f"{words(sequence)} ({each})"
    return ", ".join(
        part(laid.part, laid.turn)
        if laid.times == 1
        else f"{wording.spelled(laid.times)} {part(laid.part, laid.turn)}"
        for laid in sequence
    )


def several(sequence: Sequence[Laid]) -> tuple[str, ...]:
    """The parts whose number `words` leaves out."""
    piled = (laid.part for laid in sequence if laid.times > 1 or _in_turn(sequence))
    return tuple(dict.fromkeys(piled))


def _in_turn(sequence: Sequence[Laid]) -> bool:
    """Whether two parts alternate, long enough to say so."""
    if len(sequence) < _FEWEST_IN_TURN or any(laid.times > 1 for laid in sequence):
        return False
    return all(laid == sequence[at % 2] for at, laid in enumerate(sequence))
