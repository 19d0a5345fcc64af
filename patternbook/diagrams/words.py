"""Measures and lists as they stand in drawings and in the words that describe them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby
from typing import Final, Protocol, TypeVar

from patternbook import inch
from patternbook.exact import Exact, Rational
from patternbook.inch import System, legible, ruler_near
from patternbook.quilt.records import CutSize, Sides, Turn

_T = TypeVar("_T")
_TURNS: Final = ("", "turned a quarter right", "turned half round", "turned a quarter left")


class Lies(Protocol):
    """A part by name, and how it is turned."""

    @property
    def part(self) -> str: ...
    @property
    def turn(self) -> Turn: ...


def length(number: Exact | Rational, system: System) -> str:
    """`6½″`; what no ruler shows is told as the nearest mark."""
    exact = Exact.of(number)
    return inch.length(exact if legible(exact, system) else ruler_near(exact, system), system)


def size(across: Exact | Rational, down: Exact | Rational, system: System) -> str:
    """`6½ × 2½″`, width before length."""
    one, other = (
        side if legible(side, system) else ruler_near(side, system)
        for side in map(Exact.of, (across, down))
    )
    return inch.size(one, other, system)


def sides(of: Sides, system: System) -> str:
    return size(of.across, of.down, system)


def cut(of: CutSize, system: System) -> str:
    """A cut size; a strip has no length of its own."""
    if of.down is None:
        return f"{length(of.across, system)} strip"
    return size(of.across, of.down, system)


def listed(items: Iterable[str]) -> str:
    """`A, B and C`."""
    words = list(items)
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def run(parts: Iterable[Lies]) -> str:
    """`D, 15 A, E` with like neighbours counted, or `S and cup in turn, 11 in all`."""
    names = [_lying(part) for part in parts]
    period = repeats(names)
    if 1 < len(period) < len(names):
        return f"{listed(period)} in turn, {len(names)} in all"
    counted = ((name, len(list(same))) for name, same in groupby(names))
    return ", ".join(name if number == 1 else f"{number} {name}" for name, number in counted)


def repeats(things: Sequence[_T]) -> tuple[_T, ...]:
    """The shortest beginning that the whole goes on repeating; all of it where none does."""
    for period in range(1, len(things) // 2 + 1):
        if all(thing == things[at % period] for at, thing in enumerate(things)):
            return tuple(things[:period])
    return tuple(things)


def _lying(part: Lies) -> str:
    """A part's name and how it is turned; a turned rectangle of cloth only lies sideways."""
    if part.part[0].isupper():
        return part.part
    mirrored = "mirrored" if part.turn.mirrored else ""
    return " ".join(filter(None, (part.part, mirrored, _TURNS[part.turn.quarters])))


def by_size(counts: Sequence[tuple[str, int]]) -> str:
    """`6`, or `lap 6, throw 9` where the sizes differ."""
    if len({number for _, number in counts}) == 1:
        return str(counts[0][1])
    return ", ".join(f"{name} {number}" for name, number in counts)


def title(name: str) -> str:
    """A name as a heading shows it."""
    words = name.replace("-", " ")
    return words[:1].upper() + words[1:]


def counted(number: int, word: str) -> str:
    """`1 seam`, `7 seams`."""
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
