"""The editions that a pattern can be made in: one file each, and the one list of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from patternbook.edition.editions import full, labels, left_handed, quilting
from patternbook.edition.editions.form import Edition
from patternbook.notice import Mark, Notice
from patternbook.value import Text

EDITIONS: Final[tuple[Edition, ...]] = (
    full.EDITION,
    labels.EDITION,
    left_handed.EDITION,
    quilting.EDITION,
)
by_name: Final = {edition.name: edition for edition in EDITIONS}
FULL: Final = full.EDITION.name


def asked_for(names: Sequence[str]) -> tuple[str, ...]:
    """The editions to be made where the source asks for these: the whole booklet always."""
    return tuple(dict.fromkeys((FULL, *(name for name in names if name in by_name))))


def unknown(names: Sequence[Text]) -> Iterator[Notice]:
    """An error for every edition asked for that there is not."""
    for name in names:
        if name not in by_name:
            known = ", ".join(by_name)
            message = f"there is no edition `{name}`. Editions: {known}."
            marks = (Mark(name.place, "asked for here"),)
            yield Notice("unknown-edition", "error", "source", message, marks, stated=str(name))
