"""Notices about the form of a source: where, what, and one thing to try."""

from __future__ import annotations

from patternbook.notice import Mark, Notice, Place, Severity
from patternbook.value import NOWHERE


class Refused(Exception):
    """Nothing behind this place can be read."""

    def __init__(self, notice: Notice) -> None:
        super().__init__(notice.message)
        self.notice = notice


def notice(
    code: str,
    place: Place,
    message: str,
    hint: str | None = None,
    severity: Severity = "error",
) -> Notice:
    """A notice of form, with its one place."""
    marks = () if place == NOWHERE else (Mark(place, "here"),)
    return Notice(code, severity, "source", message, marks, hint=hint)


def ended(words: str) -> str:
    """The words as a sentence."""
    return words if words.endswith((".", "!", "?", "…")) else f"{words}."
