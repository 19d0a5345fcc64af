"""Which words of pressing would let seams nest: each tried in place of the author's own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice
from operator import ne
from typing import Final, NamedTuple

from patternbook.notice import Edit, Place
from patternbook.quilt.meeting import Meetings
from patternbook.quilt.press_words import ALTERNATE, TOWARD
from patternbook.quilt.pressing import pressed
from patternbook.quilt.records import LayoutMade, PiecedMade, Quilt, Unit

OPPOSITE: Final = {"in": "out", "out": "in", "left": "right", "right": "left"}
# So many rows are told one by one; more in a pair of words that is repeated.
ROW_BY_ROW: Final = 6
# Each trial joins the whole quilt anew.
MOST_TRIALS: Final = 12


class Repair(NamedTuple):
    """Other words for one unit; `at` is the one word that is another, None where several are."""

    unit: str
    words: tuple[str, ...]
    at: int | None

    @property
    def text(self) -> str:
        """As it is typed behind `press:`."""
        return self.words[0] if len(self.words) == 1 else f"[{', '.join(self.words)}]"


def repairs(unit: Unit, quilt: Quilt) -> tuple[Repair, ...]:
    """What alone lets the seams of this unit's lines nest."""
    trials: dict[tuple[str, tuple[str, ...]], Repair] = {}
    for trial in _trials(unit, quilt):
        key = trial.unit, trial.words
        if key not in trials or trial.at is not None:  # one word alone is the smaller change
            trials[key] = trial
    some = islice(trials.values(), MOST_TRIALS)
    return tuple(trial for trial in some if _nests(unit.name, trial, quilt))


def _trials(unit: Unit, quilt: Quilt) -> Iterator[Repair]:
    alike = len(set(unit.press)) < 2  # else the odd word is the likelier fault
    if alike:
        yield from _every_row(unit)
    yield from _one_word(unit)
    if not alike:
        yield from _every_row(unit)
    for name in _slices(unit, quilt):
        yield from _one_word(quilt.units[name])


def _one_word(unit: Unit) -> Iterator[Repair]:
    """Each word alone turned the other way."""
    if len(unit.press) == 1 and _rows(unit) > 1:
        return  # it holds for all rows, and all would turn together
    for at, word in enumerate(unit.press):
        for other in _others(word, unit):
            yield Repair(unit.name, (*unit.press[:at], other, *unit.press[at + 1 :]), at)


def _others(word: str, unit: Unit) -> Iterator[str]:
    if word in OPPOSITE:
        yield OPPOSITE[word]
    elif word.startswith(TOWARD):
        for part in dict.fromkeys(placed.part for placed in unit.placed):
            if word != TOWARD + part:
                yield TOWARD + part


def _every_row(unit: Unit) -> Iterator[Repair]:
    """Turn about from row to row: the way that fewer rows have to change for; where all are
    pressed alike the first row is turned, too."""
    rows = _rows(unit)
    if rows < 2 or not unit.press:
        return
    word = unit.press[0] if unit.press[0] in OPPOSITE else "out"
    pairs = [(first, OPPOSITE[first]) for first in (OPPOSITE[word], word)]
    lists = [(pair * rows)[:rows] if rows <= ROW_BY_ROW else pair for pair in pairs]
    if len(set(unit.press)) > 1:
        lists.sort(key=lambda words: sum(map(ne, words, unit.press)))
    for words in lists:
        yield Repair(unit.name, words, None)
    yield Repair(unit.name, (ALTERNATE,), None)


def _rows(unit: Unit) -> int:
    if not isinstance(unit.made, LayoutMade):
        return 1
    return sum(line.role != "sash" for line in unit.made.lines)


def _slices(unit: Unit, quilt: Quilt) -> Iterator[str]:
    """The slices and single rows in it that have words of their own, the last first."""
    parts = dict.fromkeys(placed.part for placed in unit.placed)
    for part in reversed(tuple(parts)):
        inner = quilt.units.get(part)
        if inner is not None and inner.press and not isinstance(inner.made, PiecedMade):
            yield part


def _nests(name: str, trial: Repair, quilt: Quilt) -> bool:
    """Whether with these words no two seams of the unit's lines that meet point the same way."""
    changed = replace(quilt.units[trial.unit], press=trial.words)
    other = replace(quilt, units={**quilt.units, trial.unit: changed})
    plans, _ = pressed(other)
    meets = Meetings(other, plans).lines(name).meets
    return not any(meet.same_way and max(meet.one.depth, meet.other.depth) < 2 for meet in meets)


def edits(trial: Repair, quilt: Quilt) -> tuple[Edit, ...]:
    """The change of the source: one word, or all of them where they stand on one line."""
    unit = quilt.units[trial.unit]
    if not unit.press_at:
        return ()
    if trial.at is not None:
        return (Edit(unit.press_at[trial.at], unit.press[trial.at], trial.words[trial.at], False),)
    first, last = unit.press_at[0], unit.press_at[-1]
    if len(unit.press) == 1:
        return (Edit(first, unit.press[0], trial.text, False),)
    if first.line != last.end_line:
        return ()
    whole = Place(first.file, first.line, first.column - 1, last.end_line, last.end_column + 1)
    return (Edit(whole, f"[{', '.join(unit.press)}]", trial.text, False),)
