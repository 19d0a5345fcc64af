"""A date in words, the same in every country's settings."""

from __future__ import annotations

import datetime as dt
from typing import Final

MONTHS: Final = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


def written(date: dt.date) -> str:
    """`25 November 2026`."""
    return f"{date.day}\N{NO-BREAK SPACE}{MONTHS[date.month - 1]} {date.year}"


def written_out(iso: str | None) -> str:
    """The same of a date as `2026-11-25`; nothing for none."""
    return written(dt.date.fromisoformat(iso)) if iso else ""
