"""From a file to its characters: what is no text, or far too much of it, ends here."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

from patternbook.notice import Place
from patternbook.source.tell import Refused, notice

MOST_BYTES: Final = 1_000_000
FILE: Final = "pattern.yaml"
_NO_CHARACTER: Final = re.compile(
    "[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]"
)
# Breaks that no editor shows as a line, and the spaces that word processors put between words.
_PLAIN: Final = str.maketrans(
    {"\x85": " ", "\u2028": " ", "\u2029": " ", "\xa0": " ", "\u202f": " ", "\u2007": " "}
)
NO_BREAK: Final = re.compile("^[ ]*[\xa0\u202f\u2007]", re.MULTILINE)


def file_text(path: Path, shown: str) -> str:
    """All characters of the file; Refused where there are none to be had."""
    start = Place(shown, 1, 1, 1, 1)
    try:
        data = _bytes(path, start)
    except OSError as fault:
        words = fault.strerror or "the system gave no reason"
        raise Refused(
            notice("unreadable", start, f"the file cannot be read: {words.lower()}.")
        ) from None
    return decoded(data, shown)


def _bytes(path: Path, start: Place) -> bytes:
    if not path.exists():
        raise Refused(notice("no-source", start, "there is no such file."))
    if not path.is_file():
        raise Refused(notice("no-source", start, "this is not a file."))
    with path.open("rb") as file:
        data = file.read(MOST_BYTES + 1)
    if len(data) > MOST_BYTES:
        message = f"the file is larger than {MOST_BYTES:,} bytes, far more than any pattern."
        raise Refused(notice("too-large", start, message))
    return data


def decoded(data: bytes, shown: str) -> str:
    """The characters, with line breaks of one kind; Refused where they are no text."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        where = _place(data[: fault.start].decode("utf-8", "replace"), shown)
        hint = "Save the file as plain text, encoded as UTF-8."
        raise Refused(notice("not-text", where, "this is not text in UTF-8.", hint)) from None
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    strange = _NO_CHARACTER.search(text)
    if strange:
        message = f"a character that is no text stands here (number {ord(strange[0])})."
        raise Refused(notice("not-text", _place(text[: strange.start()], shown), message))
    if not text.strip():
        raise Refused(notice("empty-source", Place(shown, 1, 1, 1, 1), "the file is empty.", BEGIN))
    return text


BEGIN: Final = "A pattern begins with `pattern:` and its name; `patternbook new` writes one."


def _place(before: str, shown: str) -> Place:
    lines = before.split("\n")
    column = len(lines[-1].removeprefix("\ufeff")) + 1
    return Place(shown, len(lines), column, len(lines), column + 1)


def plain_spaces(text: str) -> str:
    """The same text, character for character, with the odd spaces and breaks made plain."""
    return text.translate(_PLAIN)
