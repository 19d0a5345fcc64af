"""Mends a source where one number alone would do it, shows what was changed, and leaves every
other byte as it was.

Of a notice's edits only the first is made, and only where it is sure: the one number to blame.
What is mended is checked before it is written, and nothing is written that leaves as many errors.
"""

from __future__ import annotations

import os
import re
import stat
from collections import defaultdict
from collections.abc import Iterable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Final

from patternbook.commands.outputs import write_all
from patternbook.commands.say import printable
from patternbook.commands.sources import Source
from patternbook.commands.stop import Stopped
from patternbook.notice import Edit, Notice
from patternbook.value.number import GLYPHS, plain

if TYPE_CHECKING:  # loaded when the work begins
    from patternbook.edition.pipeline import Examined

# Mending one number may show the next; what needs more rounds is for the author to look at.
MOST_ROUNDS: Final = 5
LINE: Final = re.compile("[^\r\n]*(?:\r\n|\n|\r|$)")
FRACTION: Final = re.compile(r" ?(?<![0-9/])([0-9]/[0-9])(?![0-9/])")
GLYPH_OF: Final = {words: glyph for glyph, words in GLYPHS.items()}


def mend(source: Source, found: Examined, *, full: bool = False) -> tuple[Examined, list[str]]:
    """Writes into the source what mends it; what is left, and what there is to say about it."""
    raw, text, mark = _read(source.path) if _sure(found.notices, source.shown) else (b"", "", b"")
    old, last = text, found
    for _ in range(MOST_ROUNDS):
        edits = _sure(last.notices, source.shown)
        for some in [edits, *([one] for one in edits if len(edits) > 1)]:
            better, number = mended(text, some)
            tried = _tried(source, mark + better.encode(), full=full) if number else last
            if number and _errors(tried) < _errors(last):
                text, last = better, tried
                break
        else:
            break
    if text == old:
        return found, _unwritten(source, found)
    _write(source, raw, mark + text.encode())
    return last, list(_shown(source, old, text))


def _unwritten(source: Source, found: Examined) -> list[str]:
    """Why nothing was mended although something could have been."""
    if not _sure(found.notices, source.shown):
        return []
    why = "what the hints name would leave as many errors, or sizes that share a number differ"
    return [f"{source.shown}: nothing was mended: {why}."]


def _sure(notices: Iterable[Notice], shown: str) -> list[Edit]:
    """The edits of the numbers to blame in this file, each once."""
    mends = (notice.mend for notice in notices if notice.severity == "error")
    return list(dict.fromkeys(edit for edit in mends if edit and edit.place.file == shown))


def _errors(found: Examined) -> int:
    """How much is wrong: every error once for each size that it is told of."""
    return sum(len(one.sizes) or 1 for one in found.notices if one.severity == "error")


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
        new = _instead(text[start:end], edit)
        if new is not None:
            wanted[start, end].add(new)
    sure = [(start, end, new.pop()) for (start, end), new in wanted.items() if len(new) == 1]
    for start, end, new in sorted(sure, reverse=True):
        text = text[:start] + new + text[end:]
    return text, len(sure)


def _instead(written: str, edit: Edit) -> str | None:
    """What is to stand there, in quotation marks and with the signs that the author uses."""
    quote = written[:1] if written[:1] in ("'", '"') and written[:1] == written[-1:] else ""
    bare = written[1:-1] if quote else written
    if "\n" in bare or "\r" in bare or edit.old not in (bare, plain(bare)):
        return None
    new = edit.new
    times = re.search(r"\s*×\s*", bare)
    if times:
        new = re.sub(r" x ", times[0], new)
    if any(glyph in bare for glyph in GLYPHS):
        new = FRACTION.sub(lambda part: GLYPH_OF.get(part[1], part[0]), new)
    return quote + new + quote


# ---- reading, trying and writing the file


def _read(path: Path) -> tuple[bytes, str, bytes]:
    """The file, its text, and the mark that some editors put before it."""
    raw = path.read_bytes()
    text = raw.decode("utf-8-sig")
    return raw, text, raw[: len(raw) - len(text.encode())]


def _tried(source: Source, content: bytes, *, full: bool) -> Examined:
    """What would be told of the mended source: it is tried beside the old one, under its name."""
    from patternbook.edition.pipeline import examine

    trial = source.path.with_name(f".{source.path.name}.{os.getpid()}.trial")
    try:
        trial.write_bytes(content)
        return examine(trial, source.shown, full=full)
    except OSError as fault:
        raise _stopped(source, (fault.strerror or type(fault).__name__).lower()) from fault
    finally:
        with suppress(OSError):
            trial.unlink(missing_ok=True)


def _write(source: Source, before: bytes, content: bytes) -> None:
    """Whole or not at all, and only over what was read."""
    target = source.path.resolve()
    mode = target.stat().st_mode
    if not mode & (stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH):
        raise _stopped(source, "it may only be read")
    if target.read_bytes() != before:
        raise _stopped(source, "it was changed meanwhile")
    (written,) = write_all(target.parent, {target.name: content})
    written.chmod(stat.S_IMODE(mode))


def _stopped(source: Source, why: str) -> Stopped:
    return Stopped(f"{source.shown} was not mended: {why}.")


def _shown(source: Source, old: str, new: str) -> Iterator[str]:
    """Every line that was changed, as it was and as it is now."""
    lines = zip(LINE.findall(old), LINE.findall(new), strict=True)
    for number, (was, now) in enumerate(lines, 1):
        if was != now:
            yield f"{source.shown}:{number}: mended"
            yield f"  was | {printable(was.rstrip())}"
            yield f"  now | {printable(now.rstrip())}"
