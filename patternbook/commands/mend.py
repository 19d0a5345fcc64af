"""Mends a source where one number alone would do it, and leaves every other byte as it was."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import Final

from patternbook.commands.outputs import write_all
from patternbook.commands.sources import Source
from patternbook.notice import Edit, Notice

LINE: Final = re.compile(".*?(?:\r\n|[\n\r\x85\u2028\u2029]|$)", re.DOTALL)


def mend(sources: Sequence[Source], notices: Iterable[Notice]) -> int:
    """Writes the edits that the errors offer into their sources; says how many there were."""
    offered = defaultdict(set)
    for notice in notices:
        if notice.severity == "error":
            for edit in notice.edits:
                offered[edit.place.file].add(edit)
    return sum(_mend_one(source, offered[source.shown]) for source in sources)


def _mend_one(source: Source, edits: Iterable[Edit]) -> int:
    raw = source.path.read_bytes()
    text = raw.decode("utf-8-sig")
    mark = raw[: len(raw) - len(text.encode())]
    better, number = mended(text, edits)
    if number:
        write_all(source.path.parent, {source.path.name: mark + better.encode()})
    return number


def mended(text: str, edits: Iterable[Edit]) -> tuple[str, int]:
    """The text with the edits made, and how many were.

    One is left out where something else is written there than it expects, or where the sizes
    that share a number need different ones.
    """
    starts = [0, *(line.end() for line in LINE.finditer(text))]
    wanted = defaultdict(set)
    for edit in edits:
        place = edit.place
        start = starts[place.line - 1] + place.column - 1
        end = starts[place.end_line - 1] + place.end_column - 1
        if text[start:end] == edit.old:
            wanted[start, end].add(edit.new)
    sure = [(start, end, new.pop()) for (start, end), new in wanted.items() if len(new) == 1]
    for start, end, new in sorted(sure, reverse=True):
        text = text[:start] + new + text[end:]
    return text, len(sure)
