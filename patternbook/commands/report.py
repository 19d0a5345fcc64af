"""Notices as a person reads them, and as a program does (`check --json`)."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Final

from patternbook.commands.say import printable
from patternbook.commands.sources import Source
from patternbook.notice import SEVERITIES, Mark, Notice, Place, Severity

if TYPE_CHECKING:  # types alone: `--help` has no use for what they need
    from patternbook.commands.check_record import CheckRecord, NoticeRecord, PlaceRecord

FORMAT: Final = 1
# As far as a written line is shown; a longer one is cut around the place.
WIDTH: Final = 92
LINE_END: Final = re.compile("\r\n|[\n\r\x85\u2028\u2029]")
ONE_AND_MANY: Final = {
    "error": ("1 error", "errors"),
    "warning": ("1 warning", "warnings"),
    "advice": ("1 piece of advice", "pieces of advice"),
}


def for_people(notices: Iterable[Notice], sources: Sequence[Source]) -> str:
    """The notices, each with the written line that it points at."""
    paths = {source.shown: source.path for source in sources}
    return "\n".join(line for notice in notices for line in _told(notice, paths))


def summary(notices: Iterable[Notice], sources: Sequence[Source]) -> str:
    """One closing line: how much was checked, and what was found."""
    found = Counter(notice.severity for notice in notices)
    counts = [_counted(severity, found[severity]) for severity in SEVERITIES if found[severity]]
    what = "1 pattern" if len(sources) == 1 else f"{len(sources)} patterns"
    return f"{what} checked: {', '.join(counts) or 'no faults'}."


def for_programs(notices: Sequence[Notice], sources: Sequence[Source]) -> CheckRecord:
    """The record of one check."""
    found = Counter(notice.severity for notice in notices)
    return {
        "format": FORMAT,
        "sources": [source.shown for source in sources],
        "errors": found["error"],
        "warnings": found["warning"],
        "advice": found["advice"],
        "notices": [_record(notice) for notice in notices],
    }


def _counted(severity: Severity, number: int) -> str:
    one, many = ONE_AND_MANY[severity]
    return one if number == 1 else f"{number} {many}"


def _told(notice: Notice, paths: dict[str, Path]) -> Iterable[str]:
    """The notice and the line it points at; the other side of a fault, where it lies elsewhere."""
    yield printable(str(notice))
    shown: set[tuple[str, int]] = set()
    for mark in notice.marks[: 1 if notice.severity == "advice" else None]:
        spot = (mark.place.file, mark.place.line)
        if spot not in shown:
            if shown:
                yield printable(f"  {mark.place}: {mark.role}")
            yield from _shown_line(mark, paths)
        shown.add(spot)


def _shown_line(mark: Mark, paths: dict[str, Path]) -> Iterable[str]:
    """The line a mark points at, with carets under the place, where the file can be read."""
    place = mark.place
    lines = _lines(paths.get(place.file, Path(place.file)))
    if not 0 < place.line <= len(lines) or not lines[place.line - 1].strip():
        return
    text, start, end = _window(lines[place.line - 1], place)
    head = f"{place.line:>6} | "
    yield head + text
    yield " " * len(head) + " " * start + "^" * max(1, end - start)


def _window(line: str, place: Place) -> tuple[str, int, int]:
    """As much of the line as fits around the place, and where the place lies in it."""
    start = min(place.column - 1, len(line))
    end = min(place.end_column - 1, len(line)) if place.end_line == place.line else len(line)
    first = max(0, start - WIDTH // 2) if len(line) > WIDTH else 0
    shown = [printable(sign) for sign in line[first : first + WIDTH]]
    before = sum(map(len, shown[: start - first]))
    return "".join(shown), before, before + sum(map(len, shown[start - first : end - first]))


@cache
def _lines(path: Path) -> tuple[str, ...]:
    try:
        return tuple(LINE_END.split(path.read_bytes().decode("utf-8-sig")))
    except (OSError, UnicodeDecodeError):
        return ()


def _record(notice: Notice) -> NoticeRecord:
    return {
        "code": notice.code,
        "rule": notice.rule,
        "severity": notice.severity,
        "stage": notice.stage,
        "sizes": list(notice.sizes),
        "message": notice.message,
        "stated": notice.stated,
        "needed": notice.needed,
        "hint": notice.hint,
        "fix": [{"at": str(edit.place), "old": edit.old, "new": edit.new} for edit in notice.edits],
        "places": [_place(mark) for mark in notice.marks],
    }


def _place(mark: Mark) -> PlaceRecord:
    place = mark.place
    return {
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "end_line": place.end_line,
        "end_column": place.end_column,
        "role": mark.role,
    }
