"""How far long work has come: one line of a terminal, written over and over, then wiped."""

from __future__ import annotations

import sys
from types import TracebackType
from typing import Final, Self, TextIO

from patternbook.commands.say import printable

WIPE: Final = "\r\x1b[2K"
WIDTH: Final = 72


class Progress:
    """Shows only on a terminal, and never when asked to be quiet."""

    def __init__(self, *, quiet: bool, stream: TextIO | None = None) -> None:
        self._stream = stream or sys.stderr
        self._shown = not quiet and self._stream.isatty()

    def step(self, words: str, done: int = 0, total: int = 0) -> None:
        """Says what is being done now, and which of how many."""
        if self._shown:
            count = f"{done} of {total}: " if total else ""
            self._stream.write(f"{WIPE}{printable(count + words)[:WIDTH]}")
            self._stream.flush()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        fault: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._shown:
            self._stream.write(WIPE)
            self._stream.flush()
