"""Where a word of a sentence stands in the source, line and column, as far as it can be proven."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final, NamedTuple

from patternbook.notice import Place
from patternbook.value import Text

# `|`, `>-` and the like, with a comment behind: the words begin on the next line.
HEADER: Final = re.compile(r"[|>][-+0-9]*[ \t]*(#.*)?")


class Letter(NamedTuple):
    """One sign of the source that is no space: what, and where."""

    sign: str
    line: int
    column: int


@dataclass(frozen=True)
class Spots:
    """A text beside the lines of its source. However YAML folded it, its signs without the spaces
    are those of the source without the spaces; where they are not (a quotation mark written
    twice), only the place of the whole text is known."""

    text: Text
    lines: Sequence[str]

    def place(self, start: int, end: int) -> Place:
        """The place of text[start:end]; of the whole text where it cannot be told."""
        whole = self.text.place
        first, last = self._number(start), self._number(end) - 1
        if self._letters is None or not 0 <= first <= last < len(self._letters):
            return whole
        one, other = self._letters[first], self._letters[last]
        return Place(whole.file, one.line, one.column, other.line, other.column + 1)

    def _number(self, offset: int) -> int:
        """How many signs stand before it."""
        return sum(1 for sign in self.text[:offset] if not sign.isspace())

    @cached_property
    def _letters(self) -> tuple[Letter, ...] | None:
        signs = "".join(self.text.split())
        letters = tuple(self._in_source())
        for lead in (0, 1):  # a quotation mark may stand before
            here = letters[lead : lead + len(signs)]
            if "".join(letter.sign for letter in here) == signs:
                return here
        return None

    def _in_source(self) -> Sequence[Letter]:
        place = self.text.place
        begin, column = place.line, place.column
        head = self.lines[begin - 1][column - 1 :] if begin <= len(self.lines) else ""
        if HEADER.fullmatch(head):
            begin, column = begin + 1, 1
        found = []
        for number in range(begin, min(place.end_line, len(self.lines)) + 1):
            line = self.lines[number - 1]
            start = column - 1 if number == begin else 0
            found += [
                Letter(sign, number, spot + 1)
                for spot, sign in enumerate(line[start:], start)
                if not sign.isspace()
            ]
        return found
