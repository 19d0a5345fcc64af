"""The frozen records of what is the same in every size: the cover's words and the typed tables."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from patternbook.notice import Place
from patternbook.quilt.records import CutSize


@dataclass(frozen=True)
class Heading:
    """What is the same in every size: the cover's words."""

    pattern: str
    slug: str
    summary: str | None
    by: str | None
    date: str | None
    revision: int
    licence: str | None
    level: str | None
    contact: str | None
    site: str | None
    report: str | None
    lesson: str | None
    tools: tuple[str, ...]
    sizes: tuple[str, ...]
    revisions: tuple[Revision, ...] = ()
    charts: tuple[ChartRow, ...] = ()


@dataclass(frozen=True)
class Revision:
    """One entry of the revision block."""

    number: int
    date: str
    why: str
    if_cut: str | None = None
    if_sewn: str | None = None


@dataclass(frozen=True)
class ChartRow:
    """A row of a typed table: a piece of cloth `width` wide and so long (`length`, told as `of`),
    and what is said of it. Lengths in the pattern's own unit; `places` by key."""

    chart: str
    of: str
    width: Fraction
    length: Fraction
    cut: CutSize | None
    across: int | None
    down: int | None
    gives: int | None
    inches: Fraction | None
    cm: Fraction | None
    metres: Fraction | None
    places: Mapping[str, Place]
