"""Faults as values: a place in the source, a notice about it, and their printing and order."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final, Literal

Severity = Literal["error", "warning", "advice"]
Stage = Literal["source", "quilt", "cutting", "sewing", "quilting", "proof", "booklet", "edition"]
SEVERITIES: Final[tuple[Severity, ...]] = ("error", "warning", "advice")


@dataclass(frozen=True, order=True)
class Place:
    """Where something stands: lines and columns count from 1, the end is just behind it."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True)
class Mark:
    """A place, and the part it plays in a notice ("stated here", "the longer row")."""

    place: Place
    role: str


@dataclass(frozen=True)
class Edit:
    """One change of the source's text that alone would mend a fault.

    `old` is what stands there, in plain characters (`7 1/2 x 15` for `7½ × 15`). `sure` where
    this is the one number to blame; an edit that is not is one of several that would do as well.
    """

    place: Place
    old: str
    new: str
    sure: bool = True


@dataclass(frozen=True)
class Notice:
    """One thing the author is told.

    `code` is a short name in hyphens, `rule` one of R1 to R24 (see `explain`), `message` names
    both sides of a contradiction with the sum written out, `marks` go from most to least
    important, `hint` is one thing to try. Of `edits` the first is the mend, and `check --fix`
    makes it where it is sure; all others are alternatives, for the author to choose.
    """

    code: str
    severity: Severity
    stage: Stage
    message: str
    marks: tuple[Mark, ...] = ()
    rule: str | None = None
    sizes: tuple[str, ...] = ()
    stated: str | None = None
    needed: str | None = None
    hint: str | None = None
    edits: tuple[Edit, ...] = ()

    @property
    def mend(self) -> Edit | None:
        """The edit of the one number to blame, where there is one."""
        return self.edits[0] if self.edits and self.edits[0].sure else None

    def __str__(self) -> str:
        at = f"{self.marks[0].place}: " if self.marks else ""
        sizes = f" [{', '.join(self.sizes)}]" if self.sizes else ""
        hint = f" {self.hint}" if self.hint else ""
        return f"{at}{self.severity} {self.code}{sizes}: {self.message}{hint}"

    def order(self) -> tuple[bool, tuple[str, int, int], int, str, str]:
        """Sorting key: by place, errors before advice, then by code and words."""
        at = self.marks[0].place if self.marks else Place("", 0, 0, 0, 0)
        spot = (at.file, at.line, at.column)
        return not self.marks, spot, SEVERITIES.index(self.severity), self.code, self.message


def gathered(notices: Iterable[Notice]) -> tuple[Notice, ...]:
    """All notices in order; one that is the same in several sizes is told once, naming them."""
    merged: dict[Notice, list[str]] = {}
    for notice in notices:
        sizes = merged.setdefault(replace(notice, sizes=()), [])
        sizes.extend(size for size in notice.sizes if size not in sizes)
    whole = (replace(notice, sizes=tuple(sizes)) for notice, sizes in merged.items())
    return tuple(sorted(whole, key=Notice.order))


def failed(notices: Iterable[Notice], *, strict: bool = False) -> bool:
    """Whether any notice keeps the pattern from being issued."""
    stops = ("error", "warning") if strict else ("error",)
    return any(notice.severity in stops for notice in notices)
