"""`explain`: a rule or a notice in plain words, with a worked example and where it is from."""

from __future__ import annotations

import re
from argparse import ArgumentParser, Namespace
from collections.abc import Mapping
from typing import Final

from patternbook.commands.say import put, shortened
from patternbook.commands.stop import WrongCall
from patternbook.shipped import shipped

NAME: Final = "explain"
HELP: Final = "explain a rule (R1 to R24) or the code of a notice"
ENTRY: Final = re.compile(r"^## (\S+)(.*)$", re.MULTILINE)


def add_options(parser: ArgumentParser) -> None:
    """Says what the command may be told."""
    parser.add_argument("code", nargs="?", metavar="CODE", help="left out: all codes are listed")


def run(options: Namespace) -> int:
    """Prints one entry, or the list of all."""
    entries = all_entries()
    put(_list(entries) if options.code is None else _entry(options.code, entries))
    return 0


def all_entries() -> dict[str, str]:
    """Every entry by its code, its title first; one file holds the entries of one stage."""
    texts = [file.read_text("utf-8") for file in sorted(shipped("templates").glob("explain/*.md"))]
    return {code: entry for text in texts for code, entry in _entries(text)}


def _entries(text: str) -> list[tuple[str, str]]:
    heads = list(ENTRY.finditer(text))
    ends = [head.start() for head in heads[1:]] + [len(text)]
    return [
        (head[1], f"{head[2].strip()}\n{text[head.end() : end].rstrip()}".strip())
        for head, end in zip(heads, ends, strict=True)
    ]


def _list(entries: Mapping[str, str]) -> str:
    widest = max(map(len, entries))
    return "\n".join(
        f"{code:<{widest}}  {entry.splitlines()[0]}" for code, entry in entries.items()
    )


def _entry(asked: str, entries: Mapping[str, str]) -> str:
    spelled = {code.lower(): code for code in entries}
    code = spelled.get(asked.lower())
    if code is None:
        from difflib import get_close_matches

        near = get_close_matches(asked.lower(), spelled, n=3)
        meant = f" Did you mean {' or '.join(spelled[one] for one in near)}?" if near else ""
        raise WrongCall(
            f"there is no rule or notice {shortened(asked)}.{meant} `explain` alone lists all."
        )
    return f"{code}: {entries[code]}"
