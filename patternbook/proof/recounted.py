"""How a recount is told: one notice of the proof for one size."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.inch import plain, printed
from patternbook.notice import Edit, Mark, Notice, Place, Severity
from patternbook.quilt.records import Quilt

OURS = "The plan disagrees with itself, which no source should bring about: please report it."


def recounted(
    quilt: Quilt,
    code: str,
    rule: str,
    message: str,
    *places: Place | None,
    figures: tuple[str, str] | None = None,
    hint: str | None = OURS,
    severity: Severity = "error",
) -> Notice:
    """The notice, at the places that are known, the first weighing most; `figures` are the
    stated and the needed one."""
    known = dict.fromkeys(place for place in places if place is not None)
    roles = ("here", *("beside this" for _ in known))
    marks = tuple(Mark(place, role) for place, role in zip(known, roles, strict=False))
    stated, needed = figures or (None, None)
    return Notice(
        code, severity, "proof", message, marks, rule, (quilt.size,), stated, needed, hint
    )


def mended_by_figure(notice: Notice) -> Notice:
    """The same, where writing the needed figure for the stated one alone would mend it."""
    if not (notice.marks and notice.stated and notice.needed):
        return notice
    return replace(notice, edits=(Edit(notice.marks[0].place, notice.stated, notice.needed),))


def shown(value: Exact | Fraction | int, quilt: Quilt) -> str:
    """A number inside a sum."""
    return printed(value, quilt.system.unit == "cm")


def typed(value: Exact | Fraction | int, quilt: Quilt) -> str:
    """A number as the author types it."""
    return plain(value, quilt.system.unit == "cm")


def place_of(quilt: Quilt, *key: str) -> Place | None:
    """Where a figure is written, if it is."""
    return quilt.standings[key].at if key in quilt.standings else None


def part_place(quilt: Quilt, part: str) -> Place | None:
    """Where a piece or a unit is written."""
    found = quilt.pieces.get(part) or quilt.units.get(part)
    return found.place if found else None
