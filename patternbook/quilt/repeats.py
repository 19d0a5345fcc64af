"""How often cells are repeated, where another number alone would make every sum hold: `(A A)*5`
against `(A A)*4`, five blocks across against six."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import islice
from typing import Final, NamedTuple

from patternbook.methods.world import here
from patternbook.methods.written import WrittenMade
from patternbook.notice import Edit, Mark, Notice
from patternbook.quilt.counts import count
from patternbook.quilt.other_letters import figures
from patternbook.quilt.parts import TOP
from patternbook.quilt.resolve import Resolver
from patternbook.source.written import WrittenPattern
from patternbook.value import CellsValue, CountValue, PerSize, Text, parse_cells, parse_count

REPEATED: Final = re.compile(r"(?<=\*)[0-9]+|(?<=\* )[0-9]+")
WHOLE: Final = re.compile(r"[0-9]+")
# Lengths and numbers of pieces agree on what is wrong: how often something is repeated.
COUNTED: Final = "repeated-wrongly"
# So many more or fewer are tried, the nearest first; each trial works the size out anew.
# Four is a round of logs.
NEAR: Final = (-1, 1, -2, 2, -3, 3, -4, 4)
MOST_TRIALS: Final = 36


class Trial(NamedTuple):
    """One number of one unit written otherwise, and the unit that this makes."""

    name: str
    unit: WrittenMade
    value: CellsValue | CountValue
    text: str


def offered(resolver: Resolver, notices: Sequence[Notice]) -> tuple[Notice, ...]:
    """The notices of lengths that differ, each with the repeats that would mend it as well."""
    if not notices:
        return ()
    trials = islice(_trials(resolver), MOST_TRIALS)
    good = [trial for trial in trials if _holds(trial, resolver)]
    sure = _counted(good, resolver)
    if sure is not None:
        return _blamed(sure, notices)
    return tuple(_with(notice, good) for notice in notices)


def _counted(good: Sequence[Trial], resolver: Resolver) -> Trial | None:
    """The one trial that makes every stated number of pieces right, where some are wrong now."""
    if not good or resolver.broken or not _wrong(_anew(resolver.written, resolver)):
        return None
    right = [trial for trial in good if not _wrong(_made(trial, resolver))]
    return right[0] if len(right) == 1 else None


def _wrong(resolver: Resolver) -> bool:
    """Whether a stated number of pieces or units is not what is sewn."""
    numbers = figures(resolver, count(resolver)).values()
    told = any(notice.code == "make" for notice in resolver.notices)
    return told or any(stated != sewn for stated, sewn in numbers)


def _blamed(trial: Trial, notices: Sequence[Notice]) -> tuple[Notice, ...]:
    """The first of the lengths that differ, told where it is repeated; all others follow."""
    first = next((one for one in notices if one.severity == "error"), None)
    if first is None:
        return tuple(notices)
    place, old, new = trial.value.place, trial.value.text, trial.text
    others = tuple(mark for mark in first.marks if mark.place != place)
    message = f"{first.message} With {new} for {old} the stated numbers of pieces come out as well."
    marks = (Mark(place, "so often"), *others)
    edits = (Edit(place, old, new), *(replace(one, sure=False) for one in first.edits))
    about = (first.rule, first.sizes, old, new, f"Write {new}.", edits)
    told = Notice(COUNTED, "error", first.stage, message, marks, *about)
    return (told, *(one for one in notices if one.severity != "error"))


def _with(notice: Notice, good: Sequence[Trial]) -> Notice:
    if notice.severity != "error":
        return notice
    marks = (Mark(trial.value.place, "so often") for trial in good)
    edits = (Edit(trial.value.place, trial.value.text, trial.text, False) for trial in good)
    hint = notice.hint
    if good:
        words = " or ".join(f"{trial.text} for {trial.value.text}" for trial in good)
        hint = f"{hint.removesuffix('.')}, or {words}." if hint else f"Write {words}."
    return replace(notice, marks=(*notice.marks, *marks), edits=(*notice.edits, *edits), hint=hint)


def _trials(resolver: Resolver) -> Iterator[Trial]:
    for name, unit in resolver.units.items():
        for field in type(unit).model_fields:
            held = getattr(unit, field)
            value = here(held, resolver.size) if isinstance(held, PerSize) else None
            if isinstance(value, CellsValue):
                for new in _cells(value):
                    yield _changed(name, unit, field, new, value, new.text)
            elif isinstance(value, CountValue) and _plain(field, value):
                for text in _near(value.text, 0, len(value.text)):
                    count = parse_count(Text(text, value.place))
                    yield _changed(name, unit, field, count, value, text)
            elif isinstance(value, tuple):
                rows = [row for row in value if isinstance(row, CellsValue)]
                for at, row in enumerate(rows):
                    for new in _cells(row):
                        other = (*value[:at], new, *value[at + 1 :])
                        yield _changed(name, unit, field, other, row, new.text)


def _plain(field: str, value: CountValue) -> bool:
    """How many cells or rows, where that is a number and no sum."""
    return field in ("across", "down") and WHOLE.fullmatch(value.text) is not None


def _cells(value: CellsValue) -> Iterator[CellsValue]:
    for found in REPEATED.finditer(value.text):
        for text in _near(value.text, found.start(), found.end()):
            yield parse_cells(Text(text, value.place))


def _near(text: str, start: int, end: int) -> Iterator[str]:
    for more in NEAR:
        number = int(text[start:end]) + more
        if number > 0:
            yield f"{text[:start]}{number}{text[end:]}"


def _changed(
    name: str, unit: WrittenMade, field: str, new: object, value: CellsValue | CountValue, text: str
) -> Trial:
    other = unit.model_copy(update={field: PerSize(bare=new)})
    return Trial(name, other, value, text)


def _holds(trial: Trial, resolver: Resolver) -> bool:
    """Whether every sum of this size holds with it."""
    other = _made(trial, resolver)
    return not other.broken and all(check.off() == 0 for check in other.checks)


def _made(trial: Trial, resolver: Resolver) -> Resolver:
    """The size worked out with it."""
    units = dict(resolver.units) | {trial.name: trial.unit}
    top = units.pop(TOP, None)
    written = resolver.written.model_copy(update={"units": units, "top": top})
    return _anew(written, resolver)


def _anew(written: WrittenPattern, resolver: Resolver) -> Resolver:
    other = Resolver(written, resolver.size, resolver.pictures)
    other.solve()
    return other
