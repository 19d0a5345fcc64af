"""`new`: begins a pattern from a commented source that checks clean."""

from __future__ import annotations

import re
import unicodedata
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import Final

from patternbook.commands.kinds import PLAIN, meant, starters
from patternbook.commands.outputs import write_all
from patternbook.commands.say import put, shortened, tell
from patternbook.commands.sources import FILE, FOLDER
from patternbook.commands.stop import WrongCall

NAME: Final = "new"
HELP: Final = f"begin a pattern: writes {FOLDER}/NAME/{FILE}"
# A title begins with a letter or number and holds nothing that YAML or a folder's name minds.
TITLE: Final = re.compile(r"[^\W_](?:[^\W_]|[ '’-])*")
LONGEST: Final = 80
TITLE_LINE: Final = re.compile(r"^pattern: *(.*)$", re.MULTILINE)
# What is true of the pattern that is begun from, and not of the one that is begun.
ITS_OWN: Final = re.compile(
    r"^(?:slug|formerly|date|contact|site|report|lesson):.*\n", re.MULTILINE
)


def add_options(parser: ArgumentParser) -> None:
    """Says what the command may be told."""
    parser.add_argument("name", metavar="NAME", help='the pattern\'s name, as "Winter Window"')
    parser.add_argument(
        "--kind",
        metavar="KIND",
        default=PLAIN,
        help=f"what to begin from: {PLAIN} (the default), or the trade's word for a kind of "
        'quilt, as "log cabin" or coins; any other word lists them all',
    )


def run(options: Namespace) -> int:
    """Writes the source; one that is there already is never touched."""
    title, slug = named(options.name)
    target = Path(FOLDER, slug, FILE)
    if target.parent.exists():
        raise WrongCall(f"{target.parent.as_posix()} is there already; nothing was written.")
    write_all(target.parent, files(title, options.kind))
    put(target.as_posix())
    tell(f"Now open it in an editor, and check it with: patternbook check {target.parent}")
    return 0


def named(asked: str) -> tuple[str, str]:
    """The title for the cover and the name of the folder: Winter Window, winter-window."""
    if len(asked) > LONGEST:
        raise WrongCall(
            f"{shortened(asked)!r} is too long for a name: {LONGEST} signs is the most."
        )
    if not TITLE.fullmatch(asked):
        raise WrongCall(f"{asked!r} cannot be a name: use letters, numbers, spaces and hyphens.")
    title = asked if asked != asked.lower() or " " in asked else asked.replace("-", " ").title()
    bare = unicodedata.normalize("NFKD", asked.lower()).encode("ascii", "ignore").decode()
    slug = "-".join(re.findall(r"[a-z0-9]+", bare.replace("'", "")))
    if not slug:
        raise WrongCall(f"{asked!r} cannot name a folder: use at least one letter from a to z.")
    return title, slug


def files(title: str, kind: str) -> dict[str, bytes]:
    """The source under its new title, and the drawings that lie beside it."""
    source = _starter(kind)
    drawings = {
        one.relative_to(source.parent).as_posix(): one.read_bytes()
        for one in sorted(source.parent.rglob("*.svg"))
    }
    return {FILE: begun(title, kind).encode()} | drawings


def begun(title: str, kind: str) -> str:
    """The starter's text under its new title; one begun from a pattern says from which."""
    text = _starter(kind).read_text("utf-8")
    line = f"pattern: {title}"
    if meant(kind) == PLAIN:
        return TITLE_LINE.sub(lambda _: line, text, count=1)
    origin = "".join(TITLE_LINE.findall(text)[:1])
    own = TITLE_LINE.sub(lambda _: f"{line}\nby: Your name", ITS_OWN.sub("", text), count=1)
    return f"# Begun from the pattern {origin}: put your own words in place of its own.\n{own}"


def _starter(kind: str) -> Path:
    kinds = starters()
    if meant(kind) not in kinds:
        raise WrongCall(f"there is no kind {shortened(kind)!r}. There are: {', '.join(kinds)}.")
    return kinds[meant(kind)]
