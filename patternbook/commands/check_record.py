"""What `check --json` says, as types: its JSON Schema is made from these."""

from __future__ import annotations

from typing import Literal

from typing_extensions import TypedDict


class PlaceRecord(TypedDict):
    """Where a notice points; lines and columns count from 1, the end is just behind it."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int
    role: str


class FixRecord(TypedDict):
    """One change of the source that would mend a fault."""

    at: str
    old: str
    new: str


class NoticeRecord(TypedDict):
    """One notice."""

    code: str
    rule: str | None
    severity: Literal["error", "warning", "advice"]
    stage: str
    sizes: list[str]
    message: str
    stated: str | None
    needed: str | None
    hint: str | None
    fix: list[FixRecord]
    places: list[PlaceRecord]


class CheckRecord(TypedDict):
    """All that `check --json` says."""

    format: Literal[1]
    sources: list[str]
    errors: int
    warnings: int
    advice: int
    notices: list[NoticeRecord]
