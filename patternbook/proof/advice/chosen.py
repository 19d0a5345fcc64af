"""Which advice is told: all, none, or what the settings name; faults are always told."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from patternbook.notice import Mark, Notice
from patternbook.shipped import shipped
from patternbook.value import Text

ALL: Final = "all"
NONE: Final = "none"


def chosen(told: Sequence[Notice], words: Sequence[Text]) -> list[Notice]:
    """The notices without the advice that is switched off, and any word that names none."""
    if not words:
        return list(told)
    wrong = _unknown(words, {notice.code for notice in told})
    if ALL in words:
        return [*told, *wrong]
    return [one for one in told if one.severity != "advice" or one.code in words] + wrong


def _unknown(words: Sequence[Text], seen: set[str]) -> list[Notice]:
    """The explained codes are only looked up where a word is not among those just told."""
    strange = [word for word in words if word not in {ALL, NONE, *seen}]
    known = {ALL, NONE, *(_explained() if strange else ())}
    return [_told(word, known) for word in strange if word not in known]


def _explained() -> set[str]:
    """Every code that `explain` knows, the rules themselves apart."""
    texts = (file.read_text("utf-8") for file in shipped("templates").glob("explain/*.md"))
    return {code for text in texts for code in re.findall(r"^## ([a-z]\S*)", text, re.MULTILINE)}


def _told(word: Text, known: set[str]) -> Notice:
    from difflib import get_close_matches

    near = get_close_matches(word, sorted(known), n=1)
    meant = near[0] if near else ALL
    message = f"there is no advice called {str(word)[:40]!r}."
    hint = f"Write {meant}; `explain` alone lists all codes."
    mark = (Mark(word.place, "named here"),)
    return Notice("advice-unknown", "warning", "source", message, mark, hint=hint, needed=meant)
