"""What a command says: results on standard output, everything else on standard error."""

from __future__ import annotations

import json
import os
import sys
from io import TextIOWrapper
from pathlib import Path
from typing import Final, TextIO

# So much of what was typed is said again.
MOST: Final = 60


def put(text: str) -> None:
    """Writes a result; where nobody reads it any more, the rest of it is let go quietly."""
    _write(sys.stdout, f"{text}\n")


def tell(text: str) -> None:
    """Tells the person something beside the result."""
    _write(sys.stderr, f"{text}\n")


def put_json(record: object) -> None:
    """Writes one record for programs: UTF-8 whatever the locale, keys in their own order."""
    if isinstance(sys.stdout, TextIOWrapper):
        sys.stdout.reconfigure(encoding="utf-8", errors="backslashreplace", newline="\n")
    put(json.dumps(record, ensure_ascii=False, indent=2))


def printable(text: str) -> str:
    """The text without signs that steer a terminal: a source may hold anything."""
    return "".join(sign if sign.isprintable() else repr(sign)[1:-1] for sign in text)


def shortened(text: str) -> str:
    """What was typed, cut off where it is long."""
    return text if len(text) <= MOST else f"{text[:MOST]}…"


def settle() -> None:
    """Makes both streams fit for the trade's signs (½, ×) in any locale."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def flush() -> None:
    """Sends off what is still held back, so that no complaint comes after the end."""
    _write(sys.stdout, "")
    _write(sys.stderr, "")


def _write(stream: TextIO | None, text: str) -> None:
    if stream is None:  # closed by the caller's shell
        return
    try:
        stream.write(text)
        stream.flush()
    except BrokenPipeError:
        with Path(os.devnull).open("w") as nowhere:
            os.dup2(nowhere.fileno(), stream.fileno())
