"""A letter in a step that the cut list did not mean: what is cut for nothing belongs where another
is used too often, and two letters that have changed places each have the other's number."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from difflib import get_close_matches
from itertools import combinations, islice
from typing import Final, NamedTuple

from patternbook.notice import Edit, Mark, Notice
from patternbook.quilt.counts import Counted
from patternbook.quilt.other_letters import (
    LETTER,
    Change,
    Figures,
    Said,
    Trial,
    exchange,
    figures,
    said_by,
    tried,
)
from patternbook.quilt.parts import TOP
from patternbook.quilt.resolve import Resolver

NAME: Final = re.compile(r"(?<![\w/-])[a-z][\w-]*")
# Each trial works the whole size out anew.
MOST_TRIALS: Final = 60
# A row of more cells of one letter is not tried in every choice of them.
SHORT_ROW: Final = 4


class Found(NamedTuple):
    """What is told, and the lines of the source that other faults only follow from."""

    notices: tuple[Notice, ...]
    lines: frozenset[int]

    def without(self, notices: Iterable[Notice]) -> tuple[Notice, ...]:
        """The notices that have to do with none of these lines, and what was found."""
        others = [one for one in notices if not {m.place.line for m in one.marks} & self.lines]
        return (*others, *self.notices)


NOTHING: Final = Found((), frozenset())


def mistaken(resolver: Resolver, counted: Counted) -> Found:
    """An error where other letters in one place would make every stated number right."""
    before = figures(resolver, counted)
    wrong = [letter for letter, (stated, used) in before.items() if stated != used]
    for letter in wrong:
        if not before[letter][1]:
            found = _too_few(letter, before, wrong, resolver)
            if found.notices:
                return found
    for one, other in combinations(wrong, 2):
        trial = _exchanged(one, other, before, resolver)
        if trial:
            message = _changed_places(one, other, trial, before)
            return _told("letters-exchanged", message, (trial,), resolver)
    for letter in wrong:
        stated, used = before[letter]
        if 0 < used < stated:
            found = _too_few(letter, before, wrong, resolver)
            if found.notices:
                return found
    return NOTHING


def unknown(resolver: Resolver) -> Found:
    """An error where a letter that nobody cuts stands for one that is cut for nothing."""
    letters = [part for part in resolver.broken if LETTER.fullmatch(part)]
    missing = [letter for letter in letters if letter not in resolver.pieces]
    units = resolver.units.items()
    said = [one for name, unit in units for one in said_by(name, unit, resolver.size)]
    if not missing:
        return _misspelt(said, resolver)
    if len(missing) != 1:
        return NOTHING
    named = {letter for one in said for letter in LETTER.findall(one.text)}
    good = []
    for stray in [letter for letter in resolver.pieces if letter not in named]:
        changed = ((one, exchange(one.text, {missing[0]: stray})) for one in said)
        trial = tuple(Change(one, text) for one, text in changed if text != one.text)
        after = tried(trial, resolver)
        if after is not None and all(stated == used for stated, used in after.values()):
            good.append((stray, trial))
    if len(good) != 1:
        return NOTHING
    stray, trial = good[0]
    message = f"nothing is called '{missing[0]}', and {stray} is cut and sewn into nothing."
    return _told("letter-mistaken", message, (trial,), resolver)


def _misspelt(said: Sequence[Said], resolver: Resolver) -> Found:
    """An error where a unit that nobody makes is called almost as one that is placed nowhere."""
    named = {name for one in said for name in NAME.findall(one.text)}
    missing = [name for name in named if name in resolver.broken - resolver.units.keys()]
    known = [name for name in resolver.units if name != TOP and name not in named]
    near = get_close_matches(missing[0], known, 1) if len(missing) == 1 else []
    if not near:
        return NOTHING
    spelt = {missing[0]: near[0]}
    trial = tuple(
        Change(one, NAME.sub(lambda found: spelt.get(found[0], found[0]), one.text))
        for one in said
        if missing[0] in NAME.findall(one.text)
    )
    if tried(trial, resolver) is None:
        return NOTHING
    message = f"nothing is called '{missing[0]}', and '{near[0]}' is placed nowhere."
    found = _told("unknown-part", message, (trial,), resolver)
    return found._replace(notices=tuple(replace(one, rule="R19") for one in found.notices))


def _too_few(few: str, before: Figures, wrong: Sequence[str], resolver: Resolver) -> Found:
    """Told of a letter of which fewer are sewn than cut, where other cells would mend that."""
    trials = _in_place_of(few, before, wrong, resolver)
    if not trials:
        return NOTHING
    return _told("letter-mistaken", _cut_for_nothing(few, trials[0], before), trials, resolver)


def _in_place_of(
    few: str, before: Figures, wrong: Sequence[str], resolver: Resolver
) -> tuple[Trial, ...]:
    """The changes that use a letter of which too few are sewn, and spoil no other number; the
    likeliest first, and none where they would take the place of different letters."""
    good: list[tuple[tuple[int, int], str, Trial]] = []
    for letter, trial in islice(_trials(few, resolver), MOST_TRIALS):
        if before[few][1] and letter not in wrong:
            continue  # then the number that is cut may as well be wrong
        after = tried(trial, resolver)
        if after is None or not after.get(few, (0, 0))[1]:
            continue
        stated, used = after[few]
        still = {one for one, (number, sewn) in after.items() if number != sewn}
        settled = few not in still if before[few][1] else stated >= used
        if not settled or letter in still or not still <= set(wrong):
            continue
        uneven = sum(_even(change.said.text) > _even(change.text) for change in trial)
        good.append(((len(still), uneven), letter, trial))
    best = min((rank for rank, _, _ in good), default=None)
    least = [(letter, trial) for rank, letter, trial in good if rank == best]
    if len({letter for letter, _ in least}) != 1:
        return ()
    return tuple(trial for _, trial in least)


def _even(text: str) -> bool:
    """Whether it reads the same from both ends, as most strip sets and rows of three or more do."""
    words = text.split()
    return len(words) > 2 and words == words[::-1]


def _trials(few: str, resolver: Resolver) -> Iterator[tuple[str, Trial]]:
    """The letter in place of another of its size: in as many cells of a row as its unit wants
    more of, or wherever a unit has that other."""
    alike = {one for one in resolver.pieces if one != few and _alike(few, one, resolver)}
    for name, unit in resolver.units.items():
        everywhere: dict[str, list[Change]] = {}
        for said in said_by(name, unit, resolver.size):
            for letter in dict.fromkeys(LETTER.findall(said.text)):
                if letter in alike:
                    all_ = Change(said, exchange(said.text, {letter: few}))
                    everywhere.setdefault(letter, []).append(all_)
                    yield from ((letter, (one,)) for one in _some(said, letter, few))
        for letter, changes in everywhere.items():
            if len(changes) > 1:
                yield letter, tuple(changes)


def _some(said: Said, letter: str, few: str) -> Iterator[Change]:
    """Every choice of cells of one row, but for long rows only one of them or all."""
    spots = [found.start() for found in LETTER.finditer(said.text) if found[0] == letter]
    most = len(spots) if len(spots) <= SHORT_ROW else 1
    choices = [c for number in range(1, most + 1) for c in combinations(spots, number)]
    if tuple(spots) not in choices:
        choices.append(tuple(spots))
    for choice in choices:
        text = said.text
        for at in reversed(choice):
            text = text[:at] + few + text[at + len(letter) :]
        yield Change(said, text)


def _alike(one: str, other: str, resolver: Resolver) -> bool:
    """Whether one can lie where the other lies: two strips, of one set or another however wide,
    or two pieces equally large."""
    if resolver.is_strip(one) or resolver.is_strip(other):
        return resolver.is_strip(one) and resolver.is_strip(other)
    spans = zip(resolver.sum_of(one), resolver.sum_of(other), strict=True)
    sides = [(resolver.known(a), resolver.known(b)) for a, b in spans]
    return all(a is not None and a == b for a, b in sides)


def _exchanged(one: str, other: str, before: Figures, resolver: Resolver) -> Trial | None:
    """Both letters exchanged in one unit, or in all, where each has the other's number."""
    if before[one] != before[other][::-1]:
        return None
    units = [*([item] for item in resolver.units.items()), [*resolver.units.items()]]
    for some in units:
        trial = tuple(
            Change(said, text)
            for name, unit in some
            for said in said_by(name, unit, resolver.size)
            if (text := exchange(said.text, {one: other, other: one})) != said.text
        )
        after = tried(trial, resolver) if trial else None
        if after is not None and all(
            stated == used
            for letter, (stated, used) in after.items()
            if letter in (one, other) or before[letter][0] == before[letter][1]
        ):
            return trial
    return None


# ---- what is told


def _cut_for_nothing(few: str, trial: Trial, before: Figures) -> str:
    first, text = trial[0]
    stated, used = before[few]
    sewn = f"{used} of them are sewn" if used else "sewn into nothing"
    return (
        f"{few} is cut ({stated}), and {sewn}: with `{text}` for `{first.text}` in "
        f"'{first.unit}' the stated numbers come out."
    )


def _changed_places(one: str, other: str, trial: Trial, before: Figures) -> str:
    stated, used = before[one]
    return (
        f"{one} is cut {stated} times and sewn {used} times, {other} cut {used} and sewn {stated} "
        f"times: they have changed places in '{trial[0].said.unit}'."
    )


def _told(code: str, message: str, trials: Sequence[Trial], resolver: Resolver) -> Found:
    """At the first change of the likeliest; the others are offered beside it."""
    first, text = trials[0][0]
    before, after = (LETTER.findall(words) for words in (first.text, text))
    letters = [one for one in dict.fromkeys((*before, *after)) if one in resolver.pieces]
    changes = [change for trial in trials for change in trial]
    marks = [Mark(change.said.place, "named here") for change in changes]
    cut = [resolver.pieces[letter] for letter in letters if letter not in before]
    marks += [Mark(piece.place, "cut for it") for piece in cut]
    alone = len(changes) == 1
    edits = tuple(Edit(one.said.place, one.said.text, one.text, alone) for one in changes)
    hint = f"Write `{text}`, or mend what is cut."
    size = (resolver.size,)
    told = Notice(
        code, "error", "quilt", message, tuple(marks), "R11", size, first.text, text, hint, edits
    )
    units = [resolver.units[change.said.unit] for change in changes]
    nodes = (*units, *(resolver.pieces[letter] for letter in letters))
    places = [place for node in nodes for place in (node.place, *node.key_places.values())]
    return Found((told,), frozenset(place.line for place in places))
